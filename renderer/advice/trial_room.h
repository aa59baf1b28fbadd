// A room to try changes in: a change costs what it changes. Rooms may share a head, and each be used by a thread.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <optional>

#include "base/expected.h"
#include "meter/light_powers.h"
#include "sitter/head.h"
#include "stage/stage.h"

namespace understudy {

// The setup's head, when it has eyes that something can be said of; else a problem that says so.
Expected<HeadPointer> load_sighted_head(const Setup& setup, const Library& library);

class TrialRoom {
  public:
    // Skin is taken as a surface: what is asked for here are shadows, mirror images and exposures. What place_studio
    // and set_powers have against the setup is a problem.
    static Expected<TrialRoom> open(const Setup& setup, const Library& library, const HeadPointer& head);

    const Studio& studio() const { return studio_; }
    const Stage& stage() const { return *stage_; }
    const Stage& nobody() const { return *nobody_; }
    const LitStudio& lit() const { return lit_; }
    const Setup& asked() const { return asked_; }

    // Each sets up what was asked for at first, but for one change. False: there is no such setup (a height that a
    // distance does not reach, a light that is turned away); the room is then in no state to be looked at.
    bool with_studio(const std::function<void(Setup&)>& change);  // lights and panels
    bool with_sitter(const std::function<void(SitterSettings&)>& change);

    // As if the head turned by so much, its gaze kept where it was: the rest of the studio is turned the other way
    // round it, and the eyes follow. The lids and the shoulders stay with the head, which a turn hardly tells from the
    // truth and is some ten times as quick. Positive to camera right.
    bool as_if_turned(double degrees);

    // One light of the room as it stands, whatever way the scene tells its power.
    void turn_up(std::size_t light, double stops);

  private:
    TrialRoom() = default;
    bool set_lights();
    Strands moved_strands() const;

    Setup asked_;
    std::filesystem::path cache_;
    HeadPointer head_;
    // As asked for.
    PlacedFront camera_;
    std::vector<BuiltModifier> modifiers_;
    std::optional<std::array<Eye, 2>> eyes_;
    Studio studio_;
    Strands first_strands_;  // as they grow on the head as asked for, with its place
    glm::dmat4 first_skull_{1.0};
    bool sitter_moved_ = false;
    std::unique_ptr<Stage> stage_;
    std::unique_ptr<Stage> nobody_;
    LitStudio lit_;
};

}  // namespace understudy
