// The library's heads, as every test of this room asks for them.
#pragma once

#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <map>
#include <string>

#include "sitter/head.h"

namespace understudy {

inline constexpr std::array<const char*, 12> kLibraryHeads = {"alder",   "aspen",  "birch", "cedar", "elm",    "hazel",
                                                              "juniper", "linden", "maple", "rowan", "willow", "yew"};

inline Library test_library() {
    const std::filesystem::path source = UNDERSTUDY_SOURCE_DIR;
    return {source / "assets/kit", source / "assets/heads",
            std::filesystem::path(UNDERSTUDY_BUILD_DIR) / "head/prepared", ""};
}

inline SitterSettings library_head(const std::string& name) {
    SitterSettings settings;
    settings.head = LibraryHead{name, test_library().heads / (name + ".toml")};
    settings.gaze = GazeAngles{};
    return settings;
}

// Fails the test, saying how to make the prepared mesh, when it is missing.
inline HeadPointer loaded(const SitterSettings& settings) {
    const auto head = load_head(settings, test_library());
    if (head) return *head;
    for (const auto& problem : head.problems()) ADD_FAILURE() << problem.text;
    ADD_FAILURE() << "to make the head: assets/fetch_head.sh " << UNDERSTUDY_BUILD_DIR << " && " << UNDERSTUDY_BUILD_DIR
                  << "/prepare_head " << UNDERSTUDY_BUILD_DIR << "/head/package " << test_library().head_mesh.string();
    return nullptr;
}

// A library head as its file has it, loaded once: what a pose changes (gaze, lids, turn …) needs no other.
inline const HeadPointer& loaded_once(const std::string& name) {
    static std::map<std::string, HeadPointer> heads;
    const auto found = heads.find(name);
    return found != heads.end() ? found->second : heads[name] = loaded(library_head(name));
}

inline bool is_worn(Zone zone) { return zone >= Zone::kTop && zone <= Zone::kGlasses; }

// Straight, looking straight ahead; each head is loaded once.
inline const Sitter& posed(const std::string& name) {
    static std::map<std::string, Sitter> sitters;
    const auto found = sitters.find(name);
    if (found != sitters.end()) return found->second;
    const HeadPointer& head = loaded_once(name);
    return sitters[name] = head ? pose_head(*head, library_head(name), std::nullopt) : Sitter{};
}

struct FirstHit {
    double distance = 1e9;
    std::size_t triangle = 0;
};

// Möller and Trumbore 1997, over every triangle; both sides count.
inline FirstHit first_hit(const SitterMesh& mesh, const Double3& origin, const Double3& way) {
    FirstHit best;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const auto& k = mesh.triangles[t];
        const Double3 a(mesh.positions[k[0]]);
        const Double3 ab = Double3(mesh.positions[k[1]]) - a;
        const Double3 ac = Double3(mesh.positions[k[2]]) - a;
        const Double3 p = glm::cross(way, ac);
        const double det = glm::dot(ab, p);
        if (det == 0.0) continue;
        const Double3 s = origin - a;
        const double u = glm::dot(s, p) / det;
        if (u < 0.0 || u > 1.0) continue;
        const Double3 q = glm::cross(s, ab);
        const double v = glm::dot(way, q) / det;
        const double distance = glm::dot(ac, q) / det;
        if (v < 0.0 || u + v > 1.0 || distance <= 0.0 || distance >= best.distance) continue;
        best = {distance, t};
    }
    return best;
}

}  // namespace understudy
