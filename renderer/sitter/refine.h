// The coarse head made smooth: Catmull and Clark's subdivision, placed on the limit surface.
#pragma once

#include "sitter/head_data.h"

namespace understudy {

struct RefinedEyeMargins {
    std::vector<std::uint32_t> inner;
    std::vector<std::uint32_t> outer;
};

struct RefinedHead {
    std::vector<Double3> positions;
    std::vector<BoneWeights> weights;
    std::vector<Quad> quads;
    std::vector<Zone> zones;  // one a quad
    std::array<RefinedEyeMargins, 2> margins;
    std::vector<std::uint32_t> lips_meet;
};

// `positions` are the coarse ones after shaping. Each level has four times the quads of the one before.
RefinedHead refine(const HeadData& data, const std::vector<Double3>& positions, int levels);

}  // namespace understudy
