// Random numbers for light's walk through a modifier: a stream for each cell, whatever the threads do.
#pragma once

#include <cstdint>

namespace understudy {

// PCG-XSH-RR; M. O'Neill, "PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number
// Generation", Harvey Mudd College, HMC-CS-2014-0905.
class WalkNumbers {
  public:
    // Streams of neighbouring numbers have nothing in common: the number is first mixed as in SplitMix64 (Steele, Lea
    // and Flood, "Fast Splittable Pseudorandom Number Generators", OOPSLA 2014).
    explicit WalkNumbers(std::uint64_t stream) : state_(mixed(stream)), step_(2 * mixed(~stream) + 1) { bits(); }
    // In [0, 1).
    float next() { return static_cast<float>(bits() >> 8U) * 0x1p-24F; }

  private:
    static std::uint64_t mixed(std::uint64_t value) {
        value += 0x9e3779b97f4a7c15ULL;
        value = (value ^ (value >> 30U)) * 0xbf58476d1ce4e5b9ULL;
        value = (value ^ (value >> 27U)) * 0x94d049bb133111ebULL;
        return value ^ (value >> 31U);
    }
    std::uint32_t bits() {
        const std::uint64_t old = state_;
        state_ = old * 6364136223846793005ULL + step_;
        const auto shifted = static_cast<std::uint32_t>(((old >> 18U) ^ old) >> 27U);
        const auto turn = static_cast<std::uint32_t>(old >> 59U);
        return (shifted >> turn) | (shifted << ((32U - turn) & 31U));
    }
    std::uint64_t state_;
    std::uint64_t step_;
};

}  // namespace understudy
