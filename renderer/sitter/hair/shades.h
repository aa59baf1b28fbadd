// No two hairs have quite the same colour: a few strengths of the pigment, and none at all for the grey ones.
#pragma once

#include <vector>

#include "sitter/hair/chance.h"
#include "sitter/strands.h"

namespace understudy {

inline std::vector<HairPigment> shades_of(const HairPigment& pigment) {
    std::vector<HairPigment> shades;
    for (const double strength : {0.70, 0.84, 1.0, 1.2, 1.45}) {
        shades.push_back({strength * pigment.eumelanin, strength * pigment.pheomelanin});
    }
    shades.push_back({0.006, 0.002});  // grey hair is nearly clear
    return shades;
}

// lock: whose neighbours are alike; each hair strays a little from it.
inline std::uint8_t shade_of(std::uint32_t hair, std::uint32_t lock, double grey) {
    if (static_cast<double>(chance(hair, 101)) < grey) return 5;
    const float place = 5.0F * (0.5F * chance(lock, 102) + 0.5F * chance(hair, 103));
    return static_cast<std::uint8_t>(std::min(place, 4.0F));
}

}  // namespace understudy
