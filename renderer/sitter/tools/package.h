// The head package as it comes: one mesh of a whole body with helpers, its rig, and how shape targets move it.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"
#include "base/geometry.h"

namespace understudy {

struct PackageBone {
    std::string name;
    int parent = -1;
};

struct Package {
    std::vector<Double3> positions;                   // metres; body first, helpers after
    std::vector<std::array<std::uint32_t, 4>> faces;  // the body's, and after them the tongue's
    std::size_t body_faces = 0;                       // how many of them are the body's
    std::vector<PackageBone> bones;
    std::vector<std::array<std::pair<int, double>, 4>> weights;  // bone and share, a vertex
    std::vector<std::string> shape_names;    // "nose/nose-hump-morehump", in the order of the data: sorted
    std::vector<std::int16_t> shape_deltas;  // shapes × vertices × 3, in kShapeUnit
};

inline constexpr double kShapeUnit = 1e-4;  // metres

// The vertex nearest to this one's place on the other side of the body.
std::uint32_t mirrored(const Package& package, std::uint32_t vertex);

Expected<Package> read_package(const std::filesystem::path& folder);

}  // namespace understudy
