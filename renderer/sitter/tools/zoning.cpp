#include "sitter/tools/zoning.h"

#include <algorithm>
#include <optional>

namespace understudy {
namespace {

using Amounts = std::vector<double>;  // one a vertex

// How far a shape moves each vertex, 1 = as far as the vertex it moves most.
Amounts reach(const Package& package, const std::string& shape) {
    Amounts amounts(package.positions.size(), 0.0);
    const auto found = std::find(package.shape_names.begin(), package.shape_names.end(), shape);
    if (found == package.shape_names.end()) return amounts;
    const auto first = static_cast<std::size_t>(found - package.shape_names.begin()) * amounts.size() * 3;
    double most = 0.0;
    for (std::size_t i = 0; i < amounts.size(); ++i) {
        const std::int16_t* d = &package.shape_deltas[first + 3 * i];
        amounts[i] = glm::length(Double3(d[0], d[1], d[2]));
        most = std::max(most, amounts[i]);
    }
    for (double& amount : amounts) amount = most > 0.0 ? amount / most : 0.0;
    return amounts;
}

struct Face {
    std::array<std::uint32_t, 4> corners;
    Double3 middle;
    Double3 normal;
};

Face face_of(const Package& package, std::size_t number) {
    Face face{package.faces[number], Double3(0.0), Double3(0.0)};
    for (const auto corner : face.corners) face.middle += 0.25 * package.positions[corner];
    const auto& p = package.positions;
    face.normal = glm::cross(p[face.corners[2]] - p[face.corners[0]], p[face.corners[3]] - p[face.corners[1]]);
    const double length = glm::length(face.normal);
    if (length > 0.0) face.normal /= length;
    return face;
}

double mean(const Amounts& amounts, const Face& face) {
    double sum = 0.0;
    for (const auto corner : face.corners) sum += 0.25 * amounts[corner];
    return sum;
}

// Möller and Trumbore, "Fast, Minimum Storage Ray/Triangle Intersection", JGT 2(1), 1997; both sides count.
bool meets(const Double3& origin, const Double3& way, double far, const Double3& a, const Double3& b,
           const Double3& c) {
    const Double3 ab = b - a;
    const Double3 ac = c - a;
    const Double3 p = glm::cross(way, ac);
    const double det = glm::dot(ab, p);
    if (std::abs(det) < 1e-18) return false;
    const Double3 s = origin - a;
    const double u = glm::dot(s, p) / det;
    if (u < 0.0 || u > 1.0) return false;
    const Double3 q = glm::cross(s, ab);
    const double v = glm::dot(way, q) / det;
    const double t = glm::dot(ac, q) / det;
    return v >= 0.0 && u + v <= 1.0 && t > 1e-5 && t < far;
}

bool looks_at_skin(const Package& package, const std::vector<Face>& faces, const Face& from) {
    const auto& p = package.positions;
    return std::any_of(faces.begin(), faces.end(), [&](const Face& face) {
        const auto& k = face.corners;
        return meets(from.middle, from.normal, 0.08, p[k[0]], p[k[1]], p[k[2]]) ||
               meets(from.middle, from.normal, 0.08, p[k[0]], p[k[2]], p[k[3]]);
    });
}

struct Reaches {
    Amounts ear_left, ear_right, upper_lip, lower_lip, nose, nose_wide, chin, cheek_left, cheek_right;
};

Reaches all_reaches(const Package& package) {
    return {reach(package, "ears/l-ear-size-big"),
            reach(package, "ears/r-ear-size-big"),
            reach(package, "mouth/mouth-upperlip-volume-inflate"),
            reach(package, "mouth/mouth-lowerlip-volume-inflate"),
            reach(package, "nose/nose-scale-horiz-incr"),
            reach(package, "nose/nose-scale-depth-incr"),
            reach(package, "chin/chin-width-max"),
            reach(package, "cheek/l-cheek-bones-out"),
            reach(package, "cheek/r-cheek-bones-out")};
}

// Lids and brow lie round the eye. Sizes of the package's own neutral face.
std::optional<Zone> eye_zone(const Face& face, const std::array<Double3, 2>& eyes) {
    const Double3 d = face.middle - (face.middle.x < 0.0 ? eyes[0] : eyes[1]);
    const double outward = face.middle.x < 0.0 ? -d.x : d.x;
    const bool near_lid = glm::length(d) < 0.0185 && outward > -0.0145 && outward < 0.0175;
    if (near_lid && d.y > -0.010 && d.y < 0.0105) return d.y > 0.0 ? Zone::kUpperLid : Zone::kLowerLid;
    if (glm::length(d) < 0.0172) return d.y > 0.0 ? Zone::kUpperLid : Zone::kLowerLid;  // the socket behind
    if (d.z > 0.0 && outward > -0.020 && outward < 0.028 && d.y > 0.0 && d.y < 0.026) return Zone::kBrow;
    return std::nullopt;
}

Zone face_zone(const Face& face, const Reaches& r, const std::array<Double3, 2>& eyes) {
    if (mean(r.ear_left, face) > 0.12 || mean(r.ear_right, face) > 0.12) return Zone::kEar;
    if (const auto zone = eye_zone(face, eyes)) return *zone;
    if (mean(r.upper_lip, face) > 0.3 || mean(r.lower_lip, face) > 0.3) return Zone::kLips;
    const double eye_y = eyes[0].y;
    const double eye_z = eyes[0].z;
    const Double3& m = face.middle;
    if (m.y < eye_y + 0.012 && (mean(r.nose, face) > 0.12 || mean(r.nose_wide, face) > 0.15)) return Zone::kNose;
    // Above the brow to the hairline, a plane that leans back.
    if (m.y - eye_y > 0.075 + 0.6 * std::min(0.0, m.z - eye_z) || m.z < eye_z - 0.055) {
        return m.y > eye_y - 0.085 + 0.3 * (eye_z - 0.09 - m.z) ? Zone::kScalp : Zone::kNeck;
    }
    if (m.y > eye_y + 0.012) return Zone::kForehead;
    if (mean(r.chin, face) > 0.15) return Zone::kChin;
    if (m.y < eye_y - 0.002 && m.y > eye_y - 0.075 && std::abs(m.x) > 0.015) return Zone::kCheek;
    return Zone::kFace;
}

}  // namespace

std::vector<Zone> zones_of(const Package& package, const std::vector<std::size_t>& numbers,
                           const std::array<Double3, 2>& eye_centres) {
    const Reaches reaches = all_reaches(package);
    std::vector<Face> faces;
    for (const auto number : numbers) faces.push_back(face_of(package, number));
    const double eye_y = eye_centres[0].y;
    std::vector<Zone> zones;
    for (const Face& face : faces) {
        const Double3& m = face.middle;
        // Under the jaw: a plane that rises toward the nape.
        if (m.y < eye_y - 0.100 - 0.55 * (m.z - eye_centres[0].z)) {
            zones.push_back(Zone::kNeck);
            continue;
        }
        const bool by_the_mouth = std::abs(m.x) < 0.035 && m.y < eye_y - 0.045 && m.y > eye_y - 0.11;
        if (by_the_mouth && m.z < eye_centres[0].z + 0.012 && looks_at_skin(package, faces, face)) {
            zones.push_back(Zone::kMouth);
            continue;
        }
        zones.push_back(face_zone(face, reaches, eye_centres));
    }
    return zones;
}

}  // namespace understudy
