#include "report/f_number.h"

#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "setup/f_number_marks.h"

namespace understudy {
namespace {

constexpr int kTenthsAStop = 10;

bool has_f_number(double f_number) { return std::isfinite(f_number) && f_number > 0.0; }

// In stops over f/1: N = √2^stops.
double stops_over_one(double f_number) { return 2.0 * std::log2(f_number); }

// What to say instead when the marks do not reach that far.
std::optional<std::string> beyond_marks(double f_number) {
    if (!has_f_number(f_number)) return "none";
    const double third = std::round(kThirdsAStop * stops_over_one(f_number));
    if (third < kFirstMarkedThird) return fmt::format("under f/{}", mark_of_third(kFirstMarkedThird));
    if (third > kLastMarkedThird) return fmt::format("over f/{}", mark_of_third(kLastMarkedThird));
    return std::nullopt;
}

std::string tenths_within_marks(double f_number) {
    const int tenths = static_cast<int>(std::lround(kTenthsAStop * stops_over_one(f_number)));
    const int first_tenth = kFirstMarkedThird / kThirdsAStop * kTenthsAStop;
    // Counted from the lowest mark, so that the division rounds down on both sides of f/1.
    const int whole_stops = (tenths - first_tenth) / kTenthsAStop;
    const int rest = (tenths - first_tenth) % kTenthsAStop;
    if (tenths < first_tenth) return fmt::format("{} - {}/10", mark_of_third(kFirstMarkedThird), -rest);
    return fmt::format("{} + {}/10", mark_of_third(kFirstMarkedThird + kThirdsAStop * whole_stops), rest);
}

}  // namespace

std::string marked_f_number(double f_number) {
    if (const auto words = beyond_marks(f_number)) return *words;
    return fmt::format("f/{}", mark_of_third(static_cast<int>(std::lround(kThirdsAStop * stops_over_one(f_number)))));
}

std::string whole_stop_and_tenths(double f_number) {
    if (const auto words = beyond_marks(f_number)) return *words;
    return tenths_within_marks(f_number);
}

std::string spoken_f_number(double f_number) {
    if (const auto words = beyond_marks(f_number)) return *words;
    return fmt::format("{} ({})", marked_f_number(f_number), tenths_within_marks(f_number));
}

}  // namespace understudy
