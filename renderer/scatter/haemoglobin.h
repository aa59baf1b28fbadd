// What colours blood.
#pragma once

namespace understudy {

// cm⁻¹/M, decadic.
struct MolarExtinction {
    double oxygenated;
    double deoxygenated;
};

// nm in [380, 780], linear between the table's 2 nm.
MolarExtinction haemoglobin_extinction(double nm);

// Usual for whole blood: S. Prahl's note to the table.
inline constexpr double kHaemoglobinGramsPerLitre = 150.0;

// Absorption coefficient of whole blood, cm⁻¹ to the base e; oxygenation in [0, 1].
double blood_absorption_per_cm(double nm, double oxygenation, double grams_per_litre = kHaemoglobinGramsPerLitre);

}  // namespace understudy
