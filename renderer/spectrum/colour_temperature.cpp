#include "spectrum/colour_temperature.h"

#include <cmath>

#include "spectrum/illuminant.h"

namespace understudy {
namespace {

constexpr double kHottest = 10.0;    // mired: 100 000 K
constexpr double kColdest = 1000.0;  // mired: 1000 K
constexpr double kFarthest = 0.05;   // in u, v

double distance(const UniformChromaticity& a, const UniformChromaticity& b) { return std::hypot(a.u - b.u, a.v - b.v); }

UniformChromaticity black_body(double mireds) {
    return uniform_chromaticity_of(xyz_of(planck_spectrum(kelvin_of_mired(mireds))));
}

// The nearest of a row of black bodies: their line bends, so a search by halves alone could settle on a wrong arm.
double coarse_mired(const UniformChromaticity& colour, double step) {
    double best = kHottest;
    double least = distance(colour, black_body(best));
    for (double mireds = kHottest + step; mireds <= kColdest; mireds += step) {
        const double away = distance(colour, black_body(mireds));
        if (away < least) {
            least = away;
            best = mireds;
        }
    }
    return best;
}

// Golden section search (Kiefer 1953).
double fine_mired(const UniformChromaticity& colour, double low, double high) {
    constexpr double kGolden = 0.6180339887498949;
    constexpr double kPrecision = 1e-4;  // mired: 0.003 K at 5500 K
    while (high - low > kPrecision) {
        const double lower = high - kGolden * (high - low);
        const double upper = low + kGolden * (high - low);
        if (distance(colour, black_body(lower)) < distance(colour, black_body(upper))) {
            high = upper;
        } else {
            low = lower;
        }
    }
    return 0.5 * (low + high);
}

}  // namespace

UniformChromaticity uniform_chromaticity_of(const Xyz& colour) {
    const double divisor = colour.x + 15.0 * colour.y + 3.0 * colour.z;
    return {4.0 * colour.x / divisor, 6.0 * colour.y / divisor};
}

std::optional<ColourTemperature> nearest_colour_temperature(const Xyz& colour) {
    constexpr double kStep = 10.0;  // mired
    const UniformChromaticity uniform = uniform_chromaticity_of(colour);
    const double coarse = coarse_mired(uniform, kStep);
    if (coarse <= kHottest || coarse > kColdest - kStep) return std::nullopt;
    const double mireds = fine_mired(uniform, coarse - kStep, coarse + kStep);
    const UniformChromaticity body = black_body(mireds);
    const double away = distance(uniform, body);
    if (!(away <= kFarthest)) return std::nullopt;
    return ColourTemperature{kelvin_of_mired(mireds), std::copysign(away, uniform.v - body.v)};
}

}  // namespace understudy
