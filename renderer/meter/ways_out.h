// How else a light could be had whose head cannot be turned up, or down, so far.
#pragma once

#include <filesystem>
#include <vector>

#include "kit/built_modifier.h"
#include "meter/dial_reading.h"

namespace understudy {

struct OutOfRange {
    double out_by_stops = 0.0;  // over full (+), under the lowest setting (-)
    double iso = 100.0;
    double distance_m = 1.0;
    ModifierSettings modifier;
    BuiltModifier built;
    std::filesystem::path modifier_cache;
};

// Cheapest first: what is set on the camera, what is hung on the light, what is moved, what is rebuilt.
std::vector<Remedy> ways_out(const OutOfRange& trouble);

}  // namespace understudy
