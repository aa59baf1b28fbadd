#include "spectrum/spectrum.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace understudy {

double integral(const Spectrum& spectrum, double from_nm, double to_nm) {
    assert(from_nm >= static_cast<double>(Spectrum::kFirst) && to_nm <= static_cast<double>(Spectrum::kLast));
    assert(from_nm <= to_nm);
    const auto step = static_cast<double>(Spectrum::kStep);
    const auto last_cell = Spectrum::kCount - 2;
    auto cell = static_cast<std::size_t>((from_nm - static_cast<double>(Spectrum::kFirst)) / step);
    cell = std::min(cell, last_cell);
    double sum = 0.0;
    for (double start = from_nm; start < to_nm && cell <= last_cell; ++cell) {
        const auto cell_start = static_cast<double>(Spectrum::wave(cell));
        const double end = std::min(to_nm, cell_start + step);
        const auto low = static_cast<double>(spectrum[cell]);
        const double slope = (static_cast<double>(spectrum[cell + 1]) - low) / step;
        // The mean of a straight line is its value in the middle.
        sum += (end - start) * (low + slope * (0.5 * (start + end) - cell_start));
        start = end;
    }
    return sum;
}

}  // namespace understudy
