// Random numbers for light's walk through a modifier: a stream for each cell, whatever the threads do.
#pragma once

#include <cstdint>

namespace understudy {

// PCG-XSH-RR; M. O'Neill, "PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number
// Generation", Harvey Mudd College, HMC-CS-2014-0905.
class WalkNumbers {
  public:
    explicit WalkNumbers(std::uint64_t stream) : step_(2 * stream + 1) {
        bits();
        state_ += 0x853c49e6748fea9bULL;
        bits();
    }
    // In [0, 1).
    float next() { return static_cast<float>(bits() >> 8U) * 0x1p-24F; }

  private:
    std::uint32_t bits() {
        const std::uint64_t old = state_;
        state_ = old * 6364136223846793005ULL + step_;
        const auto mixed = static_cast<std::uint32_t>(((old >> 18U) ^ old) >> 27U);
        const auto turn = static_cast<std::uint32_t>(old >> 59U);
        return (mixed >> turn) | (mixed << ((32U - turn) & 31U));
    }
    std::uint64_t state_ = 0;
    std::uint64_t step_;
};

}  // namespace understudy
