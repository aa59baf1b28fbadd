// How far the sitter may move before the light has to: while the pattern, the eyes and the exposure hold.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "advice/movement.h"
#include "advice/setup_look.h"
#include "base/expected.h"

namespace understudy {

// A third of a stop either way is hardly seen: common practice, no source.
inline constexpr double kExposureHolds = 1.0 / 3.0;

// What no longer holds.
struct Lapse {
    std::array<bool, 2> eye_lost{false, false};  // [0] camera left; an eye that is lost as set cannot be lost again
    std::optional<LightPattern> pattern;         // what it has become
    std::optional<double> stops;                 // the exposure's change at the face, beyond what holds
    bool no_room = false;                        // a light or the camera would stand inside the sitter
    bool any() const { return eye_lost[0] || eye_lost[1] || pattern || stops || no_room; }
};

// One way of a movement.
struct EnvelopeEnd {
    double holds_to = 0.0;         // signed, degrees or metres from how it is set; everything holds up to there
    std::optional<double> lapses;  // a little farther; none: it holds as far as it was tried
    Lapse lapse;                   // there
    double beyond = 0.0;           // a clear step past it, for pictures; as far as it was tried where nothing lapses
    Lapse beyond_lapse;
};

struct EnvelopeRange {
    Movement movement = Movement::kTurn;
    EnvelopeEnd less;  // to camera left, down, back
    EnvelopeEnd more;
};

struct Envelope {
    std::string title;
    SetupLook now;
    std::vector<EnvelopeRange> ranges;  // in the order of kMovements
    GazeAngles gaze;                    // where the eyes look as set, in the face's axes
};

// One movement at a time, everything else as set. What is wrong with the setup is a problem, and so is a sitter without
// eyes.
Expected<Envelope> find_envelope(const Setup& setup, const Library& library);

}  // namespace understudy
