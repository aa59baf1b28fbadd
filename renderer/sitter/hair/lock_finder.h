// Which lock a hair belongs to: the one whose leader's root is nearest.
#pragma once

#include <unordered_map>
#include <vector>

#include "sitter/hair/scalp.h"

namespace understudy {

class LockFinder {
  public:
    static constexpr std::size_t kNobody = ~std::size_t{0};

    explicit LockFinder(const std::vector<Root>& leaders) : leaders_(leaders) {
        for (std::size_t i = 0; i < leaders.size(); ++i) cells_[cell_of(leaders[i].place)].push_back(i);
    }

    std::size_t nearest(const Root& root) const {
        std::size_t best = kNobody;
        float nearest = kCell * kCell;
        const glm::ivec3 middle = steps_of(root.place);
        for (int k = 0; k < 27; ++k) {
            const glm::ivec3 at = middle + glm::ivec3(k % 3 - 1, k / 3 % 3 - 1, k / 9 - 1);
            const auto found = cells_.find(number_of(at));
            if (found == cells_.end()) continue;
            for (const std::size_t i : found->second) {
                const Vec3 gap = leaders_[i].place - root.place;
                const float far = glm::dot(gap, gap);
                if (far >= nearest) continue;
                nearest = far;
                best = i;
            }
        }
        return best;
    }

  private:
    static constexpr float kCell = 0.012F;

    static glm::ivec3 steps_of(const Vec3& place) { return glm::ivec3(glm::floor(place / kCell)) + 512; }
    static std::uint32_t number_of(const glm::ivec3& at) {
        return static_cast<std::uint32_t>((at.z * 1024 + at.y) * 1024 + at.x);
    }
    static std::uint32_t cell_of(const Vec3& place) { return number_of(steps_of(place)); }

    const std::vector<Root>& leaders_;
    std::unordered_map<std::uint32_t, std::vector<std::size_t>> cells_;
};

}  // namespace understudy
