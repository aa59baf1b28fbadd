#include "scatter/skin.h"

#include <cassert>
#include <cmath>

#include "scatter/diffusion.h"
#include "scatter/haemoglobin.h"

namespace understudy {
namespace {

constexpr double kEpidermisCm = 0.006;  // 60 µm; Jacques 1998
constexpr double kOxygenation = 0.75;   // between arterial and venous blood; common practice, no source

// A layer that absorbs diffuse light acts as one this much thicker on a straight beam: W. M. Elsasser, "Heat Transfer
// by Infrared Radiation in the Atmosphere", 1942.
constexpr double kDiffuseThickening = 1.66;

double epidermis_transmittance(double nm, double melanin) {
    const double absorption =
        melanin * melanosome_absorption_per_cm(nm) + (1.0 - melanin) * baseline_absorption_per_cm(nm);
    return std::exp(-kDiffuseThickening * absorption * kEpidermisCm);
}

double dermis_reflectance(double nm, double blood) {
    const double absorption =
        blood * blood_absorption_per_cm(nm, kOxygenation) + (1.0 - blood) * baseline_absorption_per_cm(nm);
    return dipole_reflectance(absorption, dermis_scattering_per_cm(nm), static_cast<double>(kSkinIndex));
}

}  // namespace

double melanosome_absorption_per_cm(double nm) { return 6.6e11 * std::pow(nm, -3.33); }

double baseline_absorption_per_cm(double nm) { return 0.244 + 85.3 * std::exp(-(nm - 154.0) / 66.2); }

double dermis_scattering_per_cm(double nm) {
    constexpr double kAt500 = 43.6;
    constexpr double kRayleighShare = 0.41;
    constexpr double kMiePower = 0.562;
    const double relative = nm / 500.0;
    return kAt500 *
           (kRayleighShare * std::pow(relative, -4.0) + (1.0 - kRayleighShare) * std::pow(relative, -kMiePower));
}

Spectrum skin_albedo(double melanin, double blood) {
    assert(melanin >= 0.0 && melanin <= 0.5 && blood >= 0.0 && blood <= 0.2);
    return Spectrum::tabulate([melanin, blood](float wave) {
        const double nm = static_cast<double>(wave);
        const double once = epidermis_transmittance(nm, melanin);
        return once * once * dermis_reflectance(nm, blood);
    });
}

}  // namespace understudy
