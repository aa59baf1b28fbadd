// Whether drawn directions follow the density that is stated for them: Pearson's chi-square test over the sphere.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <fstream>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/geometry.h"

namespace understudy {

// Q(a, x), the upper regularised incomplete gamma function. NIST Digital Library of Mathematical Functions:
// series 8.7.1 below a + 1, the even part of continued fraction 8.9.2 above it, evaluated forwards by Lentz's method
// (DLMF 3.10(iii)).
inline double upper_gamma_share(double a, double x) {
    if (x <= 0.0) return 1.0;
    const double front = std::exp(a * std::log(x) - x - std::lgamma(a));
    if (x < a + 1.0) {
        double term = 1.0 / a;
        double sum = term;
        for (double n = 1.0; term > sum * 1e-15; n += 1.0) {
            term *= x / (a + n);
            sum += term;
        }
        return 1.0 - front * sum;
    }
    double b = x + 1.0 - a;
    double c = 1e300;
    double d = 1.0 / b;
    double result = d;
    for (int i = 1; i < 10000; ++i) {
        const double numerator = -i * (i - a);
        b += 2.0;
        d = 1.0 / (numerator * d + b);
        c = b + numerator / c;
        result *= d * c;
        if (std::abs(d * c - 1.0) < 1e-14) break;
    }
    return front * result;
}

// The chance of a chi-square value this large or larger.
inline double chi_square_tail(double value, double degrees_of_freedom) {
    return upper_gamma_share(0.5 * degrees_of_freedom, 0.5 * value);
}

// The significance of one of `tests` tests so that all together are wrong with the chance given. Šidák, JASA 62, 1967.
inline double sidak(double significance, std::size_t tests) {
    return 1.0 - std::pow(1.0 - significance, 1.0 / static_cast<double>(tests));
}

// Rows of equal polar angle, columns of equal azimuth, and one last cell for samples that came to nothing. The lower
// half is for surfaces that light goes through.
struct SphereBins {
    static constexpr std::size_t kRows = 32;
    static constexpr std::size_t kColumns = 32;
    static constexpr std::size_t kNone = kRows * kColumns;
    static constexpr std::size_t kCells = kNone + 1;

    static std::size_t of(const Vec3& w) {
        const float polar = std::atan2(std::hypot(w.x, w.y), w.z) / kPi;
        const float turn = std::atan2(w.y, w.x) / (2.0F * kPi);
        const auto row = std::min(static_cast<std::size_t>(polar * kRows), kRows - 1);
        const auto column =
            std::min(static_cast<std::size_t>((turn < 0.0F ? turn + 1.0F : turn) * kColumns), kColumns - 1);
        return row * kColumns + column;
    }
};

// A rectangle of polar angle and azimuth.
struct SkyPatch {
    double polar, turn, polar_size, turn_size;

    SkyPatch quarter(int index) const {
        const double half_polar = 0.5 * polar_size;
        const double half_turn = 0.5 * turn_size;
        return {polar + half_polar * (index & 1), turn + half_turn * (index >> 1), half_polar, half_turn};
    }
};

// By the Gauss–Legendre rule of three points a side.
template <class Density>
double integrate_plainly(const Density& density, const SkyPatch& patch) {
    constexpr std::array<double, 3> kPlaces = {0.1127016653792583, 0.5, 0.8872983346207417};
    constexpr std::array<double, 3> kWeights = {5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};
    double sum = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double polar = patch.polar + kPlaces[i] * patch.polar_size;
        for (std::size_t j = 0; j < 3; ++j) {
            const double turn = patch.turn + kPlaces[j] * patch.turn_size;
            const Vec3 w(std::sin(polar) * std::cos(turn), std::sin(polar) * std::sin(turn), std::cos(polar));
            sum += kWeights[i] * kWeights[j] * static_cast<double>(density(w)) * std::sin(polar);
        }
    }
    return sum * patch.polar_size * patch.turn_size;
}

// Quartered until it agrees with its quarters to 1e-8, which is a thousandth of a sample in 100 000.
template <class Density>
double integrate_patch(const Density& density, const SkyPatch& patch, double plainly, int depth = 0) {
    std::array<double, 4> quarters{};
    double sum = 0.0;
    for (int i = 0; i < 4; ++i) {
        double& quarter = quarters.at(static_cast<std::size_t>(i));
        quarter = integrate_plainly(density, patch.quarter(i));
        sum += quarter;
    }
    if (std::abs(sum - plainly) < 1e-8 || depth == 12) return sum;
    double result = 0.0;
    for (int i = 0; i < 4; ++i) {
        result += integrate_patch(density, patch.quarter(i), quarters.at(static_cast<std::size_t>(i)), depth + 1);
    }
    return result;
}

