#include "spectrum/colour.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include <glm/matrix.hpp>

namespace understudy {
namespace {

// glm stores columns; these are written as they stand on paper.
glm::dmat3 from_rows(const Double3& first, const Double3& second, const Double3& third) {
    return glm::transpose(glm::dmat3(first, second, third));
}

Double3 vector_of(const Xyz& colour) { return {colour.x, colour.y, colour.z}; }

// From the primaries' chromaticities (ITU-R BT.709-6, item 1.3) and the white: Yn · primaries · diag(shares) = white.
glm::dmat3 matrix_of_primaries() {
    const auto column = [](double x, double y) { return Double3(x / y, 1.0, (1.0 - x - y) / y); };
    const glm::dmat3 primaries(column(0.640, 0.330), column(0.300, 0.600), column(0.150, 0.060));
    const Double3 shares = glm::inverse(primaries) * vector_of(kD65White);
    return {primaries[0] * shares.x, primaries[1] * shares.y, primaries[2] * shares.z};
}

// CIE 15:2004 equations 8.6 to 8.11.
double lab_curve(double ratio) {
    constexpr double kKnee = 216.0 / 24389.0;
    return ratio > kKnee ? std::cbrt(ratio) : (24389.0 / 27.0 * ratio + 16.0) / 116.0;
}

}  // namespace

Chromaticity chromaticity_of(const Xyz& colour) {
    const double sum = colour.x + colour.y + colour.z;
    return {colour.x / sum, colour.y / sum};
}

const glm::dmat3& xyz_of_linear_srgb_matrix() {
    static const glm::dmat3 kMatrix = matrix_of_primaries();
    return kMatrix;
}

const glm::dmat3& linear_srgb_of_xyz_matrix() {
    static const glm::dmat3 kMatrix = glm::inverse(matrix_of_primaries());
    return kMatrix;
}

Double3 linear_srgb_of(const Xyz& colour) { return linear_srgb_of_xyz_matrix() * vector_of(colour); }

Xyz xyz_of_linear_srgb(const Double3& rgb) {
    const Double3 colour = xyz_of_linear_srgb_matrix() * rgb;
    return {colour.x, colour.y, colour.z};
}

double encode_srgb(double linear) {
    if (linear < 0.0) return -encode_srgb(-linear);
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1.0 / 2.4) - 0.055;
}

double decode_srgb(double encoded) {
    if (encoded < 0.0) return -decode_srgb(-encoded);
    return encoded <= 0.04045 ? encoded / 12.92 : std::pow((encoded + 0.055) / 1.055, 2.4);
}

std::uint8_t srgb_code(double linear) {
    assert(!std::isnan(linear));
    return static_cast<std::uint8_t>(std::lround(255.0 * encode_srgb(std::clamp(linear, 0.0, 1.0))));
}

glm::dmat3 adaptation_to_d65(const Xyz& white) {
    static const glm::dmat3 kCones =
        from_rows({0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296});
    const Double3 from = kCones * (vector_of(white) / white.y);
    const Double3 to = kCones * vector_of(kD65White);
    glm::dmat3 gains(0.0);
    for (int i = 0; i < 3; ++i) gains[i][i] = to[i] / from[i];
    return glm::inverse(kCones) * gains * kCones;
}

Lab lab_of(const Xyz& colour, const Xyz& white) {
    const double x = lab_curve(colour.x / white.x);
    const double y = lab_curve(colour.y / white.y);
    const double z = lab_curve(colour.z / white.z);
    return {116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)};
}

double colour_difference(const Lab& one, const Lab& other) {
    return std::hypot(one.lightness - other.lightness, one.a - other.a, one.b - other.b);
}

double correlated_colour_temperature(const Chromaticity& colour) {
    const double n = (colour.x - 0.3320) / (colour.y - 0.1858);
    return ((-449.0 * n + 3525.0) * n - 6823.3) * n + 5520.33;
}

}  // namespace understudy
