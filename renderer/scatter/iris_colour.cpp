#include "scatter/iris_colour.h"

#include <cassert>
#include <cmath>

#include "scatter/skin.h"
#include "scatter/two_flux.h"

namespace understudy {
namespace {

constexpr double kFrontLayersCm = 0.035;    // chosen: the iris is some 0.3 to 0.6 mm thick
constexpr double kBackReflectance = 0.012;  // of the black layer behind; invented
constexpr double kClearTissuePerCm = 0.02;  // absorption without any pigment; invented

// Pheomelanin's absorption over eumelanin's: in the colours of hair, (0.187, 0.400, 1.05) against (0.419, 0.697, 1.37)
// for red, green and blue (E. d'Eon and others, "An Energy-Conserving Hair Reflectance Model", 2011). That is 0.574 at
// 550 nm, growing with the power 2.1 more toward short waves.
double melanin_absorption_per_cm(double nm, double pheomelanin) {
    const double over_eumelanin = 0.574 * std::pow(nm / 550.0, -2.1);
    return melanosome_absorption_per_cm(nm) * (1.0 - pheomelanin + pheomelanin * over_eumelanin);
}

// Lutein's bands over the greatest: near 446 and 475 nm, with a shoulder near 422 (in ethanol; from memory).
double lutein_shape(double nm) {
    const auto band = [&](double middle, double width) { return std::exp(-std::pow((nm - middle) / width, 2.0)); };
    return (0.55 * band(420.0, 26.0) + 0.85 * band(446.0, 18.0) + 0.85 * band(475.0, 16.0)) / 1.03;
}

}  // namespace

IrisPigment iris_pigment(IrisColour colour) {
    switch (colour) {
        case IrisColour::kDarkBrown:
            return {0.24, 0.17, 0.3, 6.0, 0.0};
        case IrisColour::kBrown:
            return {0.12, 0.07, 0.5, 7.0, 0.0};
        case IrisColour::kHazel:
            return {0.08, 0.032, 0.85, 10.0, 0.45, 6.0};
        case IrisColour::kGreen:
            return {0.05, 0.02, 0.9, 12.0, 0.8, 22.0};
        case IrisColour::kBlue:
            return {0.004, 0.0010, 0.3, 8.5, 0.78};
        case IrisColour::kGrey:
            return {0.003, 0.0008, 0.3, 7.5, 0.28};
    }
    assert(false);
    return {};
}

Spectrum iris_albedo(const IrisPigment& pigment, double melanin) {
    return Spectrum::tabulate([&](float wave) {
        const auto nm = static_cast<double>(wave);
        const double absorption = kClearTissuePerCm + melanin * melanin_absorption_per_cm(nm, pigment.pheomelanin) +
                                  pigment.lutein_per_cm * lutein_shape(nm);
        const double fine = std::pow(nm / 500.0, -4.0);
        const double scattering = pigment.scattering * (pigment.short_wave * fine + 1.0 - pigment.short_wave);
        return reflectance_over(two_flux_layer(absorption, scattering, kFrontLayersCm), kBackReflectance);
    });
}

}  // namespace understudy
