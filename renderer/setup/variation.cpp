#include "setup/variation.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

constexpr std::string_view kRangeForm = "a range such as \"0.6 m..2 m/5\": first, last, and how many values, 2 to 48";

Problem wrong(std::string_view argument, std::string_view what, std::string_view expected) {
    return {Blame::kWrongInput, fmt::format("{}: {}; expected {}", shown(argument), what, expected)};
}

std::string trimmed(std::string_view text) {
    const auto is_blank = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return std::string(text);
}

// Parts between separators that stand in no quotes, brackets or braces. None when one of these is left open.
std::optional<std::vector<std::string>> split(std::string_view text, char separator) {
    std::vector<std::string> parts{""};
    char quote = '\0';
    int depth = 0;
    for (const char c : text) {
        if (quote != '\0') {
            if (c == quote) quote = '\0';
        } else if (c == '"' || c == '\'') {
            quote = c;
        } else if (c == '[' || c == '{') {
            ++depth;
        } else if (c == ']' || c == '}') {
            --depth;
        }
        if (depth < 0) return std::nullopt;
        if (c == separator && quote == '\0' && depth == 0) {
            parts.emplace_back();
        } else {
            parts.back() += c;
        }
    }
    if (quote != '\0' || depth != 0) return std::nullopt;
    std::transform(parts.begin(), parts.end(), parts.begin(), [](const std::string& part) { return trimmed(part); });
    return parts;
}

struct Measured {
    double number = 0.0;
    std::string unit;  // with whatever stands behind the number
};

std::optional<Measured> measured(std::string_view text) {
    if (text.starts_with('+')) text.remove_prefix(1);
    double number = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || !std::isfinite(number)) return std::nullopt;
    return Measured{number, trimmed(text.substr(static_cast<std::size_t>(end - text.data())))};
}

// A number and "..": other texts with two dots in them, such as a file's path, are values like any.
bool is_range(const std::string& value) {
    const auto dots = value.find("..");
    return dots != std::string::npos && measured(value.substr(0, dots)).has_value();
}

struct Range {
    Measured first;
    Measured last;
    int count = 0;
    bool even_ratio = false;
};

std::optional<Range> read_range(const std::string& value) {
    const auto dots = value.find("..");
    const auto sign = value.find_last_of("/*");
    if (sign == std::string::npos || sign < dots) return std::nullopt;
    const auto first = measured(value.substr(0, dots));
    const auto last = measured(trimmed(value.substr(dots + 2, sign - dots - 2)));
    const std::string count_text = trimmed(value.substr(sign + 1));
    int count = 0;
    const char* count_end = count_text.data() + count_text.size();
    const auto [end, error] = std::from_chars(count_text.data(), count_end, count);
    if (error != std::errc() || end != count_end || count < 2 || count > kMostRangeValues) return std::nullopt;
    if (!first || !last) return std::nullopt;
    return Range{*first, *last, count, value[sign] == '*'};
}

std::string value_at(const Range& range, int i) {
    const double share = static_cast<double>(i) / (range.count - 1);
    const double from = range.first.number;
    const double to = range.last.number;
    const double number = range.even_ratio ? from * std::pow(to / from, share) : from + (to - from) * share;
    const double shown_number = std::abs(number) < 1e-9 * std::abs(to - from) ? 0.0 : number;
    // As finely as anybody sets a stand or a lamp: four figures, and whole numbers from a thousand on.
    const std::string figures =
        std::abs(number) < 1000.0 ? fmt::format("{:.4g}", shown_number) : fmt::format("{:.0f}", shown_number);
    return range.last.unit.empty() ? figures : figures + " " + range.last.unit;
}

Expected<std::vector<std::string>> values_of_range(std::string_view argument, const std::string& value) {
    const auto range = read_range(value);
    if (!range) return wrong(argument, fmt::format("\"{}\" is no range", shown(value)), kRangeForm);
    if (!range->first.unit.empty() && range->first.unit != range->last.unit) {
        return wrong(argument, fmt::format("\"{}\" has two units", shown(value)),
                     "the same unit at both ends, as in \"0.6 m..2 m/5\"");
    }
    if (range->first.number == range->last.number) {
        return wrong(argument, fmt::format("\"{}\" ends where it begins", shown(value)), "two different ends");
    }
    if (range->even_ratio && !(range->first.number * range->last.number > 0.0)) {
        return wrong(argument, fmt::format("\"{}\" has no even ratio", shown(value)),
                     "both ends over 0, or even steps, FIRST..LAST/COUNT");
    }
    std::vector<std::string> values;
    values.reserve(static_cast<std::size_t>(range->count));
    for (int i = 0; i < range->count; ++i) values.push_back(value_at(*range, i));
    return values;
}

std::string unquoted(const std::string& part) {
    const bool quoted =
        part.size() >= 2 && (part.front() == '"' || part.front() == '\'') && part.back() == part.front();
    return quoted ? part.substr(1, part.size() - 2) : part;
}

}  // namespace

std::string key_part(const std::string& name) {
    const bool bare = !name.empty() && std::all_of(name.begin(), name.end(), [](unsigned char c) {
        return std::isalnum(c) != 0 || c == '_' || c == '-';
    });
    return bare ? name : fmt::format("\"{}\"", name);
}

std::string argument_of(const Variation& variation) {
    return fmt::format("{} {}", variation.option, shown(variation.key));
}

std::string argument_of(const Variation& variation, const std::string& value) {
    return fmt::format("{}={}", argument_of(variation), shown(value));
}

Expected<Variation> read_variation(const std::string& argument, const std::string& option) {
    const std::string said = option + " " + argument;
    const auto equals = argument.find('=');
    if (equals == std::string::npos) {
        return wrong(said, "no \"=\"", "KEY=VALUE,VALUE, such as light.key.modifier=strip-30x120,octa-120");
    }
    if (std::any_of(argument.begin(), argument.end(), [](unsigned char c) { return std::iscntrl(c) != 0; })) {
        return wrong(said, "holds a control character", "a single line of text");
    }
    Variation variation;
    variation.option = option;
    variation.key = trimmed(argument.substr(0, equals));
    const auto path = split(variation.key, '.');
    if (!path || std::find(path->begin(), path->end(), "") != path->end()) {
        return wrong(said, "the key has an empty part, or a quotation mark without its end",
                     "parts with dots between them, such as camera.focal_length");
    }
    std::transform(path->begin(), path->end(), std::back_inserter(variation.path), unquoted);
    const auto values = split(std::string_view(argument).substr(equals + 1), ',');
    if (!values) return wrong(said, "a quotation mark, bracket or brace is left open", "its other end");
    for (const std::string& value : *values) {
        if (value.empty()) return wrong(said, "a value is empty", "a value before and after each comma");
        if (!is_range(value)) {
            variation.values.push_back(value);
            continue;
        }
        const auto range = values_of_range(said, value);
        if (!range) return range.problems();
        variation.values.insert(variation.values.end(), range->begin(), range->end());
    }
    return variation;
}

}  // namespace understudy
