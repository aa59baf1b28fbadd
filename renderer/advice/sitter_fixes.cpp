#include "advice/sitter_fixes.h"

#include <cmath>

#include "advice/fix_search.h"
#include "meter/face/face_frame.h"

namespace understudy {

namespace {

// As far as a sitter is asked to go; chosen. Eyes, chin and head in degrees, steps in metres.
constexpr double kFarthestGaze = 25.0;
constexpr double kMostChin = 25.0;
constexpr double kMostTurn = 40.0;
constexpr double kMostStep = 0.40;
constexpr double kDegreesStep = 5.0;
constexpr double kDegree = 1.0;
constexpr double kCentimetres = 0.02;

// The angles, in the face's axes, of a way that turns from one direction toward another by so much at the most.
GazeAngles turned(const Double3& from, const Double3& toward, double by_deg) {
    const double apart = std::acos(std::clamp(glm::dot(from, toward), -1.0, 1.0));
    const double turn = std::min(radians(by_deg), apart);
    const Double3 aside = toward - glm::dot(toward, from) * from;
    const double length = glm::length(aside);
    const Double3 way = length > 0.0 ? std::cos(turn) * from + std::sin(turn) * aside / length : from;
    return {degrees(std::atan2(way.x, way.z)), degrees(std::asin(std::clamp(way.y, -1.0, 1.0)))};
}

void keep(std::vector<Fix>& fixes, FixKind kind, const std::optional<Found>& found) {
    if (found) fixes.push_back({kind, found->size, 0.0, "", found->look});
}

// The nearer of two found ways, by size.
std::optional<Found> nearer(const std::optional<Found>& a, const std::optional<Found>& b) {
    if (!a || !b) return a ? a : b;
    return std::abs(a->size) <= std::abs(b->size) ? a : b;
}

}  // namespace

std::vector<Fix> sitter_fixes(TrialRoom& room) {
    std::vector<Fix> fixes;
    const auto& mesh = room.stage().sitter_mesh();
    const auto face = mesh ? measure_face(room.studio().sitter, *mesh) : std::nullopt;
    if (!face) return fixes;
    const FaceFrame& frame = face->frame;
    const Double3 key = glm::normalize(frame.place(room.studio().lights.front().centre));
    const Double3 looks = glm::normalize(frame.within((*room.studio().sitter.eyes)[0].axis) +
                                         frame.within((*room.studio().sitter.eyes)[1].axis));
    const Change gaze = [&](double size) {
        return room.with_sitter([&](SitterSettings& sitter) { sitter.gaze = turned(looks, key, size); });
    };
    keep(fixes, FixKind::kGaze, least_change(room, gaze, sizes_up_to(kFarthestGaze), kDegree));

    const auto by = [&](auto member, double last, double fine) {
        const Change change = [&, member](double size) {
            return room.with_sitter([&](SitterSettings& sitter) { member(sitter) += size; });
        };
        return least_change(room, change, sizes_up_to(last), fine);
    };
    const auto chin = [](SitterSettings& sitter) -> double& { return sitter.chin_deg; };
    keep(fixes, FixKind::kChin, by(chin, key.y > 0.0 ? kMostChin : -kMostChin, kDegree));
    const auto turn = [](SitterSettings& sitter) -> double& { return sitter.turn_deg; };
    if (std::abs(degrees(std::atan2(key.x, key.z))) > kDegreesStep) {
        keep(fixes, FixKind::kTurn, by(turn, std::copysign(kMostTurn, key.x), kDegree));
    }
    const auto back = [](SitterSettings& sitter) -> double& { return sitter.step_m.z; };
    if (auto found = by(back, -kMostStep, kCentimetres)) {
        found->size = -found->size;
        keep(fixes, FixKind::kStepBack, found);
    }
    const auto aside = [](SitterSettings& sitter) -> double& { return sitter.step_m.x; };
    keep(fixes, FixKind::kStepAside, nearer(by(aside, kMostStep, kCentimetres), by(aside, -kMostStep, kCentimetres)));
    return fixes;
}

}  // namespace understudy
