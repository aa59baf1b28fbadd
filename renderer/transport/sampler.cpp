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

constexpr std::uint32_t reverse_bits(std::uint32_t x) {
    x = (x >> 16) | (x << 16);
    x = ((x & 0x00FF00FFU) << 8) | ((x & 0xFF00FF00U) >> 8);
    x = ((x & 0x0F0F0F0FU) << 4) | ((x & 0xF0F0F0F0U) >> 4);
    x = ((x & 0x33333333U) << 2) | ((x & 0xCCCCCCCCU) >> 2);
    return ((x & 0x55555555U) << 1) | ((x & 0xAAAAAAAAU) >> 1);
}

// The sequence is linear over bits: the value at an index is the exclusive or of the values of its bytes. Stored with
// reversed bits, which is how the scramble wants them.
constexpr std::size_t kBytes = 3;  // indices below 2^24
struct SobolTable {
    std::array<std::array<std::array<std::uint32_t, 4>, 256>, kBytes> values{};
};

constexpr SobolTable make_sobol_table() {
    std::array<Directions, 4> directions{};
    for (std::size_t i = 0; i < 32; ++i) directions[0][i] = 1U << (31 - i);
    for (std::size_t d = 1; d < 4; ++d) directions[d] = directions_of(kPolynomials[d - 1]);
    SobolTable table;
    for (std::size_t byte = 0; byte < kBytes; ++byte) {
        for (std::uint32_t index = 0; index < 256; ++index) {
            for (std::size_t d = 0; d < 4; ++d) {
                std::uint32_t value = 0;
                for (std::size_t bit = 0; bit < 8; ++bit) {
                    if ((index >> bit) & 1U) value ^= directions[d][8 * byte + bit];
                }
                table.values[byte][index][d] = reverse_bits(value);
            }
        }
    }
    return table;
}

constexpr SobolTable kSobol = make_sobol_table();

// Of reversed bits: each bit is flipped or not by the ones below it. Constants of Vegdahl's improvement on Laine and
// Karras's hash (Vegdahl, "Building a Better LK Hash", 2021).
constexpr std::uint32_t scramble_reversed(std::uint32_t x, std::uint32_t seed) {
    x ^= x * 0x3d20adeaU;
    x += seed;
    x *= (seed >> 16) | 1U;
    x ^= x * 0x05526c56U;
    x ^= x * 0x53a22864U;
    return x;
}

// Wellons's lowbias32.
constexpr std::uint32_t mix(std::uint32_t x) {
    x ^= x >> 16;
    x *= 0x7feb352dU;
    x ^= x >> 15;
    x *= 0x846ca68bU;
    x ^= x >> 16;
    return x;
}

float to_unit(std::uint32_t bits) { return static_cast<float>(bits >> 8) * 0x1p-24F; }

}  // namespace

Sampler::Sampler(std::uint32_t seed, std::uint32_t pixel, std::uint32_t sample)
    : key_(mix(mix(seed + 0x9e3779b9U) ^ pixel)), sample_(sample) {}

Vec4 Sampler::group(std::uint32_t index) const {
    const std::uint32_t key = mix(key_ ^ (index * 0x85ebca6bU + 0xc2b2ae35U));
    // The shuffle moves whole power-of-two blocks, so a shuffled index never has more bits than the sequence that is
    // used: the scramble acts on the index's reversed bits within 24.
    const std::uint32_t shuffled = reverse_bits(scramble_reversed(reverse_bits(sample_), key)) & 0xFFFFFFU;
    // All four dimensions step by step, so that the compiler can keep them in one vector.
    std::array<std::uint32_t, 4> value{};
    for (std::size_t byte = 0; byte < kBytes; ++byte) {
        const auto& row = kSobol.values[byte][(shuffled >> (8 * byte)) & 255U];
        for (std::size_t d = 0; d < 4; ++d) value[d] ^= row[d];
    }
    for (std::size_t d = 0; d < 4; ++d) {
        const std::uint32_t scramble = mix(key + static_cast<std::uint32_t>(d) * 0x9e3779b9U);
        value[d] = reverse_bits(scramble_reversed(value[d], scramble));
    }
    return {to_unit(value[0]), to_unit(value[1]), to_unit(value[2]), to_unit(value[3])};
}

}  // namespace understudy
