#include "scatter/skin.h"

#include <cassert>
#include <cmath>

#include "scatter/haemoglobin.h"

namespace understudy {
namespace {

constexpr double kEpidermisCm = 0.006;  // 60 µm; Jacques 1998
constexpr double kOxygenation = 0.75;   // between arterial and venous blood; common practice, no source

// cm⁻¹; a Rayleigh and a Mie share. Jacques 2013, eq. 2.
double reduced_scattering_per_cm(double nm, double at_500, double rayleigh_share, double mie_power) {
    const double relative = nm / 500.0;
    return at_500 *
           (rayleigh_share * std::pow(relative, -4.0) + (1.0 - rayleigh_share) * std::pow(relative, -mie_power));
}

}  // namespace

double melanosome_absorption_per_cm(double nm) { return 6.6e11 * std::pow(nm, -3.33); }

double baseline_absorption_per_cm(double nm) { return 0.244 + 85.3 * std::exp(-(nm - 154.0) / 66.2); }

double dermis_scattering_per_cm(double nm) { return reduced_scattering_per_cm(nm, 43.6, 0.41, 0.562); }

double epidermis_scattering_per_cm(double nm) { return reduced_scattering_per_cm(nm, 66.7, 0.29, 0.689); }

Layer epidermis_layer(double nm, double melanin) {
    const double absorption =
        melanin * melanosome_absorption_per_cm(nm) + (1.0 - melanin) * baseline_absorption_per_cm(nm);
    return two_flux_layer(absorption, epidermis_scattering_per_cm(nm), kEpidermisCm);
}

double dermis_reflectance(double nm, double blood) {
    const double absorption =
        blood * blood_absorption_per_cm(nm, kOxygenation) + (1.0 - blood) * baseline_absorption_per_cm(nm);
    return two_flux_half_space(absorption, dermis_scattering_per_cm(nm));
}

// The layers share an index; the boundary that keeps light in lies above both.
Spectrum skin_albedo(double melanin, double blood) {
    assert(melanin >= 0.0 && melanin <= 0.5 && blood >= 0.0 && blood <= 0.2);
    const double internal = internal_reflectance(static_cast<double>(kSkinIndex));
    return Spectrum::tabulate([melanin, blood, internal](float wave) {
        const auto nm = static_cast<double>(wave);
        const double within = reflectance_over(epidermis_layer(nm, melanin), dermis_reflectance(nm, blood));
        return reflectance_through_boundary(within, internal);
    });
}

}  // namespace understudy
