#include "advice/sitter_ways.h"

#include <cmath>

#include "advice/movement.h"
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
    return gaze_angles(way);
}

Way of_sitter(FixKind kind, double last, double fine, double& (*member)(SitterSettings&)) {
    Way way{kind};
    way.sizes = sizes_up_to(last);
    way.fine = fine;
    way.set_up = [member](TrialRoom& room, double size) {
        return room.with_sitter([&](SitterSettings& sitter) { member(sitter) += size; });
    };
    return way;
}

double& chin(SitterSettings& sitter) { return sitter.chin_deg; }
double& turn(SitterSettings& sitter) { return sitter.turn_deg; }
double& forward(SitterSettings& sitter) { return sitter.step_m.z; }
double& aside(SitterSettings& sitter) { return sitter.step_m.x; }

Way gaze_toward(const Double3& key, const Double3& looks) {
    Way way{FixKind::kGaze};
    way.sizes = sizes_up_to(kFarthestGaze);
    way.fine = kDegree;
    way.set_up = [key, looks](TrialRoom& room, double size) {
        return room.with_sitter([&](SitterSettings& sitter) { sitter.gaze = turned(looks, key, size); });
    };
    return way;
}

}  // namespace

std::vector<Way> sitter_ways(const TrialRoom& room) {
    const auto& mesh = room.stage().sitter_mesh();
    const auto face = mesh ? measure_face(room.studio().sitter, *mesh) : std::nullopt;
    if (!face) return {};
    const FaceFrame& frame = face->frame;
    const Double3 key = glm::normalize(frame.place(room.studio().lights.front().centre));
    const Double3 looks = gaze_direction(gaze_of(room));
    std::vector<Way> ways{gaze_toward(key, looks)};
    ways.push_back(of_sitter(FixKind::kChin, key.y > 0.0 ? kMostChin : -kMostChin, kDegree, chin));
    if (std::abs(degrees(std::atan2(key.x, key.z))) > kDegreesStep) {
        ways.push_back(of_sitter(FixKind::kTurn, std::copysign(kMostTurn, key.x), kDegree, turn));
    }
    ways.push_back(of_sitter(FixKind::kStepBack, -kMostStep, kCentimetres, forward));
    ways.back().tell = [](Fix& fix, double size) { fix.number = -size; };
    ways.push_back(of_sitter(FixKind::kStepAside, kMostStep, kCentimetres, aside));
    ways.push_back(of_sitter(FixKind::kStepAside, -kMostStep, kCentimetres, aside));
    return ways;
}

}  // namespace understudy
