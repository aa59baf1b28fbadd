// Reflectance of skin from published absorption and scattering, for tests of the bands: nothing here comes from the
// renderer.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "spectrum/spectrum.h"

namespace understudy {

struct Haemoglobin {
    double nm;
    double oxy;    // molar extinction, cm⁻¹/M
    double deoxy;  // molar extinction, cm⁻¹/M
};

// S. Prahl's compilation of molar extinctions (Gratzer; Kollias), Oregon Medical Laser Center.
inline constexpr std::array<Haemoglobin, 30> kHaemoglobin = {
    {{400, 266232, 223296}, {414, 524280, 342596},   {420, 480360, 407560},   {432, 214120, 552160},
     {440, 102580, 413280}, {450, 62816, 103292},    {460, 44480, 23388.8},   {480, 26629.2, 14550},
     {500, 20932.8, 20862}, {520, 24202.4, 31589.6}, {530, 39956.8, 39036.4}, {540, 53236, 46592},
     {542, 53292, 48148},   {550, 43016, 53412},     {556, 34476.8, 54540},   {560, 32613.2, 53788},
     {570, 44496, 45072},   {576, 55540, 40092},     {580, 50104, 37020},     {590, 14400.8, 28324.4},
     {600, 3200, 14677.2},  {610, 1506, 9443.6},     {620, 942, 6509.6},      {630, 610, 5148.8},
     {640, 442, 4345.2},    {650, 368, 3750.12},     {660, 319.6, 3226.56},   {670, 294, 2795.12},
     {680, 277.6, 2407.92}, {700, 290, 1794.28}}};

// cm⁻¹ for whole blood of 150 g/l, three quarters of it oxygenated: 2.303 · e · 150 / 64 500. Log-linear between the
// table's rows, its end values beyond.
inline double blood_absorption(double nm) {
    constexpr double kScale = 2.303 * 150.0 / 64500.0;
    constexpr double kOxygenated = 0.75;
    const auto mixed = [](const Haemoglobin& row) { return kOxygenated * row.oxy + (1.0 - kOxygenated) * row.deoxy; };
    if (nm <= kHaemoglobin.front().nm) return kScale * mixed(kHaemoglobin.front());
    for (std::size_t i = 1; i < kHaemoglobin.size(); ++i) {
        const Haemoglobin& low = kHaemoglobin[i - 1];
        const Haemoglobin& high = kHaemoglobin[i];
        if (nm > high.nm) continue;
        const double share = (nm - low.nm) / (high.nm - low.nm);
        return kScale * std::exp((1.0 - share) * std::log(mixed(low)) + share * std::log(mixed(high)));
    }
    return kScale * mixed(kHaemoglobin.back());
}

// Melanosomes and bloodless skin, cm⁻¹: S. L. Jacques, "Skin optics", 1998.
inline double melanosome_absorption(double nm) { return 6.6e11 * std::pow(nm, -3.33); }
inline double baseline_absorption(double nm) { return 0.244 + 85.3 * std::exp(-(nm - 154.0) / 66.2); }

// Reduced scattering of the dermis, cm⁻¹: S. L. Jacques, "Optical properties of biological tissues: a review", 2013.
inline double dermis_scattering(double nm) {
    return 43.6 * (0.41 * std::pow(nm / 500.0, -4.0) + 0.59 * std::pow(nm / 500.0, -0.562));
}

// The dipole's total diffuse reflectance (Jensen and others 2001, section 2.4) of a dermis at index 1.4 under an
// epidermis of 60 µm that is crossed twice.
inline Spectrum skin_reflectance(double melanin, double blood) {
    constexpr double kIndex = 1.4;
    constexpr double kEpidermis = 0.006;  // cm
    constexpr double kInside = -1.440 / (kIndex * kIndex) + 0.710 / kIndex + 0.668 + 0.0636 * kIndex;
    constexpr double kBoundary = (1.0 + kInside) / (1.0 - kInside);
    return Spectrum::tabulate([=](float wave) {
        const auto nm = static_cast<double>(wave);
        const double baseline = baseline_absorption(nm);
        const double epidermis = melanin * melanosome_absorption(nm) + (1.0 - melanin) * baseline;
        const double dermis = blood * blood_absorption(nm) + (1.0 - blood) * baseline;
        const double scattering = dermis_scattering(nm);
        const double albedo = scattering / (scattering + dermis);
        const double depth = std::sqrt(3.0 * (1.0 - albedo));
        const double diffuse = 0.5 * albedo * (1.0 + std::exp(-4.0 / 3.0 * kBoundary * depth)) * std::exp(-depth);
        return diffuse * std::exp(-2.0 * epidermis * kEpidermis);
    });
}

}  // namespace understudy
