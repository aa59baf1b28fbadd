// Colour spaces: chromaticity, sRGB, adaptation to a white, and CIELAB differences.
#pragma once

#include <cstdint>

#include <glm/mat3x3.hpp>

#include "base/geometry.h"
#include "spectrum/observer.h"

namespace understudy {

struct Chromaticity {
    double x = 0.0;
    double y = 0.0;
};

struct Lab {
    double lightness = 0.0;
    double a = 0.0;
    double b = 0.0;
};

// sRGB's white, x = 0.3127 and y = 0.3290 with Y = 1; IEC 61966-2-1:1999.
inline constexpr Xyz kD65White = {0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290};

Chromaticity chromaticity_of(const Xyz& colour);

// Linear light with the primaries of ITU-R BT.709 and white D65. Colours outside come out with negative parts.
const glm::dmat3& linear_srgb_of_xyz_matrix();
const glm::dmat3& xyz_of_linear_srgb_matrix();
Double3 linear_srgb_of(const Xyz& colour);
Xyz xyz_of_linear_srgb(const Double3& rgb);

// The transfer curve of IEC 61966-2-1 for one channel; below 0 it is continued as an odd function.
double encode_srgb(double linear);
double decode_srgb(double encoded);

// The nearest 8-bit code, clipped to 0 … 255; linear must not be NaN.
std::uint8_t srgb_code(double linear);

// Bradford adaptation that takes colours seen under a white to D65 (the linear form, as in the ICC specification 4.3
// annex E).
glm::dmat3 adaptation_to_d65(const Xyz& white);

// ISO 11664-4 (CIE 1976 L*a*b*) and the 1976 colour difference.
Lab lab_of(const Xyz& colour, const Xyz& white);
double colour_difference(const Lab& one, const Lab& other);

// McCamy, "Correlated color temperature as an explicit function of chromaticity coordinates", 1992.
double correlated_colour_temperature(const Chromaticity& colour);

}  // namespace understudy
