#include "sitter/own_mesh.h"

#include <fmt/format.h>
#include <tiny_obj_loader.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <glm/mat3x3.hpp>
#include <sstream>

#include "sitter/obj_check.h"

namespace understudy {
namespace {

// Of a head whose eyes are unknown. Crown above the eyes: sitting height less eye height, sitting, of the ANSUR II men
// (2012), 918 − 804 mm. The turning axis is taken in the middle of the head's depth.
constexpr double kCrownAboveEyes = 0.114;
constexpr double kHeadHeight = 0.23;
constexpr double kEyesBehindFront = 0.03;
constexpr double kPivotBehindEyes = 0.075;  // the atlas under the skull, as far behind the eyes as in an average head
constexpr double kLeastArea = 1e-10;        // square metres, of a whole mesh

Problem wrong(const std::filesystem::path& path, const std::string& what) {
    return {Blame::kWrongInput, fmt::format("{}: {}", path.string(), what)};
}

Expected<std::string> read_text(const std::filesystem::path& path) {
    std::error_code error;
    if (!std::filesystem::exists(path, error)) return wrong(path, "no such file; expected an .obj mesh");
    if (std::filesystem::is_directory(path, error)) return wrong(path, "a folder; expected an .obj mesh");
    const auto size = std::filesystem::file_size(path, error);
    if (error) return wrong(path, error.message());
    if (size > kMostObjBytes) return wrong(path, fmt::format("too large; expected at most {} bytes", kMostObjBytes));
    std::string text(size, '\0');
    std::ifstream file(path, std::ios::binary);
    file.read(text.data(), static_cast<std::streamsize>(size));
    if (!file) return wrong(path, "cannot be read");
    return text;
}

Expected<glm::dmat3> to_studio(const OwnMesh& own) {
    const Double3 side = glm::cross(own.up, own.front);
    if (!(glm::length(side) > 1e-6) || !(own.scale_m > 0.0) || !std::isfinite(own.scale_m)) {
        return wrong(own.path,
                     "scale, up and front make no axes; expected a positive scale and two different directions");
    }
    const Double3 up = glm::normalize(own.up);
    const Double3 x = glm::normalize(side);
    const Double3 front = glm::cross(x, up);
    return own.scale_m * glm::transpose(glm::dmat3(x, up, front));
}

// tinyobjloader reads what the check has found sound.
Expected<SkinnedMesh> parse(const std::string& text, const OwnMesh& own, const glm::dmat3& axes) {
    tinyobj::ObjReader reader;
    if (!reader.ParseFromString(text, "")) return wrong(own.path, reader.Error());
    SkinnedMesh mesh;
    const auto& flat = reader.GetAttrib().vertices;
    for (std::size_t i = 0; i + 2 < flat.size(); i += 3) {
        mesh.positions.push_back(axes * Double3(flat[i], flat[i + 1], flat[i + 2]));
    }
    BoneWeights rigid{};
    rigid[kSkull] = 1.0F;
    mesh.weights.assign(mesh.positions.size(), rigid);
    double area = 0.0;
    for (const auto& shape : reader.GetShapes()) {
        const auto& indices = shape.mesh.indices;
        for (std::size_t i = 0; i + 2 < indices.size(); i += 3) {
            std::array<std::uint32_t, 3> t{};
            for (std::size_t k = 0; k < 3; ++k) t.at(k) = static_cast<std::uint32_t>(indices[i + k].vertex_index);
            const Double3& a = mesh.positions.at(t[0]);
            const double twice = glm::length(glm::cross(mesh.positions.at(t[1]) - a, mesh.positions.at(t[2]) - a));
            if (!(twice > 0.0)) continue;  // a sliver has no side to light
            area += 0.5 * twice;
            mesh.triangles.push_back(t);
        }
    }
    if (!std::isfinite(area) || area < kLeastArea)
        return wrong(own.path, "every face is without area; expected a mesh");
    mesh.zones.assign(mesh.triangles.size(), Zone::kFace);
    return mesh;
}

Double3 guessed_eyes(const std::vector<Double3>& positions) {
    const auto top = std::max_element(positions.begin(), positions.end(),
                                      [](const Double3& a, const Double3& b) { return a.y < b.y; });
    double left = top->x;
    double right = top->x;
    double front = top->z;
    for (const Double3& p : positions) {
        if (p.y < top->y - kHeadHeight) continue;
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        front = std::max(front, p.z);
    }
    return {0.5 * (left + right), top->y - kCrownAboveEyes, front - kEyesBehindFront};
}

}  // namespace

Expected<OwnHead> read_own_head(const OwnMesh& own) {
    const auto text = read_text(own.path);
    if (!text) return text.problems();
    const auto sound = check_obj(*text, own.path.string());
    if (!sound) return sound.problems();
    const auto axes = to_studio(own);
    if (!axes) return axes.problems();
    try {
        auto mesh = parse(*text, own, *axes);
        if (!mesh) return mesh.problems();
        OwnHead head{std::move(*mesh), std::nullopt, kPivotBehindEyes};
        Double3 middle = guessed_eyes(head.mesh.positions);
        if (own.left_eye && own.right_eye) {
            const std::array<Double3, 2> eyes = {*axes * *own.right_eye, *axes * *own.left_eye};
            if (!(glm::distance(eyes[0], eyes[1]) > 2.0 * 0.012)) {
                return wrong(own.path,
                             "the eyes' centres are nearer than two eyeballs; expected the sitter's left and right");
            }
            middle = 0.5 * (eyes[0] + eyes[1]);
            head.eye_centres = {eyes[0] - middle, eyes[1] - middle};
        }
        for (Double3& p : head.mesh.positions) p -= middle;
        return head;
    } catch (const std::exception& error) {
        return wrong(own.path, error.what());
    }
}

}  // namespace understudy
