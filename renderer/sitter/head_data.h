// The head mesh of the library as the asset step prepared it: a coarse quad mesh, its zones, its rig, its shapes.
//
// Three files in one folder: head.obj (metres; the groups are zones), head.rig.json, head.shapes.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"
#include "base/geometry.h"
#include "setup/head_file.h"
#include "sitter/sitter.h"

namespace understudy {

enum Bone : std::size_t { kTrunk, kNeck1, kNeck2, kNeck3, kSkull, kLeftArm, kRightArm, kBoneCount };
inline constexpr std::array<const char*, kBoneCount> kBoneNames = {"trunk", "neck1",    "neck2",    "neck3",
                                                                   "skull", "left_arm", "right_arm"};

using BoneWeights = std::array<float, kBoneCount>;  // sum 1
using Quad = std::array<std::uint32_t, 4>;

// Vertices that mark an eye. The margin of a lid has two edges: the inner one lies on the eye, the lashes grow at the
// outer one.
struct EyeMarks {
    std::vector<std::uint32_t> eyeball;
    std::vector<std::uint32_t> inner_margin;  // closed loops
    std::vector<std::uint32_t> outer_margin;
};

// Vertices that mark a jaw's row of teeth, from the sitter's right to left: where its gum begins, and as many again
// where its teeth end.
struct ArchMarks {
    std::vector<std::uint32_t> root;
    std::vector<std::uint32_t> edge;
};

struct HeadData {
    std::vector<Double3> positions;  // those past the weights' end are marks, not skin
    std::vector<Quad> quads;
    std::vector<Zone> zones;  // one a quad
    std::vector<BoneWeights> weights;
    std::array<std::vector<std::uint32_t>, kBoneCount> pivots;  // a bone turns about the mean of these vertices
    std::array<EyeMarks, 2> eyes;                               // [0] the sitter's right
    std::array<ArchMarks, 2> arches;                            // [0] the upper jaw's
    std::vector<std::uint32_t> lips_meet;  // closed: where the lips touch, from the right corner along the upper one
};

Expected<HeadData> read_head_data(const std::filesystem::path& folder);

// The positions with the shapes added. An unknown shape is a problem that names `said_in`.
Expected<std::vector<Double3>> apply_shapes(const HeadData& data, const std::filesystem::path& folder,
                                            const ShapeAmounts& amounts, const std::string& said_in);

// ---- head.shapes: the header, then an entry a shape, then all deltas; little-endian as on every machine it is built
// on.

inline constexpr std::array<char, 8> kShapesMagic = {'S', 'H', 'A', 'P', 'E', 'S', '0', '1'};
inline constexpr double kShapesUnit = 1e-4;  // metres

struct ShapesHeader {
    std::array<char, 8> magic = kShapesMagic;
    std::uint32_t shapes = 0;
    std::uint32_t vertices = 0;
};
struct ShapesEntry {
    std::array<char, 112> name{};  // ends in a zero
    std::uint64_t first = 0;       // delta
    std::uint64_t count = 0;
};
struct ShapesDelta {
    std::uint16_t vertex = 0;
    std::array<std::int16_t, 3> by{};  // in kShapesUnit
};
static_assert(sizeof(ShapesDelta) == 8);

}  // namespace understudy
