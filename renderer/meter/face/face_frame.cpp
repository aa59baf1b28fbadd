#include "meter/face/face_frame.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

FaceFrame frame_of(const std::array<Eye, 2>& eyes) {
    FaceFrame frame;
    frame.origin = 0.5 * (eyes[0].centre + eyes[1].centre);
    frame.right = glm::normalize(eyes[1].centre - eyes[0].centre);
    frame.up = glm::normalize(eyes[0].up - glm::dot(eyes[0].up, frame.right) * frame.right);
    frame.forward = glm::cross(frame.right, frame.up);
    return frame;
}

constexpr double kStep = 0.0005;          // along a profile
constexpr double kNoseTipAbove = -0.010;  // the tip lies between these heights
constexpr double kNoseTipBelow = -0.065;
constexpr double kLongestLip = 0.025;  // from the tip down to where the lip must have begun
constexpr double kRise = 0.0003;       // that tells a valley from roughness
constexpr double kCorner = 0.001;      // that tells a corner from a slope
// Across the wings: how far over the base, from where to where, and how level the cheek begins beside them.
constexpr double kWingsAbove = 0.005;
constexpr double kNarrowest = 0.008;
constexpr double kWidest = 0.028;
constexpr double kCheekSlope = 0.6;
// Across the root.
constexpr double kRootHalfWidth = 0.009;

class Relief {
  public:
    Relief(const MeshTree& mesh, const FaceFrame& frame) : mesh_(mesh), frame_(frame) {}

    // How far forward the face reaches at a place right and up of the eyes' midpoint; far behind where there is none.
    double forward(double x, double y) const {
        constexpr double kBefore = 0.10;
        // A little off the middle, where a ray would run along edges of the mesh.
        constexpr double kOff = 0.0002;
        const Double3 from = frame_.origin + (x + kOff) * frame_.right + y * frame_.up + kBefore * frame_.forward;
        const float distance = mesh_.distance({Vec3(from), Vec3(-frame_.forward)});
        return kBefore - static_cast<double>(distance);
    }

    double tip() const {
        double best = kNoseTipAbove;
        for (double y = kNoseTipAbove; y > kNoseTipBelow; y -= kStep) {
            if (forward(0.0, y) > forward(0.0, best)) best = y;
        }
        return best;
    }

    // Where the nose's underside turns into the upper lip: of the profile between the tip and the first valley under
    // it, what lies farthest behind the straight line between those. On a face whose lip stands out from the nose's
    // base on that is the valley itself.
    std::optional<double> base(double tip) const {
        const auto valley = valley_under(tip);
        if (!valley) return std::nullopt;
        const glm::dvec2 from(tip, forward(0.0, tip));
        const glm::dvec2 along = glm::normalize(glm::dvec2(*valley, forward(0.0, *valley)) - from);
        double base = *valley;
        double farthest = kCorner;
        for (double y = tip; y > *valley; y -= kStep) {
            const glm::dvec2 way = glm::dvec2(y, forward(0.0, y)) - from;
            const double behind = along.x * way.y - along.y * way.x;
            if (behind <= farthest) continue;
            farthest = behind;
            base = y;
        }
        return base;
    }

    // Outward from where a wing falls off most steeply, to where it has become cheek.
    double half_width(double base, double side) const {
        const double y = base + kWingsAbove;
        const auto fall = [&](double x) { return (forward(side * (x - kStep), y) - forward(side * x, y)) / kStep; };
        double steepest = kNarrowest;
        for (double x = kNarrowest; x < kWidest; x += kStep) {
            if (fall(x) > fall(steepest)) steepest = x;
        }
        double x = steepest;
        while (x < kWidest && fall(x) > kCheekSlope) x += kStep;
        return x;
    }

  private:
    std::optional<double> valley_under(double tip) const {
        double deepest = tip;
        for (double y = tip; y > tip - kLongestLip; y -= kStep) {
            const double here = forward(0.0, y);
            if (here < forward(0.0, deepest)) deepest = y;
            if (deepest < tip && here > forward(0.0, deepest) + kRise) return deepest;
        }
        return std::nullopt;
    }

    const MeshTree& mesh_;
    const FaceFrame& frame_;
};

// Of the lips' red: its height in the middle, and the height of its corners.
struct Lips {
    double top = -HUGE_VAL;
    double corner_aside = 0.0;
    double corners = 0.0;
};

std::optional<Lips> find_lips(const SitterMesh& mesh, const FaceFrame& frame) {
    constexpr double kMiddle = 0.004;
    Lips lips;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] != Zone::kLips) continue;
        for (const auto v : mesh.triangles[t]) {
            const Double3 place = frame.place(Double3(mesh.positions[v]));
            if (std::abs(place.x) < kMiddle) lips.top = std::max(lips.top, place.y);
            if (std::abs(place.x) <= lips.corner_aside) continue;
            lips.corner_aside = std::abs(place.x);
            lips.corners = place.y;
        }
    }
    return std::isfinite(lips.top) ? std::optional(lips) : std::nullopt;
}

double width_of_lids(const Sitter& sitter, const FaceFrame& frame) {
    if (!sitter.growth) return FaceMeasures{}.eye_width;
    double width = 0.0;
    for (const auto& line : sitter.growth->lash_lines) {
        double low = HUGE_VAL;
        double high = -HUGE_VAL;
        for (const auto v : line) {
            const double x = frame.place(Double3(sitter.mesh.positions[v])).x;
            low = std::min(low, x);
            high = std::max(high, x);
        }
        width = std::max(width, high - low);
    }
    return width;
}

}  // namespace

bool FaceMeasures::is_nose(const Double3& in_face) const {
    constexpr double kUnderBase = 0.002;
    if (in_face.y > 0.0 || in_face.y < nose_base - kUnderBase) return false;
    const double down = std::min(1.0, in_face.y / (nose_base + kWingsAbove));
    return std::abs(in_face.x) <= kRootHalfWidth + down * (nose_half_width - kRootHalfWidth);
}

std::optional<FaceMeasures> measure_face(const Sitter& sitter, const MeshTree& mesh) {
    if (!sitter.eyes) return std::nullopt;
    FaceMeasures face;
    face.frame = frame_of(*sitter.eyes);
    const Relief relief(mesh, face.frame);
    face.nose_tip = relief.tip();
    const auto base = relief.base(face.nose_tip);
    const auto lips = find_lips(sitter.mesh, face.frame);
    if (!base || !lips) return std::nullopt;
    face.nose_base = *base;
    face.nose_length = -*base;
    face.nose_half_width = 0.5 * (relief.half_width(*base, -1.0) + relief.half_width(*base, 1.0));
    face.lip_top = lips->top;
    face.mouth = lips->corners;
    face.eye_width = width_of_lids(sitter, face.frame);
    return face;
}

}  // namespace understudy
