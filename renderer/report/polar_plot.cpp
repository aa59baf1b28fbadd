#include "report/polar_plot.h"

#include <cmath>

#include "base/geometry.h"

namespace understudy {
namespace {

constexpr int kAcross = PolarPlot::kColumns / 2;  // the outer ring's radius in columns
constexpr int kAlong = 9;                         // and in rows: a character is about twice as high as wide

}  // namespace

PolarPlot::PolarPlot(const std::function<double(double)>& strength, bool behind)
    : rows_above_(behind ? kAlong : 0),
      lines_(static_cast<std::size_t>(rows_above_ + kAlong + 1), std::string(kColumns, ' ')) {
    constexpr double kFineDeg = 0.25;
    const double widest = behind ? 180.0 : 90.0;
    for (double angle = -widest; angle <= widest; angle += kFineDeg) {
        put(1.0, angle, '.');
        put(0.5, angle, '.');
    }
    fill(strength);
    for (double angle = -widest; angle <= widest; angle += kFineDeg) {
        const double value = strength(angle);
        if (value > 0.0) put(value, angle, '*');
    }
    put(0.0, 0.0, '+');
}

void PolarPlot::put(double strength, double angle_deg, char mark) {
    const double angle = radians(angle_deg);
    const int column = kAcross + static_cast<int>(std::lround(strength * kAcross * std::sin(angle)));
    const int row = rows_above_ + static_cast<int>(std::lround(strength * kAlong * std::cos(angle)));
    lines_.at(static_cast<std::size_t>(row)).at(static_cast<std::size_t>(column)) = mark;
}

void PolarPlot::fill(const std::function<double(double)>& strength) {
    for (std::size_t row = 0; row < lines_.size(); ++row) {
        for (std::size_t column = 0; column < kColumns; ++column) {
            const double along = (static_cast<double>(row) - rows_above_) / kAlong;
            const double across = (static_cast<double>(column) - kAcross) / kAcross;
            if (std::hypot(along, across) < strength(degrees(std::atan2(across, along)))) lines_[row][column] = ':';
        }
    }
}

}  // namespace understudy
