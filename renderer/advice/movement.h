// What a sitter does between one frame and the next, as a direction and how far.
#pragma once

#include <array>

#include "advice/trial_room.h"

namespace understudy {

// Each has a size, degrees or metres; what is positive is said beside it.
enum class Movement {
    kTurn,        // of the head, toward camera right
    kChin,        // up
    kLean,        // of the head, toward camera right
    kForward,     // a step toward the camera
    kAside,       // a step toward camera right
    kGazeAcross,  // of the eyes alone, toward camera right
    kGazeUp,      // of the eyes alone, up
};

struct MovementSpan {
    Movement movement;
    double farthest;  // as far as it is tried, either way. Chosen: about as far as a sitter goes for a portrait
    double step;      // at which it is looked at first
    double fine;      // how well its limit is told
};

inline constexpr std::array<MovementSpan, 7> kMovements{{{Movement::kTurn, 60.0, 10.0, 1.0},
                                                         {Movement::kChin, 25.0, 5.0, 1.0},
                                                         {Movement::kLean, 20.0, 5.0, 1.0},
                                                         {Movement::kForward, 0.50, 0.10, 0.01},
                                                         {Movement::kAside, 0.50, 0.10, 0.01},
                                                         {Movement::kGazeAcross, 30.0, 7.5, 1.0},
                                                         {Movement::kGazeUp, 25.0, 6.25, 1.0}}};

// Where the eyes look, in the face's own axes, as the sitter sits now; straight ahead for one without a face.
GazeAngles gaze_of(const TrialRoom& room);

// The sitter so far from how it is asked for. gaze: where the eyes look as asked for. What the eyes look at, camera or
// light, they keep looking at, unless it is they that move.
SitterSettings moved(SitterSettings asked, Movement movement, double by, const GazeAngles& gaze);

}  // namespace understudy
