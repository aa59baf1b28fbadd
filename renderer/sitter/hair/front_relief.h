// The face as seen from straight before it: how far forward the skin comes at each place.
#pragma once

#include <algorithm>
#include <vector>

#include "sitter/hair/growing_head.h"

namespace understudy {

class FrontRelief {
  public:
    static constexpr float kStep = 0.0005F;

    FrontRelief(const GrowingHead& head, const Vec2& low, const Vec2& high)
        : low_(low),
          across_(static_cast<int>((high.x - low.x) / kStep) + 2),
          up_(static_cast<int>((high.y - low.y) / kStep) + 2) {
        forward_.assign(static_cast<std::size_t>(across_) * static_cast<std::size_t>(up_), -kInfinity);
        for (const auto& corners : head.mesh.triangles) {
            lay(head.places[corners[0]], head.places[corners[1]], head.places[corners[2]]);
        }
    }

    // The skin's place; −infinity forward where there is none.
    Vec3 at(float x, float y) const {
        const float column = std::clamp((x - low_.x) / kStep, 0.0F, static_cast<float>(across_) - 1.01F);
        const float row = std::clamp((y - low_.y) / kStep, 0.0F, static_cast<float>(up_) - 1.01F);
        const int i = static_cast<int>(column);
        const int j = static_cast<int>(row);
        const float s = column - static_cast<float>(i);
        const float t = row - static_cast<float>(j);
        const float near = (1.0F - s) * cell(i, j) + s * cell(i + 1, j);
        const float far = (1.0F - s) * cell(i, j + 1) + s * cell(i + 1, j + 1);
        return {x, y, (1.0F - t) * near + t * far};
    }
    Vec3 normal(float x, float y) const {
        constexpr float kReach = 0.0015F;
        const Vec3 right = at(x + kReach, y) - at(x - kReach, y);
        const Vec3 above = at(x, y + kReach) - at(x, y - kReach);
        return glm::normalize(glm::cross(right, above));
    }

  private:
    std::size_t index(int i, int j) const {
        return static_cast<std::size_t>(j) * static_cast<std::size_t>(across_) + static_cast<std::size_t>(i);
    }
    float cell(int i, int j) const { return forward_[index(i, j)]; }

    void lay(const Vec3& a, const Vec3& b, const Vec3& c) {
        const auto cross = [](const Vec3& p, const Vec3& q, float x, float y) {
            return (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x);
        };
        const float area = cross(a, b, c.x, c.y);
        if (!(area > 0.0F)) return;  // seen from behind
        const auto column = [&](float x) { return static_cast<int>(std::ceil((x - low_.x) / kStep)); };
        const auto row = [&](float y) { return static_cast<int>(std::ceil((y - low_.y) / kStep)); };
        const int first_i = std::max(0, column(std::min({a.x, b.x, c.x})));
        const int last_i = std::min(across_ - 1, column(std::max({a.x, b.x, c.x})));
        const int first_j = std::max(0, row(std::min({a.y, b.y, c.y})));
        const int last_j = std::min(up_ - 1, row(std::max({a.y, b.y, c.y})));
        for (int j = first_j; j <= last_j; ++j) {
            for (int i = first_i; i <= last_i; ++i) {
                const float x = low_.x + kStep * static_cast<float>(i);
                const float y = low_.y + kStep * static_cast<float>(j);
                const float of_a = cross(b, c, x, y) / area;
                const float of_b = cross(c, a, x, y) / area;
                const float of_c = 1.0F - of_a - of_b;
                if (std::min({of_a, of_b, of_c}) < -1e-4F) continue;
                float& forward = forward_[index(i, j)];
                forward = std::max(forward, of_a * a.z + of_b * b.z + of_c * c.z);
            }
        }
    }

    Vec2 low_;
    int across_, up_;
    std::vector<float> forward_;
};

}  // namespace understudy
