#include "transport/sampler.h"

#include <array>
#include <cstring>

namespace understudy {

namespace {

// Direction numbers of the first four Sobol dimensions (Joe and Kuo, "Constructing Sobol Sequences with Better
// Two-Dimensional Projections", 2008: new-joe-kuo-6, degrees 0 to 3), the first 32 of each.
struct Polynomial {
    int degree;
    std::uint32_t coefficients;
    std::array<std::uint32_t, 3> initial;
};
constexpr std::array<Polynomial, 3> kPolynomials{{{1, 0, {1, 0, 0}}, {2, 1, {1, 3, 0}}, {3, 1, {1, 3, 1}}}};

using Directions = std::array<std::uint32_t, 32>;

constexpr Directions directions_of(const Polynomial& polynomial) {
    Directions result{};
    const auto degree = static_cast<std::size_t>(polynomial.degree);
    for (std::size_t i = 0; i < 32; ++i) {
        if (i < degree) {
            result[i] = polynomial.initial[i] << (31 - i);
            continue;
        }
        std::uint32_t value = result[i - degree] ^ (result[i - degree] >> degree);
        for (std::size_t k = 1; k < degree; ++k) {
            if ((polynomial.coefficients >> (degree - 1 - k)) & 1U) value ^= result[i - k];
        }
        result[i] = value;
    }
    return result;
}

// Of a word, or of each of several.
template <class Bits>
constexpr Bits reverse_bits(Bits x) {
    x = (x >> 16) | (x << 16);
    x = ((x & 0x00FF00FFU) << 8) | ((x & 0xFF00FF00U) >> 8);
    x = ((x & 0x0F0F0F0FU) << 4) | ((x & 0xF0F0F0F0U) >> 4);
    x = ((x & 0x33333333U) << 2) | ((x & 0xCCCCCCCCU) >> 2);
    return ((x & 0x55555555U) << 1) | ((x & 0xAAAAAAAAU) >> 1);
}

// The sequence is linear over bits: the value at an index is the exclusive or of the values of its digits of four bits.
// A digit has as many values as there are lanes, so that looking it up is one instruction. Stored with reversed bits,
// which is how the scramble wants them.
constexpr std::size_t kDigits = 6;  // indices below 2^24
constexpr std::size_t kDimensions = 4;
struct SobolTable {
    alignas(64) std::array<std::array<std::array<std::uint32_t, kLanes>, kDimensions>, kDigits> values{};
};

constexpr SobolTable make_sobol_table() {
    std::array<Directions, kDimensions> directions{};
    for (std::size_t i = 0; i < 32; ++i) directions[0][i] = 1U << (31 - i);
    for (std::size_t d = 1; d < kDimensions; ++d) directions[d] = directions_of(kPolynomials[d - 1]);
    SobolTable table;
    for (std::size_t digit = 0; digit < kDigits; ++digit) {
        for (std::size_t d = 0; d < kDimensions; ++d) {
            for (std::uint32_t index = 0; index < kLanes; ++index) {
                std::uint32_t value = 0;
                for (std::size_t bit = 0; bit < 4; ++bit) {
                    if ((index >> bit) & 1U) value ^= directions[d][4 * digit + bit];
                }
                table.values[digit][d][index] = reverse_bits(value);
            }
        }
    }
    return table;
}

constexpr SobolTable kSobol = make_sobol_table();

WideBits sobol_digit(std::size_t digit, std::size_t dimension, const WideBits& index) {
    WideBits row{};
    std::memcpy(&row, kSobol.values[digit][dimension].data(), sizeof(row));
#ifdef __clang__  // which checks this code, and has another name for it
    return __builtin_shufflevector(row, index);
#else
    return __builtin_shuffle(row, index);
#endif
}

// Of reversed bits: each bit is flipped or not by the ones below it. Constants of Vegdahl's improvement on Laine and
// Karras's hash (Vegdahl, "Building a Better LK Hash", 2021).
template <class Bits>
constexpr Bits scramble_reversed(Bits x, Bits seed) {
    x ^= x * 0x3d20adeaU;
    x += seed;
    x *= (seed >> 16) | 1U;
    x ^= x * 0x05526c56U;
    x ^= x * 0x53a22864U;
    return x;
}

// Wellons's lowbias32.
template <class Bits>
constexpr Bits mix(Bits x) {
    x ^= x >> 16;
    x *= 0x7feb352dU;
    x ^= x >> 15;
    x *= 0x846ca68bU;
    x ^= x >> 16;
    return x;
}

Wide to_unit(const WideBits& bits) { return __builtin_convertvector(bits >> 8, Wide) * 0x1p-24F; }

}  // namespace

Sampler::Sampler(std::uint32_t seed, std::uint32_t pixel, std::uint32_t sample)
    : key_(mix(mix(seed + 0x9e3779b9U) ^ pixel)), reversed_sample_(reverse_bits(sample)) {}

Vec4 Sampler::group(std::uint32_t index) const {
    WideSampler sampler;
    sampler.set(0, *this, index);
    const auto numbers = sampler.numbers();
    return {numbers[0][0], numbers[1][0], numbers[2][0], numbers[3][0]};
}

std::array<Wide, 4> WideSampler::numbers(std::uint32_t later) const {
    const WideBits key = mix(key_ ^ ((group_ + later) * 0x85ebca6bU + 0xc2b2ae35U));
    // The shuffle moves whole power-of-two blocks, so a shuffled index never has more bits than the sequence that is
    // used: the scramble acts on the index's reversed bits within 24.
    const WideBits shuffled = reverse_bits(scramble_reversed(reversed_sample_, key)) & 0xFFFFFFU;
    std::array<WideBits, kDimensions> values{};
    for (std::size_t digit = 0; digit < kDigits; ++digit) {
        const WideBits index = (shuffled >> static_cast<std::uint32_t>(4 * digit)) & 15U;
        for (std::size_t d = 0; d < kDimensions; ++d) values[d] ^= sobol_digit(digit, d, index);
    }
    std::array<Wide, 4> result{};
    for (std::size_t d = 0; d < kDimensions; ++d) {
        const WideBits scramble = mix(key + static_cast<std::uint32_t>(d) * 0x9e3779b9U);
        result[d] = to_unit(reverse_bits(scramble_reversed(values[d], scramble)));
    }
    return result;
}

}  // namespace understudy
