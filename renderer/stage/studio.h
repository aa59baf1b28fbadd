// A setup with everything in its place: the sitter posed, the camera and every light and panel where the stands put
// them.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "base/expected.h"
#include "kit/built_modifier.h"
#include "setup/placement.h"
#include "setup/setup.h"
#include "sitter/head.h"
#include "sitter/sitter.h"

namespace understudy {

struct Studio {
    Setup setup;
    StudioPoints points;  // of somebody on the mark
    Double3 face{0.0};    // midway between the eyes of the straight head, where the sitter has stepped to
    Sitter sitter;
    PlacedFront camera;
    double focus_m = 0.0;                  // from the lens along its axis to what is sharp
    std::vector<PlacedFront> lights;       // in the setup's order
    std::vector<BuiltModifier> modifiers;  // of the lights
    std::vector<PlacedFront> panels;
    // Of the flash heads, what each was calibrated with; none for a head without a reading.
    std::vector<std::optional<BuiltModifier>> calibrations;
    std::filesystem::path modifier_cache;  // where modifiers that were built are kept
};

// Whether anything grows on the sitter: whoever asks for nothing that is seen can do without.
enum class Growing { kAll, kNothing };

// Loads and poses the sitter, builds the modifiers and resolves every place. Whatever cannot be is a problem: a height
// that a distance does not reach, an aim at oneself, a lens that cannot focus so near.
Expected<Studio> place_studio(const Setup& setup, const Library& library, Growing growing = Growing::kAll);

// With the setup's head loaded before.
Expected<Studio> place_studio(const Setup& setup, const Library& library, const HeadPointer& head,
                              Growing growing = Growing::kAll);

// Round a sitter of the setup who was posed before and is not in what comes back. The eyes look where they looked:
// whether gaze_target is another now is the caller's to ask.
Expected<Studio> place_studio_round(const Sitter& sitter, const Setup& setup, const Library& library,
                                    const HeadPointer& head);

}  // namespace understudy
