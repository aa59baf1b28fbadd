#include "stage/distance_grid.h"

#include <algorithm>
#include <cmath>

#include <tbb/blocked_range.h>
#include <tbb/parallel_for.h>
#include <glm/common.hpp>

namespace understudy {

namespace {

// Of each corner, how far from one of its triangle's corners a point of a triangle at it can lie: by Jung's theorem the
// longest edge over √3.
std::vector<float> gaps_of(const std::vector<Vec3>& positions,
                           const std::vector<std::array<std::uint32_t, 3>>& triangles) {
    std::vector<float> gaps(positions.size(), -1.0F);
    for (const auto& corners : triangles) {
        float longest = 0.0F;
        for (std::size_t i = 0; i < 3; ++i) {
            const Vec3 edge = positions[corners[(i + 1) % 3]] - positions[corners[i]];
            longest = std::max(longest, glm::dot(edge, edge));
        }
        const float gap = std::sqrt(longest / 3.0F);
        for (const auto corner : corners) gaps[corner] = std::max(gaps[corner], gap);
    }
    return gaps;
}

}  // namespace

DistanceGrid::DistanceGrid(const std::vector<Vec3>& positions,
                           const std::vector<std::array<std::uint32_t, 3>>& triangles) {
    const std::vector<float> gaps = gaps_of(positions, triangles);
    Vec3 low(kInfinity);
    Vec3 high(-kInfinity);
    for (std::size_t i = 0; i < positions.size(); ++i) {
        if (gaps[i] < 0.0F) continue;  // of no triangle
        low = glm::min(low, positions[i]);
        high = glm::max(high, positions[i]);
    }
    if (!(low.x <= high.x)) return;
    low_ = low - kStep;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto a = static_cast<glm::length_t>(axis);
        count_.at(axis) = static_cast<int>((high[a] - low_[a]) / kStep) + 3;
    }
    nodes_.resize(node(0, 0, count_[2]));
    constexpr int kSlab = 8;
    const int slabs = (count_[2] + kSlab - 1) / kSlab;
    tbb::parallel_for(
        0, slabs, [&](int slab) { fill_slab(slab * kSlab, std::min((slab + 1) * kSlab, count_[2]), positions, gaps); });
}

// A triangle's point nearest to p lies square below p, on the triangle, or on an edge, or is a corner. With v its own
// nearest corner, which is no farther from it than the gap, |p − v|² <= d² + gap²: so the least of |p − v|² − gap² over
// all corners is no more than d².
void DistanceGrid::fill_slab(int first, int last, const std::vector<Vec3>& positions, const std::vector<float>& gaps) {
    const auto row = static_cast<std::size_t>(count_[0]);
    const std::size_t start = node(0, 0, first);
    std::vector<float> squares(node(0, 0, last) - start, kFarthest * kFarthest);
    for (std::size_t i = 0; i < positions.size(); ++i) {
        if (gaps[i] < 0.0F) continue;
        const float radius = std::sqrt(kFarthest * kFarthest + gaps[i] * gaps[i]);
        const Vec3 place = positions[i] - low_;
        const auto from = [&](glm::length_t axis, int least) {
            return std::max(least, static_cast<int>(std::ceil((place[axis] - radius) / kStep)));
        };
        const auto to = [&](glm::length_t axis, int most) {
            return std::min(most, static_cast<int>(std::floor((place[axis] + radius) / kStep)));
        };
        const int x0 = from(0, 0);
        const int x1 = to(0, count_[0] - 1);
        for (int z = from(2, first); z <= to(2, last - 1); ++z) {
            const float dz = static_cast<float>(z) * kStep - place.z;
            for (int y = from(1, 0); y <= to(1, count_[1] - 1); ++y) {
                const float dy = static_cast<float>(y) * kStep - place.y;
                const float rest = dz * dz + dy * dy - gaps[i] * gaps[i];
                float* squared = &squares[static_cast<std::size_t>((z - first) * count_[1] + y) * row];
                for (int x = x0; x <= x1; ++x) {
                    const float dx = static_cast<float>(x) * kStep - place.x;
                    squared[x] = std::min(squared[x], dx * dx + rest);
                }
            }
        }
    }
    for (std::size_t i = 0; i < squares.size(); ++i) {
        nodes_[start + i] = static_cast<std::uint8_t>(std::sqrt(std::max(0.0F, squares[i])) * (1.0F / kUnit));
    }
}

// A node's distance less the way to it holds for each of the eight round the point: the best of them.
float DistanceGrid::free_around(const Vec3& point) const {
    const Vec3 place = (point - low_) * (1.0F / kStep);
    const auto inside = [&](glm::length_t axis) {
        return place[axis] >= 0.0F && place[axis] < static_cast<float>(count_[static_cast<std::size_t>(axis)] - 1);
    };
    if (!inside(0) || !inside(1) || !inside(2)) return 0.0F;
    const auto x = static_cast<int>(place.x);
    const auto y = static_cast<int>(place.y);
    const auto z = static_cast<int>(place.z);
    const Vec3 share = place - Vec3(static_cast<float>(x), static_cast<float>(y), static_cast<float>(z));
    const std::uint8_t* corner = &nodes_[node(x, y, z)];
    const auto row = static_cast<std::size_t>(count_[0]);
    const std::size_t layer = row * static_cast<std::size_t>(count_[1]);
    float best = 0.0F;
    for (std::size_t k = 0; k < 8; ++k) {
        const float dx = share.x - static_cast<float>(k & 1U);
        const float dy = share.y - static_cast<float>((k >> 1U) & 1U);
        const float dz = share.z - static_cast<float>(k >> 2U);
        const auto held = static_cast<float>(corner[(k & 1U) + ((k >> 1U) & 1U) * row + (k >> 2U) * layer]);
        best = std::max(best, kUnit * held - kStep * std::sqrt(dx * dx + dy * dy + dz * dz));
    }
    return best;
}

}  // namespace understudy
