// How deep the eyes lie, which the head package has no shape for.
#pragma once

#include "sitter/head_data.h"

namespace understudy {

// The eyes, their lids and the skin round them moved to the front by `amount` (-1 … 1) of 3.5 mm, fading out toward
// brow, cheek and nose. Eyes stand out of the orbit's rim by 16 mm with a deviation of some 2.5 mm between people
// (Hertel's exophthalmometry; from memory), so the ends are nearly one and a half deviations off the average.
std::vector<Double3> with_eyes_set(const HeadData& data, std::vector<Double3> positions, double amount);

}  // namespace understudy
