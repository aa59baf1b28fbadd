// How far the head stands out from what is behind it, along its outline in the picture.
#pragma once

#include <optional>

#include "meter/light_powers.h"
#include "meter/reading.h"

namespace understudy {

// From four o'clock round by twelve to eight; the neck and the shoulders are left out. readings: with the face's. None
// without a head, or where none of its outline is in the frame.
std::optional<Outline> read_outline(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                    const std::vector<Reading>& readings);

}  // namespace understudy
