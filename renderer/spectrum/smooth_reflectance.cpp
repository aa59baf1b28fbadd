#include "spectrum/smooth_reflectance.h"

#include <algorithm>
#include <cmath>

#include <glm/matrix.hpp>

#include "spectrum/illuminant.h"

namespace understudy {

namespace {

// Centred and scaled, so that the three coefficients are of one size.
Spectrum quadratic_sigmoid(const Double3& c) {
    constexpr double kMiddle = 550.0;
    constexpr double kHalf = 170.0;
    return Spectrum::tabulate([&](float nm) {
        const double t = (static_cast<double>(nm) - kMiddle) / kHalf;
        const double x = (c.x * t + c.y) * t + c.z;
        return 0.5 + x / (2.0 * std::sqrt(1.0 + x * x));
    });
}

Double3 as_vector(const Lab& colour) { return {colour.lightness, colour.a, colour.b}; }

Double3 colour_of(const Double3& c) { return as_vector(daylight_colour(quadratic_sigmoid(c))); }

// Levenberg's damped Gauss–Newton steps toward the colour, from coefficients of one that is near.
Double3 approach_colour(Double3 c, const Double3& wanted) {
    constexpr double kNudge = 1e-4;
    double damping = 1e-3;
    Double3 off = colour_of(c) - wanted;
    for (int step = 0; step < 30 && glm::length(off) > 1e-4; ++step) {
        glm::dmat3 slopes;
        for (int i = 0; i < 3; ++i) {
            Double3 nudged = c;
            nudged[i] += kNudge;
            slopes[i] = (colour_of(nudged) - wanted - off) / kNudge;
        }
        const glm::dmat3 turned = glm::transpose(slopes);
        const glm::dmat3 normal = turned * slopes + glm::dmat3(damping);
        const Double3 next = c - glm::inverse(normal) * (turned * off);
        const Double3 next_off = colour_of(next) - wanted;
        const bool nearer = glm::length(next_off) < glm::length(off);
        damping *= nearer ? 0.2 : 10.0;
        if (!nearer) continue;
        c = next;
        off = next_off;
    }
    return c;
}

}  // namespace

Lab daylight_colour(const Spectrum& reflectance) {
    static const Spectrum daylight = normalised_to_luminance(*cie_illuminant("D65"));
    static const Xyz white = xyz_of(daylight);
    return lab_of(xyz_of(daylight * reflectance), white);
}

std::optional<Spectrum> smooth_reflectance(const Lab& colour) {
    constexpr int kSteps = 8;
    constexpr double kNearEnough = 0.02;  // of colour difference; a trained eye tells 1
    if (!(colour.lightness > 0.0 && colour.lightness < 100.0)) return std::nullopt;
    // From the grey of that lightness outward. The luminance of a lightness: ISO 11664-4.
    const double root = (colour.lightness + 16.0) / 116.0;
    const double grey = root > 6.0 / 29.0 ? root * root * root : 3.0 * 36.0 / 841.0 * (root - 4.0 / 29.0);
    const double swing = 2.0 * grey - 1.0;
    Double3 c(0.0, 0.0, swing / std::sqrt(1.0 - swing * swing));
    for (int step = 1; step <= kSteps; ++step) {
        const double share = static_cast<double>(step) / kSteps;
        c = approach_colour(c, {colour.lightness, share * colour.a, share * colour.b});
    }
    if (!(glm::length(colour_of(c) - as_vector(colour)) < kNearEnough)) return std::nullopt;
    return quadratic_sigmoid(c);
}

}  // namespace understudy
