// What a panel, a backdrop or a wall is made of.
#pragma once

#include <variant>

#include "spectrum/spectrum.h"

namespace understudy {

enum class Metal { kSilver, kGold };
struct Reflectance {
    double value = 0.0;  // 0 … 0.98
};
// A cloth that light goes through: shares of the light that falls on it, 1 in all at most.
struct Cloth {
    double reflects = 0.0;   // scattered back evenly
    double transmits = 0.0;  // scattered evenly out of the other side
    double open = 0.0;       // passes between the threads without being turned
};
// Matt and coloured.
struct Tint {
    Spectrum reflectance;
};
// Painted in soft blotches of two tones.
struct Mottled {
    Spectrum first;
    Spectrum second;
    double scale_m = 0.5;  // a blotch and its neighbour
    unsigned seed = 0;
};
using Finish = std::variant<Reflectance, Metal, Cloth, Tint, Mottled>;

}  // namespace understudy
