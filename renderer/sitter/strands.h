// Hairs as lines with a width: what grows on the sitter, as the stage draws it.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "base/geometry.h"
#include "scatter/hair_fibre.h"

namespace understudy {

enum class StrandKind : std::uint8_t { kHair, kBeard, kBrow, kLash };

// In words, as it is printed when it hides a light.
inline std::string_view strand_name(StrandKind kind) {
    switch (kind) {
        case StrandKind::kBeard:
            return "beard";
        case StrandKind::kBrow:
            return "brow";
        case StrandKind::kLash:
            return "lashes";
        case StrandKind::kHair:
            break;
    }
    return "hair";
}

struct Strand {
    std::uint32_t first = 0;  // point, at the root
    std::uint16_t count = 0;  // of points, two or more
    std::uint8_t shade = 0;
    StrandKind kind = StrandKind::kHair;
};

struct StrandPoint {
    Vec3 place{0.0F};     // metres, in the studio
    float radius = 0.0F;  // metres
};

struct Strands {
    std::vector<StrandPoint> points;
    std::vector<Strand> strands;
    std::vector<HairPigment> shades;

    bool empty() const { return strands.empty(); }
    void add(const Strands& others) {
        const auto first = static_cast<std::uint32_t>(points.size());
        const auto shade = static_cast<std::uint8_t>(shades.size());
        points.insert(points.end(), others.points.begin(), others.points.end());
        shades.insert(shades.end(), others.shades.begin(), others.shades.end());
        for (Strand strand : others.strands) {
            strand.first += first;
            strand.shade = static_cast<std::uint8_t>(strand.shade + shade);
            strands.push_back(strand);
        }
    }
};

}  // namespace understudy
