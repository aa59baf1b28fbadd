// One change that lights both eyes, and what else it does. Plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/eye_state.h"

namespace understudy {

// Cheapest first: what the sitter does, what is dialled, what is held, what is moved, what is rebuilt.
enum class FixKind {
    kGaze,       // number: degrees that the eyes turn toward the key
    kChin,       // degrees, positive up
    kTurn,       // of the head, degrees, positive toward camera right
    kStepBack,   // metres, positive away from the camera
    kStepAside,  // metres, positive camera right
    kPower,      // stops, of another light than the key
    kReflector,  // metres, from the face to the board
    kHeight,     // metres, of the key's middle, positive up
    kArc,        // metres, of its height, along an arc round the face: its distance stays
    kAngle,      // degrees round the sitter, positive toward camera right
    kDistance,   // metres from the face, positive farther
    kModifier,   // a larger one; number: its width over the old one's
};

// What one setup is like, as far as a change is judged by it.
struct SetupLook {
    EyesState eyes;
    std::optional<LightPattern> pattern;
    std::optional<double> nose_edge_m;
};

// The same change on another face than the sitter's.
struct OnFace {
    std::string face;              // "deep-set eyes", "prominent eyes"
    bool enough = false;           // as it stands
    std::optional<double> number;  // where it is not: what would be, up to twice as much; none: not that either
    double after = 0.0;            // as a fix's
};

struct Fix {
    FixKind kind = FixKind::kChin;
    double number = 0.0;
    double after = 0.0;  // of what has a value of its own: the height, distance or angle that results
    std::string thing;   // the light, panel surface or modifier, where the kind has one
    // The same as changes of the scene file, KEY=VALUE; none where it takes a new table, which is then in `table`.
    std::vector<std::string> changes{};
    std::string table{};
    SetupLook look{};  // as it would then be
    std::vector<OnFace> faces;
};

// Where along a way an eye is lost.
struct CutOff {
    bool ever_alive = false;   // anywhere on the way
    std::optional<double> at;  // none: not lost up to the way's end
};

struct HeightCutOff {
    std::string face;               // "as set", "deep-set eyes", "prominent eyes"
    std::array<CutOff, 2> above_m;  // of the key's middle, for each eye, up to 3.5 m
};

struct TurnCutOff {
    std::array<CutOff, 2> left_deg;   // each eye, when the head turns to camera left, up to 60 degrees
    std::array<CutOff, 2> right_deg;  // and to camera right
};

struct Advice {
    std::string scene;  // its file
    std::string title;
    std::string key;
    SetupLook now;
    double key_height_m = 0.0;
    std::vector<Fix> fixes;  // none when both eyes are alive, or nothing was found
    std::vector<HeightCutOff> heights;
    TurnCutOff turns;
};

}  // namespace understudy
