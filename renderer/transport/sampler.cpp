#include "transport/sampler.h"

#include <array>

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

// The sequence is linear over bits: the value at an index is the exclusive or of the values of its digits of four bits;
// a larger table would not stay in the nearest cache. Stored with reversed bits, which is how the scramble wants them.
constexpr std::size_t kDigits = 6;  // indices below 2^24
struct SobolTable {
    alignas(16) std::array<std::array<std::array<std::uint32_t, 4>, 16>, kDigits> values{};
};

constexpr SobolTable make_sobol_table() {
    std::array<Directions, 4> directions{};
    for (std::size_t i = 0; i < 32; ++i) directions[0][i] = 1U << (31 - i);
    for (std::size_t d = 1; d < 4; ++d) directions[d] = directions_of(kPolynomials[d - 1]);
    SobolTable table;
    for (std::size_t digit = 0; digit < kDigits; ++digit) {
        for (std::uint32_t index = 0; index < 16; ++index) {
            for (std::size_t d = 0; d < 4; ++d) {
                std::uint32_t value = 0;
                for (std::size_t bit = 0; bit < 4; ++bit) {
                    if ((index >> bit) & 1U) value ^= directions[d][4 * digit + bit];
                }
                table.values[digit][index][d] = reverse_bits(value);
            }
        }
    }
    return table;
}

constexpr SobolTable kSobol = make_sobol_table();

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

// Four dimensions side by side, as g++ and Clang know vectors.
using Lanes = std::uint32_t __attribute__((vector_size(16)));

float to_unit(std::uint32_t bits) { return static_cast<float>(bits >> 8) * 0x1p-24F; }

}  // namespace

Sampler::Sampler(std::uint32_t seed, std::uint32_t pixel, std::uint32_t sample)
    : key_(mix(mix(seed + 0x9e3779b9U) ^ pixel)), reversed_sample_(reverse_bits(sample)) {}

Vec4 Sampler::group(std::uint32_t index) const {
    const std::uint32_t key = mix(key_ ^ (index * 0x85ebca6bU + 0xc2b2ae35U));
    // The shuffle moves whole power-of-two blocks, so a shuffled index never has more bits than the sequence that is
    // used: the scramble acts on the index's reversed bits within 24.
    const std::uint32_t shuffled = reverse_bits(scramble_reversed(reversed_sample_, key)) & 0xFFFFFFU;
    Lanes value{};
    for (std::size_t digit = 0; digit < kDigits; ++digit) {
        const auto& row = kSobol.values[digit][(shuffled >> (4 * digit)) & 15U];
        value ^= Lanes{row[0], row[1], row[2], row[3]};
    }
    const Lanes scramble = mix(key + Lanes{0U, 0x9e3779b9U, 2U * 0x9e3779b9U, 3U * 0x9e3779b9U});
    value = reverse_bits(scramble_reversed(value, scramble));
    return {to_unit(value[0]), to_unit(value[1]), to_unit(value[2]), to_unit(value[3])};
}

}  // namespace understudy
