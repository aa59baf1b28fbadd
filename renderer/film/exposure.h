// Exposure arithmetic: f-numbers, exposure values and stops. ISO 2720:1974's incident equation N²/t = E·S/C, with E·t
// or a flash's ∫E dt as the exposure in lx·s.
#pragma once

#include <cmath>

#include "base/geometry.h"

namespace understudy {

// Calibration constants within ISO 2720's ranges; every reading is to be printed beside the one it was made with.
inline constexpr double kIncidentFlat = 250.0;  // lx·s, flat (cosine) receptor; the standard's 240 … 400
inline constexpr double kIncidentDome = 340.0;  // lx·s, hemispherical receptor; the standard's 320 … 540
inline constexpr double kReflected = 12.5;      // cd·s/m²; the standard's 10.6 … 13.4

// The f-number that a luminous exposure asks for.
inline double f_number_of_exposure(double exposure_lxs, double iso, double constant = kIncidentFlat) {
    return std::sqrt(exposure_lxs * iso / constant);
}

// The luminous exposure, lx·s, that an f-number asks for.
inline double exposure_of_f_number(double f_number, double iso, double constant = kIncidentFlat) {
    return f_number * f_number * constant / iso;
}

// The camera's setting as an exposure value at ISO 100: log2(N²/t · 100/S).
inline double ev100(double f_number, double shutter_s, double iso) {
    return std::log2(f_number * f_number / shutter_s * 100.0 / iso);
}

// The illuminance (lx) and luminance (cd/m²) that a meter answers with this exposure value at ISO 100.
inline double illuminance_of_ev100(double ev, double constant = kIncidentFlat) {
    return std::exp2(ev) * constant / 100.0;
}
inline double luminance_of_ev100(double ev, double constant = kReflected) { return std::exp2(ev) * constant / 100.0; }

inline double ev100_of_illuminance(double illuminance_lx, double constant = kIncidentFlat) {
    return std::log2(illuminance_lx * 100.0 / constant);
}
inline double ev100_of_luminance(double luminance_cdm2, double constant = kReflected) {
    return std::log2(luminance_cdm2 * 100.0 / constant);
}

// How many stops more light the second gives than the first; both in the same unit of exposure.
inline double stops_between(double exposure, double other_exposure) { return std::log2(other_exposure / exposure); }

// The same for two f-numbers that a meter reads.
inline double stops_between_f_numbers(double f_number, double other_f_number) {
    return 2.0 * std::log2(other_f_number / f_number);
}

// Guide number in metres of a flash of the given luminous intensity integral (cd·s): N · d with E = I/d².
inline double guide_number_m(double intensity_cds, double iso, double constant = kIncidentFlat) {
    return std::sqrt(intensity_cds * iso / constant);
}

// What one lx·s/sr of luminous exposure on the film's side becomes in linear light: π · S / (C · N²). A matt white that
// receives H returns H/π, so at the metered N it comes out as 1.
inline double linear_per_exposure(double f_number, double iso) {
    return kPiDouble * iso / (kIncidentFlat * f_number * f_number);
}

}  // namespace understudy
