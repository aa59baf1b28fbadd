#include "sitter/hair/skin_distance.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

constexpr float kStep = 0.005F;        // of the grid
constexpr float kNear = 1.8F * kStep;  // cells this near to a vertex are measured by its tangent plane
constexpr float kInside = -2.0F * kStep;
constexpr std::uint32_t kNobody = ~0U;

}  // namespace

SkinDistance::SkinDistance(const std::vector<Vec3>& places, const std::vector<Vec3>& normals, const Vec3& low,
                           const Vec3& high)
    : low_(low), count_(glm::ivec3((high - low) / kStep) + 1) {
    const std::size_t cells = index(0, 0, count_.z);
    distance_.assign(cells, kInfinity);
    nearest_.assign(cells, kNobody);
    lay_skin(places, normals);
    tell_outside();
    carry_outward(places);
    nearest_.clear();
    nearest_.shrink_to_fit();
}

Vec3 SkinDistance::place_of(int x, int y, int z) const {
    return low_ + kStep * Vec3(static_cast<float>(x), static_cast<float>(y), static_cast<float>(z));
}

// The mesh is fine beside the grid, so the tangent plane of the nearest vertex stands for the skin.
void SkinDistance::lay_skin(const std::vector<Vec3>& places, const std::vector<Vec3>& normals) {
    std::vector<float> squared(distance_.size(), kNear * kNear);
    for (std::uint32_t v = 0; v < places.size(); ++v) {
        const Vec3 where = (places[v] - low_) / kStep;
        const glm::ivec3 first = glm::max(glm::ivec3(glm::floor(where - 1.8F)), glm::ivec3(0));
        const glm::ivec3 last = glm::min(glm::ivec3(glm::floor(where + 2.8F)), count_ - 1);
        for (int z = first.z; z <= last.z; ++z) {
            for (int y = first.y; y <= last.y; ++y) {
                for (int x = first.x; x <= last.x; ++x) {
                    const Vec3 gap = place_of(x, y, z) - places[v];
                    const std::size_t i = index(x, y, z);
                    const float far = glm::dot(gap, gap);
                    if (far >= squared[i]) continue;
                    squared[i] = far;
                    nearest_[i] = v;
                    distance_[i] = glm::dot(gap, normals[v]);
                }
            }
        }
    }
}

// Outside is what can be reached from the top without crossing the skin; the rest that no vertex is near is inside.
void SkinDistance::tell_outside() {
    std::vector<std::uint8_t> outside(distance_.size(), 0);
    std::vector<Cell> open;
    const auto reach = [&](int x, int y, int z) {
        if (x < 0 || y < 0 || z < 0 || x >= count_.x || y >= count_.y || z >= count_.z) return;
        const std::size_t i = index(x, y, z);
        if (outside[i] != 0 || nearest_[i] != kNobody) return;
        outside[i] = 1;
        open.push_back({x, y, z});
    };
    for (int z = 0; z < count_.z; ++z) {
        for (int x = 0; x < count_.x; ++x) reach(x, count_.y - 1, z);
    }
    while (!open.empty()) {
        const Cell c = open.back();
        open.pop_back();
        reach(c.x + 1, c.y, c.z);
        reach(c.x - 1, c.y, c.z);
        reach(c.x, c.y + 1, c.z);
        reach(c.x, c.y - 1, c.z);
        reach(c.x, c.y, c.z + 1);
        reach(c.x, c.y, c.z - 1);
    }
    for (std::size_t i = 0; i < distance_.size(); ++i) {
        if (nearest_[i] == kNobody && outside[i] == 0) distance_[i] = kInside;
    }
}

void SkinDistance::look_at_neighbour(const std::vector<Vec3>& places, const Cell& cell, const Cell& other) {
    const std::size_t i = index(cell.x, cell.y, cell.z);
    const std::uint32_t vertex = nearest_[index(other.x, other.y, other.z)];
    if (vertex == kNobody) return;
    const float far = glm::distance(place_of(cell.x, cell.y, cell.z), places[vertex]);
    if (far >= distance_[i]) return;
    distance_[i] = far;
    nearest_[i] = vertex;
}

// Each cell asks its neighbours for their nearest vertex, once from each end: Danielsson, "Euclidean Distance Mapping",
// Computer Graphics and Image Processing 14, 1980.
void SkinDistance::carry_outward(const std::vector<Vec3>& places) {
    const auto pass = [&](int way) {
        const auto along = [way](int k, int count) { return way > 0 ? k : count - 1 - k; };
        for (int k = 1; k < count_.z - 1; ++k) {
            const int z = along(k, count_.z);
            for (int j = 1; j < count_.y - 1; ++j) {
                const int y = along(j, count_.y);
                for (int i = 1; i < count_.x - 1; ++i) {
                    const int x = along(i, count_.x);
                    const Cell cell{x, y, z};
                    if (distance_[index(x, y, z)] < kNear) continue;
                    look_at_neighbour(places, cell, {x - way, y, z});
                    look_at_neighbour(places, cell, {x, y - way, z});
                    look_at_neighbour(places, cell, {x, y, z - way});
                    look_at_neighbour(places, cell, {x + way, y, z});
                    look_at_neighbour(places, cell, {x, y + way, z});
                    look_at_neighbour(places, cell, {x + way, y - way, z - way});
                    look_at_neighbour(places, cell, {x - way, y + way, z - way});
                    look_at_neighbour(places, cell, {x - way, y - way, z});
                }
            }
        }
    };
    pass(1);
    pass(-1);
    for (float& distance : distance_) distance = std::min(distance, 0.5F);
}

SkinDistance::Reading SkinDistance::at(const Vec3& place) const {
    const Vec3 most(glm::vec3(count_ - 1) - 1.001F);
    const Vec3 where = glm::clamp((place - low_) / kStep, Vec3(1.0F), most);
    const glm::ivec3 cell(where);
    const Vec3 t = where - Vec3(cell);
    const auto d = [&](int k, int j, int i) { return distance_[index(cell.x + i, cell.y + j, cell.z + k)]; };
    const auto mix = [](float a, float b, float s) { return a + s * (b - a); };
    const auto across = [&](int k, int j) { return mix(d(k, j, 0), d(k, j, 1), t.x); };
    const float low = mix(across(0, 0), across(0, 1), t.y);
    const float high = mix(across(1, 0), across(1, 1), t.y);
    const auto slope_x = [&](int k, int j) { return d(k, j, 1) - d(k, j, 0); };
    const Vec3 slope(mix(mix(slope_x(0, 0), slope_x(0, 1), t.y), mix(slope_x(1, 0), slope_x(1, 1), t.y), t.z),
                     mix(across(0, 1) - across(0, 0), across(1, 1) - across(1, 0), t.z), high - low);
    const float steep = glm::length(slope);
    return {mix(low, high, t.z), steep > 1e-6F ? slope / steep : Vec3(0.0F, 1.0F, 0.0F)};
}

}  // namespace understudy
