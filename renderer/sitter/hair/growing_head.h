// A posed head as strands see it: in its own axes, straight, with the eyes' middle as the origin.
#pragma once

#include <array>
#include <vector>

#include <glm/matrix.hpp>

#include "sitter/sitter.h"

namespace understudy {

// The middle of the skull, from between the eyes, on a head of usual size. Heads of the library, by eye.
inline constexpr Vec3 kSkullMiddle{0.0F, 0.030F, -0.075F};
inline constexpr float kUsualCrown = 0.117F;  // above the eyes

struct GrowingHead {
    explicit GrowingHead(const Sitter& sitter)
        : mesh(sitter.mesh), look(sitter.growth->look), lash_lines(sitter.growth->lash_lines) {
        const glm::dmat4 back = glm::inverse(sitter.growth->to_studio);
        const auto axes_of = [&](const Double3& place) { return Double3(back * glm::dvec4(place, 1.0)); };
        const Double3 middle = 0.5 * (axes_of((*sitter.eyes)[0].centre) + axes_of((*sitter.eyes)[1].centre));
        to_studio = sitter.growth->to_studio;
        to_studio[3] = to_studio * glm::dvec4(middle, 1.0);
        for (std::size_t e = 0; e < 2; ++e) eyes.at(e) = Vec3(axes_of((*sitter.eyes)[e].centre) - middle);
        const glm::mat3 turn(back);
        down = turn * Vec3(0.0F, -1.0F, 0.0F);
        places.reserve(mesh.positions.size());
        normals.reserve(mesh.positions.size());
        for (const Vec3& place : mesh.positions) places.emplace_back(axes_of(Double3(place)) - middle);
        for (const Vec3& normal : mesh.normals) normals.push_back(turn * normal);
        float crown = 0.0F;
        for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
            if (mesh.zones[t] != Zone::kScalp) continue;
            for (const auto v : mesh.triangles[t]) crown = std::max(crown, places[v].y);
        }
        size = crown / kUsualCrown;
        if (!sitter.growth->hat_band) return;
        has_hat = true;
        hat_middle = Vec3((*sitter.growth->hat_band)[0] - middle);
        hat_up = Vec3((*sitter.growth->hat_band)[1]);
    }

    // Whether the place lies under a hat's crown, or would.
    bool under_hat(const Vec3& place) const { return has_hat && glm::dot(place - hat_middle, hat_up) > 0.0F; }

    Vec3 in_studio(const Vec3& place) const { return {to_studio * glm::dvec4(Double3(place), 1.0)}; }

    const SitterMesh& mesh;
    const HairLook& look;
    const std::array<std::vector<std::uint32_t>, 2>& lash_lines;
    glm::dmat4 to_studio{1.0};
    std::vector<Vec3> places, normals;
    std::array<Vec3, 2> eyes{};
    Vec3 down{0.0F, -1.0F, 0.0F};
    bool has_hat = false;
    Vec3 hat_middle{0.0F}, hat_up{0.0F, 1.0F, 0.0F};
    float size = 1.0F;  // against the usual head's
};

}  // namespace understudy
