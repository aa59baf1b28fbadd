// The whole spectrum of light that has met nothing but pale hair, from the four wavelengths that its path carries.
//
// What melanin takes falls steadily from blue to red, so what is left between two wavelengths follows from both. A path
// books into every band then, and not four times as much into four of them: a strong one is no coloured spark.
#pragma once

#include "scatter/hair_fibre.h"
#include "scatter/light4.h"

namespace understudy {

// light: at the waves. What it brings to every band. Between the waves and past the outermost its logarithm goes as the
// power of the wavelength that eumelanin's absorption goes by (scatter/hair_fibre.h): exact for one way through one
// pigment, near for sums of such. Light that is nowhere zero; of any other, only the waves' own bands are filled, and
// count fourfold.
Bands bands_through_hair(const Waves& waves, const Light4& light);

// Whether a hair takes so little that sums are near enough: grey, white and blond. Darker hair is hardly noisy.
inline bool is_pale(const HairFibre& fibre) {
    constexpr float kAt550Nm = 0.3F;  // per radius
    return fibre.absorption.at(550.0F) < kAt550Nm;
}

}  // namespace understudy
