#include "sitter/tools/zoning.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sitter/tools/loops.h"

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
};

Face face_of(const Package& package, std::size_t number) {
    Face face{package.faces[number], Double3(0.0)};
    for (const auto corner : face.corners) face.middle += 0.25 * package.positions[corner];
    return face;
}

double mean(const Amounts& amounts, const Face& face) {
    double sum = 0.0;
    for (const auto corner : face.corners) sum += 0.25 * amounts[corner];
    return sum;
}

// Vertex numbers of the package's own mesh: an edge of the line where red lip meets skin, one of the line where the
// lips meet each other, a vertex between the two and one behind.
constexpr std::array<std::uint32_t, 2> kLipBorderEdge = {362, 7118};
constexpr std::array<std::uint32_t, 2> kLipContactEdge = {520, 7267};
constexpr std::uint32_t kInMouth = 571;

struct Reaches {
    Amounts ear_left, ear_right, nose, nose_wide;
};

Reaches all_reaches(const Package& package) {
    return {reach(package, "ears/l-ear-trans-depth-forward"), reach(package, "ears/r-ear-trans-depth-forward"),
            reach(package, "nose/nose-scale-horiz-incr"), reach(package, "nose/nose-scale-depth-incr")};
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
    if (mean(r.ear_left, face) > 0.6 || mean(r.ear_right, face) > 0.6) return Zone::kEar;
    if (const auto zone = eye_zone(face, eyes)) return *zone;
    const double eye_y = eyes[0].y;
    const double eye_z = eyes[0].z;
    const Double3& m = face.middle;
    if (m.y < eye_y + 0.012 && (mean(r.nose, face) > 0.2 || mean(r.nose_wide, face) > 0.2)) return Zone::kNose;
    // Above the brow to the hairline, a plane that leans back.
    if (m.y - eye_y > 0.075 + 0.6 * std::min(0.0, m.z - eye_z) || m.z < eye_z - 0.055) {
        return m.y > eye_y - 0.085 + 0.3 * (eye_z - 0.09 - m.z) ? Zone::kScalp : Zone::kNeck;
    }
    if (m.y > eye_y + 0.012) return Zone::kForehead;
    if (m.y < eye_y - 0.079 && std::abs(m.x) < 0.030) return Zone::kChin;
    if (m.y < eye_y - 0.002 && m.y > eye_y - 0.075 && std::abs(m.x) > 0.015) return Zone::kCheek;
    return Zone::kFace;
}

}  // namespace

std::vector<std::uint32_t> line_between_lips(const Package& package) {
    auto line = QuadNet(package.faces).loop_from(kLipContactEdge);
    if (line.empty()) return line;
    const auto at = [&](std::uint32_t v) { return package.positions[v]; };
    const auto by_x = [&](std::uint32_t a, std::uint32_t b) { return at(a).x < at(b).x; };
    std::rotate(line.begin(), std::min_element(line.begin(), line.end(), by_x), line.end());
    // On its way it passes through the middle twice; the higher time belongs to the upper lip.
    const auto left = std::max_element(line.begin(), line.end(), by_x);
    const auto nearer_middle = [&](std::uint32_t a, std::uint32_t b) { return std::abs(at(a).x) < std::abs(at(b).x); };
    const auto one = *std::min_element(line.begin(), left, nearer_middle);
    const auto other = *std::min_element(left, line.end(), nearer_middle);
    if (at(one).y < at(other).y) std::reverse(line.begin() + 1, line.end());
    return line;
}

std::vector<Zone> zones_of(const Package& package, const std::vector<std::size_t>& numbers,
                           const std::array<Double3, 2>& eye_centres) {
    const Reaches reaches = all_reaches(package);
    const QuadNet net(package.faces);
    const auto mouth = net.enclosed(line_between_lips(package), kInMouth);
    const auto mouth_and_lips = net.enclosed(net.loop_from(kLipBorderEdge), kInMouth);
    const double eye_y = eye_centres[0].y;
    std::vector<Zone> zones;
    for (const auto number : numbers) {
        const Face face = face_of(package, number);
        const Double3& m = face.middle;
        if (mouth.count(number) > 0 || number >= package.body_faces) {
            zones.push_back(Zone::kMouth);
        } else if (mouth_and_lips.count(number) > 0) {
            zones.push_back(Zone::kLips);
        } else if (m.y < eye_y - 0.100 - 0.55 * (m.z - eye_centres[0].z)) {
            zones.push_back(Zone::kNeck);  // under the jaw: a plane that rises toward the nape
        } else {
            zones.push_back(face_zone(face, reaches, eye_centres));
        }
    }
    return zones;
}

}  // namespace understudy
