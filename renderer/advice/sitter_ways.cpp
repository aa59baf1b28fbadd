#include "advice/sitter_ways.h"

#include <cmath>

#include <fmt/format.h>

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

// change: of the scene file, from the sitter as it then is.
Way of_sitter(FixKind kind, double last, double fine, double& (*member)(SitterSettings&), const SitterSettings& asked,
              std::string (*change)(const SitterSettings&)) {
    Way way{kind};
    way.tell = [member, asked, change, kind](Fix& fix, double size) {
        SitterSettings then = asked;
        member(then) += size;
        fix.number = kind == FixKind::kStepBack ? -size : size;
        fix.changes = {change(then)};
    };
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

std::string chin_key(const SitterSettings& sitter) { return "sitter.chin=" + scene_number(sitter.chin_deg); }
std::string turn_key(const SitterSettings& sitter) { return "sitter.turn=" + scene_number(sitter.turn_deg); }
std::string step_key(const SitterSettings& sitter) {
    return fmt::format("sitter.step=[{}, {}]", scene_number(sitter.step_m.x), scene_number(sitter.step_m.z));
}

Way gaze_toward(const Double3& key, const Double3& looks) {
    Way way{FixKind::kGaze};
    way.sizes = sizes_up_to(kFarthestGaze);
    way.fine = kDegree;
    way.set_up = [key, looks](TrialRoom& room, double size) {
        return room.with_sitter([&](SitterSettings& sitter) { sitter.gaze = turned(looks, key, size); });
    };
    way.tell = [key, looks](Fix& fix, double size) {
        const GazeAngles angles = turned(looks, key, size);
        fix.number = size;
        fix.changes = {
            fmt::format("sitter.gaze=[{}, {}]", scene_number(angles.across_deg), scene_number(angles.up_deg))};
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
    const SitterSettings& asked = room.asked().sitter;
    std::vector<Way> ways{gaze_toward(key, looks)};
    ways.push_back(of_sitter(FixKind::kChin, key.y > 0.0 ? kMostChin : -kMostChin, kDegree, chin, asked, chin_key));
    if (std::abs(degrees(std::atan2(key.x, key.z))) > kDegreesStep) {
        ways.push_back(of_sitter(FixKind::kTurn, std::copysign(kMostTurn, key.x), kDegree, turn, asked, turn_key));
    }
    ways.push_back(of_sitter(FixKind::kStepBack, -kMostStep, kCentimetres, forward, asked, step_key));
    ways.push_back(of_sitter(FixKind::kStepAside, kMostStep, kCentimetres, aside, asked, step_key));
    ways.push_back(of_sitter(FixKind::kStepAside, -kMostStep, kCentimetres, aside, asked, step_key));
    return ways;
}

}  // namespace understudy
