#include "advice/movement.h"

#include <cmath>

#include "meter/face/face_frame.h"

namespace understudy {

GazeAngles gaze_of(const TrialRoom& room) {
    const auto& mesh = room.stage().sitter_mesh();
    const auto face = mesh ? measure_face(room.studio().sitter, *mesh) : std::nullopt;
    if (!face) return {};
    const auto& eyes = *room.studio().sitter.eyes;
    const Double3 way = glm::normalize(face->frame.within(eyes[0].axis) + face->frame.within(eyes[1].axis));
    return gaze_angles(way);
}

SitterSettings moved(SitterSettings asked, Movement movement, double by, const GazeAngles& gaze) {
    switch (movement) {
        case Movement::kTurn:
            asked.turn_deg += by;
            break;
        case Movement::kChin:
            asked.chin_deg += by;
            break;
        case Movement::kLean:
            asked.lean_deg += by;
            break;
        case Movement::kForward:
            asked.step_m.z += by;
            break;
        case Movement::kAside:
            asked.step_m.x += by;
            break;
        case Movement::kGazeAcross:
            asked.gaze = GazeAngles{gaze.across_deg + by, gaze.up_deg};
            break;
        case Movement::kGazeUp:
            asked.gaze = GazeAngles{gaze.across_deg, gaze.up_deg + by};
            break;
    }
    return asked;
}

}  // namespace understudy
