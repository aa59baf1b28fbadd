// Gels: coloured and grey films in front of a light, as spectral transmissions.
//
// Warming and cooling gels are made for a shift in mired, exact on the light they are made for: a flash of 5500 K for
// the warm ones, a tungsten lamp of 3200 K for the cool ones. In Wien's approximation a filter that shifts every black
// body by the same mired has a density that is straight over 1/λ; a dye's runs out at the end it lets through, so ours
// does too, softly, where the surfaces' reflection is all that is left. How much light is lost follows from the curve.
//
// Full is the trade's step between tungsten and daylight, 3200 K to 5700 K; half and quarter take 3200 K to 4300 K and
// 3600 K, and an eighth is half of a quarter (common practice: no two makers agree). The plain colours are curves of
// our own with a dye's soft edges.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "spectrum/spectrum.h"

namespace understudy {

// "full-warm", "half-cool", "red", …, or with a number of one's own: "warm-159" and "cool-78" by mired, "nd-0.6" by
// density, "nd-2-stops" by stops. None if it is no gel. Values lie in 0 … 1.
std::optional<Spectrum> gel_transmission(std::string_view name);

// The fixed names, and how those with a number are written.
std::vector<std::string> gel_names();
inline constexpr std::string_view kGelsByNumber =
    "warm-1 to warm-300 or cool-1 to cool-200 (mired), nd-0.1 to nd-4 (density), nd-1-stop to nd-13-stops";

// Of several gels one behind the other: the product. Each must be the name of a gel; none at all lets everything
// through.
Spectrum stacked_transmission(const std::vector<std::string>& gels);

// The share of a light's luminous flux that comes through.
double luminous_share(const Spectrum& light, const Spectrum& transmission);

// The fixed shifts in mired, plus is warmer.
inline constexpr double kFullShift = 137.0;    // 10⁶/3200 − 10⁶/5700
inline constexpr double kHalfShift = 80.0;     // 10⁶/3200 − 10⁶/4300
inline constexpr double kQuarterShift = 35.0;  // 10⁶/3200 − 10⁶/3600
inline constexpr double kEighthShift = 17.5;

// What the warm and the cool ones are exact for.
inline constexpr double kWarmGelsLight = 5500.0;  // K
inline constexpr double kCoolGelsLight = 3200.0;  // K

}  // namespace understudy
