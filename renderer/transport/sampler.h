// Numbers for a path: an Owen-scrambled Sobol sequence in groups of four dimensions.
//
// Keyed by seed, pixel, sample and group, so the picture is the same for any number of threads and any order of tiles.
// Burley, "Practical Hash-based Owen Scrambling", JCGT 9(4), 2020: each group and pixel has its own shuffle of the
// sequence and its own scramble of each dimension. Pixels are independent of each other.
#pragma once

#include <array>
#include <cstdint>

#include "base/wide.h"

namespace understudy {

class Sampler {
  public:
    // sample counts from 0; power-of-two counts of samples are stratified in every group.
    Sampler(std::uint32_t seed, std::uint32_t pixel, std::uint32_t sample);

    // Four numbers in [0, 1) of a group; the same group always gives the same numbers.
    Vec4 group(std::uint32_t index) const;

  private:
    friend class WideSampler;
    std::uint32_t key_;
    std::uint32_t reversed_sample_;
};

// Sixteen paths' numbers at a time.
class WideSampler {
  public:
    void set(std::size_t lane, const Sampler& sampler, std::uint32_t group) {
        key_[lane] = sampler.key_;
        reversed_sample_[lane] = sampler.reversed_sample_;
        group_[lane] = group;
    }
    // The four numbers of each lane's group, or of the group that comes so many later.
    std::array<Wide, 4> numbers(std::uint32_t later = 0) const;

  private:
    WideBits key_{}, reversed_sample_{}, group_{};
};

}  // namespace understudy
