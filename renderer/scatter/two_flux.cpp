#include "scatter/two_flux.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace understudy {

Layer two_flux_layer(double absorption, double reduced_scattering, double thickness) {
    assert(absorption > 0.0 && reduced_scattering > 0.0 && thickness >= 0.0);
    const double k = std::numbers::sqrt3 * absorption;
    const double s = 0.5 * std::numbers::sqrt3 * reduced_scattering;
    const double fading = std::sqrt(k * (k + 2.0 * s));
    // Kubelka's hyperbolic solution over e^(fading · thickness), so that a thick layer overflows nothing.
    const double twice = std::exp(-2.0 * fading * thickness);
    const double below = (k + s) * (1.0 - twice) + fading * (1.0 + twice);
    return {s * (1.0 - twice) / below, 2.0 * fading * std::sqrt(twice) / below};
}

double two_flux_half_space(double absorption, double reduced_scattering) {
    assert(absorption >= 0.0 && reduced_scattering > 0.0);
    const double root = std::sqrt(absorption / (absorption + reduced_scattering));
    return (1.0 - root) / (1.0 + root);
}

double reflectance_over(const Layer& layer, double below) {
    return layer.reflectance + layer.transmittance * layer.transmittance * below / (1.0 - layer.reflectance * below);
}

double internal_reflectance(double index) {
    assert(index > 1.0 && index <= 2.0);
    return -1.440 / (index * index) + 0.710 / index + 0.668 + 0.0636 * index;
}

double reflectance_through_boundary(double below, double internal) {
    return (1.0 - internal) * below / (1.0 - internal * below);
}

}  // namespace understudy
