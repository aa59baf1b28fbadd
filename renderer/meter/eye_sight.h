// What an eye sees of a light: how much of its front, and what stands before the rest.
#pragma once

#include <string>
#include <vector>

#include "stage/stage.h"

namespace understudy {

struct Taken {
    std::string by;      // "brow", "upper lid", "nose", "hair", "hat", …
    double share = 0.0;  // of the whole
};

struct EyeSight {
    double share = 0.0;        // of the front that can be seen, 0 … 1
    std::vector<Taken> taken;  // the largest first; what is met first on a way counts
};

// From the cornea over the iris to the front's places: each pair counts for the light that it would carry. places: how
// finely both are cut, a square number; 64 tell the share to about 2 %. A front that turns its back to the eye has the
// share 0, taken by "its own back".
EyeSight sight_of(const Stage& stage, const Eye& eye, const Emitter& emitter, int places = 256);

// The shares by name, largest first.
std::vector<Taken> by_size(const std::vector<Taken>& shares);

}  // namespace understudy
