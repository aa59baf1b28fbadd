#include "setup/dial.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

constexpr int kMostHalvings = 10;  // 1/1024
// How far a decimal may be from the step that it means: 0.33 for a third.
constexpr double kSameStep = 0.0051;

void skip_blanks(std::string_view& rest) {
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
}

// A number without a sign off the front.
std::optional<double> take_number(std::string_view& rest) {
    skip_blanks(rest);
    double value = 0.0;
    if (rest.empty() || !(rest.front() == '.' || (rest.front() >= '0' && rest.front() <= '9'))) return std::nullopt;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value, std::chars_format::fixed);
    if (error != std::errc()) return std::nullopt;
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    skip_blanks(rest);
    return value;
}

// +1 or -1 off the front; 0 when there is no sign.
int take_sign(std::string_view& rest) {
    skip_blanks(rest);
    if (rest.empty() || (rest.front() != '+' && rest.front() != '-')) return 0;
    const int sign = rest.front() == '-' ? -1 : 1;
    rest.remove_prefix(1);
    return sign;
}

bool take_slash(std::string_view& rest) {
    if (rest.empty() || rest.front() != '/') return false;
    rest.remove_prefix(1);
    return true;
}

// "0.3", "1/3", "3/10".
std::optional<double> take_part_of_stop(std::string_view& rest) {
    const std::optional<double> over = take_number(rest);
    if (!over || !take_slash(rest)) return over;
    const std::optional<double> under = take_number(rest);
    return under && *under > 0.0 ? std::optional(*over / *under) : std::nullopt;
}

// Stops from full of "1/8 + 0.3" or "full".
std::optional<double> stops_of_fraction(std::string_view text) {
    std::string_view rest = text;
    skip_blanks(rest);
    double halvings = 0.0;
    if (rest.starts_with("full")) {
        rest.remove_prefix(4);
    } else {
        const std::optional<double> over = take_number(rest);
        if (!over || *over != 1.0 || !take_slash(rest)) return std::nullopt;
        const std::optional<double> under = take_number(rest);
        if (!under || !(*under >= 1.0)) return std::nullopt;
        halvings = std::log2(*under);
        if (halvings != std::round(halvings) || halvings > kMostHalvings) return std::nullopt;
    }
    skip_blanks(rest);
    if (rest.empty()) return -halvings;
    const int sign = take_sign(rest);
    const std::optional<double> part = take_part_of_stop(rest);
    if (sign == 0 || !part || !rest.empty() || *part > kMostHalvings) return std::nullopt;
    return -halvings + sign * *part;
}

std::optional<double> signed_number(std::string_view text) {
    std::string_view rest = text;
    const int sign = take_sign(rest);
    const std::optional<double> number = take_number(rest);
    if (!number || !rest.empty() || *number > 1000.0) return std::nullopt;
    return sign < 0 ? -*number : *number;
}

std::string notation_words(const Dial& dial) {
    switch (dial.notation) {
        case Dial::Notation::kFractions:
            return R"(a part of full power such as "1/8" or "1/8 + 0.3")";
        case Dial::Notation::kStopsFromFull:
            return "stops from full such as \"-2.7\"";
        case Dial::Notation::kNumbers:
            break;
    }
    return fmt::format("a number of the head's scale such as \"{:.1f}\"", dial.number_at_full - 1.0);
}

// Stops to a tenth, as displays round them: a third is .3, two are .7.
double shown_tenths(double stops) { return std::round(stops * 10.0) / 10.0; }

std::optional<double> stops_of_text(const Dial& dial, std::string_view text) {
    if (dial.notation == Dial::Notation::kFractions) return stops_of_fraction(text);
    const std::optional<double> number = signed_number(text);
    if (!number) return std::nullopt;
    return dial.notation == Dial::Notation::kNumbers ? *number - dial.number_at_full : *number;
}

}  // namespace

double stops_of_steps(const Dial& dial, int steps) { return static_cast<double>(steps) / dial.steps_a_stop; }

std::string dial_text(const Dial& dial, int steps) {
    const double stops = shown_tenths(stops_of_steps(dial, steps));
    if (dial.notation == Dial::Notation::kStopsFromFull) return steps == 0 ? "0.0" : fmt::format("{:+.1f}", stops);
    if (dial.notation == Dial::Notation::kNumbers) return fmt::format("{:.1f}", dial.number_at_full + stops);
    // The whole fraction below and what is added to it; over full there is nothing to add to but full.
    const int halvings = std::max(0, -static_cast<int>(std::floor(stops_of_steps(dial, steps))));
    const double added = shown_tenths(stops_of_steps(dial, steps + halvings * dial.steps_a_stop));
    const std::string fraction = fmt::format("1/{:.0f}", std::exp2(halvings));
    return added == 0.0 ? fraction : fmt::format("{} + {:.1f}", fraction, added);
}

std::string dial_range_text(const Dial& dial) {
    return fmt::format("{} to {}", dial_text(dial, dial.lowest_steps), dial_text(dial, 0));
}

Expected<int> read_dial_without_range(const Dial& dial, std::string_view text) {
    const std::optional<double> stops = stops_of_text(dial, text);
    if (!stops) {
        return Problem{Blame::kWrongInput, fmt::format("is \"{}\", which is not in the head's notation; expected {}",
                                                       shown(text), notation_words(dial))};
    }
    const int steps = static_cast<int>(std::lround(*stops * dial.steps_a_stop));
    const double exact = stops_of_steps(dial, steps);
    if (std::abs(*stops - exact) > kSameStep && std::abs(*stops - shown_tenths(exact)) > 1e-6) {
        return Problem{
            Blame::kWrongInput,
            fmt::format(R"(is "{}", between two steps of the head; expected steps of {}, nearest "{}")", shown(text),
                        dial.steps_a_stop == 3 ? "a third" : "a tenth", dial_text(dial, steps))};
    }
    return steps;
}

Expected<int> read_dial(const Dial& dial, std::string_view text) {
    Expected<int> steps = read_dial_without_range(dial, text);
    if (!steps) return steps;
    if (*steps > 0 || *steps < dial.lowest_steps) {
        return Problem{Blame::kWrongInput, fmt::format("is \"{}\", which the head does not reach; expected {}",
                                                       shown(text), dial_range_text(dial))};
    }
    return steps;
}

DialSetting nearest_setting(const Dial& dial, double stops_from_full) {
    const double lowest = stops_of_steps(dial, dial.lowest_steps);
    const double half_step = 0.5 / dial.steps_a_stop;
    DialSetting setting;
    setting.steps = static_cast<int>(std::lround(std::clamp(stops_from_full, lowest, 0.0) * dial.steps_a_stop));
    setting.left_over_stops = stops_from_full - stops_of_steps(dial, setting.steps);
    if (stops_from_full > half_step) setting.out_by_stops = stops_from_full;
    if (stops_from_full < lowest - half_step) setting.out_by_stops = stops_from_full - lowest;
    return setting;
}

}  // namespace understudy
