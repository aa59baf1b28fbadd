// Whether eyes are alive: lit, and showing a catchlight.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "advice/trial_room.h"
#include "meter/face/face_reading.h"
#include "meter/reading.h"

namespace understudy {

// So much of a mirror image makes a catchlight that a photographer would call one. Chosen.
inline constexpr double kShowsEnough = 0.2;
// An eye this far under the lit cheek, in stops, still reads as lit; brow and lashes cost any eye most of a stop.
// Chosen.
inline constexpr double kFarthestUnderCheek = 2.0;
// How well what is told knows its readings.
inline constexpr double kForReport = 0.02;

struct EyeState {
    EyeVerdict verdict = EyeVerdict::kDark;
    double stops_from_cheek = 0.0;
    double shown = 0.0;        // of the mirror image that shows most
    std::string catchlight{};  // whose; "" when none shows
    double clock_deg = 0.0;
    bool alive() const { return stops_from_cheek >= -kFarthestUnderCheek && shown >= kShowsEnough; }
};

struct EyesState {
    std::array<EyeState, 2> eyes;  // [0] camera left
    double face_lxs = 0.0;         // a dome's at the face, toward the camera
    std::optional<Ratio> ratio;
    bool both_alive() const { return eyes[0].alive() && eyes[1].alive(); }
};

EyesState look_at_eyes(const TrialRoom& room);

// A dome's reading at the face, toward the camera, lx·s.
double read_face(const TrialRoom& room);

// Only whether each is alive, for a search: the mirror images first, which need no light to be followed, and then the
// light no better than it takes to tell.
std::array<bool, 2> which_alive(const TrialRoom& room);
// The same, no farther than the first that is not.
bool both_alive(const TrialRoom& room);

}  // namespace understudy
