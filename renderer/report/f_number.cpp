#include "report/f_number.h"

#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

namespace understudy {
namespace {

// The marks for 2^(k/6), k = kFirstThird … (ISO 517 gives the whole stops; thirds as engraved on cameras, common
// practice).
constexpr int kFirstThird = -6;
constexpr std::array kThirdMarks = {"0.5", "0.56", "0.63", "0.7", "0.8", "0.9", "1",   "1.1", "1.2", "1.4",
                                    "1.6", "1.8",  "2",    "2.2", "2.5", "2.8", "3.2", "3.5", "4",   "4.5",
                                    "5",   "5.6",  "6.3",  "7.1", "8",   "9",   "10",  "11",  "13",  "14",
                                    "16",  "18",   "20",   "22",  "25",  "29",  "32",  "36",  "40",  "45",
                                    "51",  "57",   "64",   "72",  "80",  "90",  "102", "114", "128"};
constexpr int kLastThird = kFirstThird + static_cast<int>(kThirdMarks.size()) - 1;
constexpr int kThirdsAStop = 3;
constexpr int kTenthsAStop = 10;

bool has_f_number(double f_number) { return std::isfinite(f_number) && f_number > 0.0; }

// In stops over f/1: N = √2^stops.
double stops_over_one(double f_number) { return 2.0 * std::log2(f_number); }

// What to say instead when the marks do not reach that far.
std::optional<std::string> beyond_marks(double f_number) {
    if (!has_f_number(f_number)) return "none";
    const double third = std::round(kThirdsAStop * stops_over_one(f_number));
    if (third < kFirstThird) return fmt::format("under f/{}", kThirdMarks.front());
    if (third > kLastThird) return fmt::format("over f/{}", kThirdMarks.back());
    return std::nullopt;
}

const char* mark_of_third(int third) { return kThirdMarks.at(static_cast<std::size_t>(third - kFirstThird)); }

std::string tenths_within_marks(double f_number) {
    const int tenths = static_cast<int>(std::lround(kTenthsAStop * stops_over_one(f_number)));
    const int first_tenth = kFirstThird / kThirdsAStop * kTenthsAStop;
    // Counted from the lowest mark, so that the division rounds down on both sides of f/1.
    const int whole_stops = (tenths - first_tenth) / kTenthsAStop;
    const int rest = (tenths - first_tenth) % kTenthsAStop;
    if (tenths < first_tenth) return fmt::format("{} - {}/10", kThirdMarks.front(), -rest);
    return fmt::format("{} + {}/10", mark_of_third(kFirstThird + kThirdsAStop * whole_stops), rest);
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
