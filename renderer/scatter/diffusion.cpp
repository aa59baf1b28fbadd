#include "scatter/diffusion.h"

#include <cassert>
#include <cmath>

namespace understudy {

double dipole_reflectance(double absorption, double reduced_scattering, double eta) {
    assert(absorption >= 0.0 && reduced_scattering > 0.0 && eta > 1.0);
    // The polynomial for the mean internal reflection is Egan and Hilgeman's, as quoted there; for eta > 1.
    const double internal = -1.440 / (eta * eta) + 0.710 / eta + 0.668 + 0.0636 * eta;
    const double a = (1.0 + internal) / (1.0 - internal);
    const double albedo = reduced_scattering / (absorption + reduced_scattering);
    const double root = std::sqrt(3.0 * (1.0 - albedo));
    return 0.5 * albedo * (1.0 + std::exp(-4.0 / 3.0 * a * root)) * std::exp(-root);
}

}  // namespace understudy
