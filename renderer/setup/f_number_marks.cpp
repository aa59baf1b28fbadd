#include "setup/f_number_marks.h"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

// The marks for 2^(k/6) (ISO 517 gives the whole stops; thirds as engraved on cameras, common practice).
constexpr std::array kThirdMarks = {"0.5", "0.56", "0.63", "0.7", "0.8", "0.9", "1",   "1.1", "1.2", "1.4",
                                    "1.6", "1.8",  "2",    "2.2", "2.5", "2.8", "3.2", "3.5", "4",   "4.5",
                                    "5",   "5.6",  "6.3",  "7.1", "8",   "9",   "10",  "11",  "13",  "14",
                                    "16",  "18",   "20",   "22",  "25",  "29",  "32",  "36",  "40",  "45",
                                    "51",  "57",   "64",   "72",  "80",  "90",  "102", "114", "128"};
static_assert(kFirstMarkedThird + static_cast<int>(kThirdMarks.size()) - 1 == kLastMarkedThird);

// Half stops from f/1 on, 2^((2k + 1)/4), as cameras set to halves mark them; common practice.
constexpr std::array kHalfMarks = {1.2, 1.7, 2.4, 3.3, 4.8, 6.7, 9.5, 13.0, 19.0, 27.0, 38.0};

// The decimal that somebody writes and the one that is compared with it come from the same text.
bool same(double a, double b) { return std::abs(a - b) <= 1e-9 * b; }

std::optional<double> take_number(std::string_view& rest) {
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    double value = 0.0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value, std::chars_format::fixed);
    if (error != std::errc() || !std::isfinite(value)) return std::nullopt;
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    return value;
}

bool take(std::string_view& rest, char what) {
    if (rest.empty() || rest.front() != what) return false;
    rest.remove_prefix(1);
    return true;
}

// The tenths of "+ 3/10", with their sign; 0 when nothing is left.
std::optional<double> take_tenths(std::string_view rest) {
    if (rest.empty()) return 0.0;
    const bool less = take(rest, '-');
    if (!less && !take(rest, '+')) return std::nullopt;
    const std::optional<double> tenths = take_number(rest);
    if (!tenths || *tenths < 0.0 || *tenths > 9.0 || *tenths != std::round(*tenths)) return std::nullopt;
    if (!take(rest, '/') || rest != "10") return std::nullopt;
    return less ? -*tenths : *tenths;
}

}  // namespace

const char* mark_of_third(int third) {
    assert(third >= kFirstMarkedThird && third <= kLastMarkedThird);
    return kThirdMarks.at(static_cast<std::size_t>(third - kFirstMarkedThird));
}

double exact_f_number(double marked) {
    for (int third = kFirstMarkedThird; third <= kLastMarkedThird; ++third) {
        std::string_view mark = mark_of_third(third);
        if (same(marked, *take_number(mark))) return std::exp2(third / 6.0);
    }
    for (std::size_t half = 0; half < kHalfMarks.size(); ++half) {
        if (same(marked, kHalfMarks.at(half))) return std::exp2((2.0 * static_cast<double>(half) + 1.0) / 4.0);
    }
    return marked;
}

Expected<double> read_meter_notation(std::string_view text) {
    std::string_view rest = text;
    const std::optional<double> whole = take_number(rest);
    const std::optional<double> tenths = whole ? take_tenths(rest) : std::nullopt;
    if (!whole || !tenths || !(*whole > 0.0)) {
        return Problem{
            Blame::kWrongInput,
            fmt::format(R"(is "{}"; expected an f-number such as 4.0, or a meter's "8 + 3/10")", shown(text))};
    }
    return exact_f_number(*whole) * std::exp2(*tenths / 20.0);
}

}  // namespace understudy
