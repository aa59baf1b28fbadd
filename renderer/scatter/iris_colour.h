// What colours an iris: how much melanin its front layers hold, over how much of the short-wave scattering of their
// fibres, before a black back.
//
// No pigment is blue: fine fibres scatter short waves most, and the dark layer behind them takes the rest (P. A.
// Imesch, I. H. L. Wallow and D. M. Albert, "The Color of the Human Eye", Surv. Ophthalmol. 41, 1997, S117). Green and
// hazel hold more of the yellow pheomelanin (G. Prota and others, Exp. Eye Res. 67, 1998, 293; from memory). Melanins
// alone turn that blue to grey and then to brown; what leaves green is a pigment that takes blue only, such as the
// lutein that is found in irises (P. S. Bernstein and others, Exp. Eye Res. 72, 2001, 215; from memory). The amounts
// are chosen so that the colours come out as eyes look; none is measured.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include "spectrum/spectrum.h"

namespace understudy {

enum class IrisColour { kDarkBrown, kBrown, kHazel, kGreen, kBlue, kGrey };
inline constexpr std::array<std::string_view, 6> kIrisNames = {"dark-brown", "brown", "hazel", "green", "blue", "grey"};

inline std::optional<IrisColour> iris_colour_named(std::string_view name) {
    for (std::size_t i = 0; i < kIrisNames.size(); ++i) {
        if (kIrisNames.at(i) == name) return static_cast<IrisColour>(i);
    }
    return std::nullopt;
}

// Melanin as a volume fraction of the front layers.
struct IrisPigment {
    double at_pupil = 0.0;       // melanin round the pupil, inside the collarette
    double at_rim = 0.0;         // melanin outside it
    double pheomelanin = 0.0;    // its share of the melanin
    double scattering = 0.0;     // reduced, of the fibres, 1/cm at 500 nm
    double short_wave = 0.0;     // the share of it that goes as λ⁻⁴; the rest is even
    double lutein_per_cm = 0.0;  // its absorption where it is greatest
};

IrisPigment iris_pigment(IrisColour colour);

// Diffuse reflectance of front layers with this much melanin over the black back, inside the eye.
Spectrum iris_albedo(const IrisPigment& pigment, double melanin);

}  // namespace understudy