// The probability of each cell. Density: Vec3 → per unit solid angle. Lobes at grazing are far narrower than a cell.
template <class Density>
std::vector<double> integrate_cells(const Density& density) {
    constexpr std::size_t kParts = 4;  // of a cell, a side, looked at in any case
    constexpr double kPolarSize = kPiDouble / (SphereBins::kRows * kParts);
    constexpr double kTurnSize = 2.0 * kPiDouble / (SphereBins::kColumns * kParts);
    std::vector<double> cells(SphereBins::kCells, 0.0);
    double all = 0.0;
    for (std::size_t i = 0; i < SphereBins::kRows * kParts; ++i) {
        for (std::size_t j = 0; j < SphereBins::kColumns * kParts; ++j) {
            const SkyPatch patch{static_cast<double>(i) * kPolarSize, static_cast<double>(j) * kTurnSize, kPolarSize,
                                 kTurnSize};
            const double share = integrate_patch(density, patch, integrate_plainly(density, patch));
            cells[i / kParts * SphereBins::kColumns + j / kParts] += share;
            all += share;
        }
    }
    cells[SphereBins::kNone] = std::max(0.0, 1.0 - all);
    return cells;
}

struct ChiSquare {
    double p_value = 1.0;
    double value = 0.0;
    double degrees_of_freedom = 0.0;
    std::vector<double> expected;
    std::vector<double> observed;
};

// Cells that expect fewer than 5 are pooled, smallest first (Cochran, Biometrics 10, 1954).
inline ChiSquare compare_cells(std::vector<double> expected, std::vector<double> observed) {
    std::vector<std::pair<double, double>> cells;
    for (std::size_t i = 0; i < expected.size(); ++i) cells.emplace_back(expected[i], observed[i]);
    std::sort(cells.begin(), cells.end());
    ChiSquare result;
    double groups = 0.0;
    std::pair<double, double> pool{0.0, 0.0};
    for (std::size_t i = 0; i < cells.size(); ++i) {
        pool.first += cells[i].first;
        pool.second += cells[i].second;
        if (pool.first < 5.0 && i + 1 < cells.size()) continue;
        const double off = pool.second - pool.first;
        if (pool.first > 0.0) result.value += off * off / pool.first;
        if (pool.first <= 0.0 && pool.second > 0.0) result.value = std::numeric_limits<double>::infinity();
        groups += 1.0;
        pool = {0.0, 0.0};
    }
    result.degrees_of_freedom = groups - 1.0;
    if (result.degrees_of_freedom > 0.0) result.p_value = chi_square_tail(result.value, result.degrees_of_freedom);
    result.expected = std::move(expected);
    result.observed = std::move(observed);
    return result;
}

// Sample: () → std::optional<Vec3>.
template <class Density, class Sample>
ChiSquare test_directions(std::size_t samples, const Density& density, const Sample& sample) {
    std::vector<double> expected = integrate_cells(density);
    for (double& cell : expected) cell *= static_cast<double>(samples);
    std::vector<double> observed(SphereBins::kCells, 0.0);
    for (std::size_t i = 0; i < samples; ++i) {
        const std::optional<Vec3> w = sample();
        observed[w ? SphereBins::of(*w) : SphereBins::kNone] += 1.0;
    }
    return compare_cells(std::move(expected), std::move(observed));
}

// Leaves both tables behind, a line a cell; returns where.
inline std::string dump(const ChiSquare& test, std::string name) {
    std::replace_if(
        name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
    std::string path = std::string(UNDERSTUDY_BUILD_DIR) + "/chi_square_" + name + ".txt";
    std::ofstream file(path);
    file << "row column expected observed (last line: samples that came to nothing)\n";
    for (std::size_t i = 0; i < test.expected.size(); ++i) {
        file << i / SphereBins::kColumns << ' ' << i % SphereBins::kColumns << ' ' << test.expected[i] << ' '
             << test.observed[i] << '\n';
    }
    return path;
}

}  // namespace understudy
