// From what a flash pack is set to, to light.
#pragma once

namespace understudy {

// Light out of an open flash tube for each joule of the pack: lm·s/J. Published figures for whole studio systems run
// from 15 to 50 (makers' and teachers' pages); 40 is the usual figure for a tube in open air. One meter reading of
// one's own unit is always better.
inline constexpr double kFlashEfficacy = 40.0;
inline constexpr double kLeastFlashEfficacy = 15.0;
inline constexpr double kMostFlashEfficacy = 50.0;

// Luminous energy out of a modifier's front, lm·s. efficiency: of the modifier, 0 … 1.
inline double luminous_energy(double joules, double efficiency, double efficacy = kFlashEfficacy) {
    return joules * efficacy * efficiency;
}

inline double joules_for(double luminous_energy_lms, double efficiency, double efficacy = kFlashEfficacy) {
    return luminous_energy_lms / (efficacy * efficiency);
}

}  // namespace understudy
