// Numbers for a path: an Owen-scrambled Sobol sequence in groups of four dimensions.
//
// Keyed by seed, pixel, sample and group, so the picture is the same for any number of threads and any order of tiles.
// Burley, "Practical Hash-based Owen Scrambling", JCGT 9(4), 2020: each group and pixel has its own shuffle of the
// sequence and its own scramble of each dimension. Pixels are independent of each other.
#pragma once

#include <cstdint>

#include "base/geometry.h"

namespace understudy {

class Sampler {
  public:
    // sample counts from 0; power-of-two counts of samples are stratified in every group.
    Sampler(std::uint32_t seed, std::uint32_t pixel, std::uint32_t sample);

    // Four numbers in [0, 1) of a group; the same group always gives the same numbers.
    Vec4 group(std::uint32_t index) const;

  private:
    std::uint32_t key_;
    std::uint32_t reversed_sample_;
};

}  // namespace understudy
