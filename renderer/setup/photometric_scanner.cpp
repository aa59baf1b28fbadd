#include "setup/photometric_scanner.h"

#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t'; }
bool is_line_end(char c) { return c == '\n' || c == '\r'; }

}  // namespace

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && is_blank(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

PhotometricScanner::PhotometricScanner(std::string_view text, std::string file) : text_(text), file_(std::move(file)) {}

// CR LF counts as one line end, CR alone (old files) too.
void PhotometricScanner::step() {
    const char c = text_[next_.at];
    ++next_.at;
    const bool before_lf = c == '\r' && next_.at < text_.size() && text_[next_.at] == '\n';
    if (is_line_end(c) && !before_lf) {
        ++next_.line;
        next_.line_start = next_.at;
    }
}

std::string PhotometricScanner::place() const {
    return fmt::format("{}:{}:{}", file_, last_.line, last_.at - last_.line_start + 1);
}

void PhotometricScanner::fail(std::string_view what, std::string_view expected) {
    if (!problem_) {
        problem_ = Problem{Blame::kWrongInput, fmt::format("{}: {}; expected {}", place(), what, expected)};
    }
}

void PhotometricScanner::warn(std::string_view what) { warnings_.push_back(fmt::format("{}: {}", place(), what)); }

std::optional<std::string_view> PhotometricScanner::line() {
    if (failed() || next_.at >= text_.size()) {
        return std::nullopt;
    }
    last_ = next_;
    while (next_.at < text_.size() && !is_line_end(text_[next_.at])) {
        ++next_.at;
    }
    const std::string_view found = text_.substr(last_.at, next_.at - last_.at);
    const int line = next_.line;
    while (next_.at < text_.size() && next_.line == line) {
        step();
    }
    return found;
}

// False at the end of the file and after a problem.
bool PhotometricScanner::skip_to_value() {
    while (!failed() && next_.at < text_.size()) {
        const char c = text_[next_.at];
        if (c != ',' && !is_blank(c) && !is_line_end(c)) {
            return true;
        }
        last_ = next_;
        if (c == ',' && !comma_may_come_) {
            fail("there is no value before this comma", "a number before each comma");
        }
        if (c == '\t' && !tab_told_) {
            tab_told_ = true;
            warn("numbers are parted by tabs, which the standard does not provide for");
        }
        comma_may_come_ = comma_may_come_ && c != ',';
        step();
    }
    return false;
}

std::optional<std::string_view> PhotometricScanner::value(std::string_view name) {
    if (!skip_to_value()) {
        last_ = next_;
        fail("the file ends too early", name);
        return std::nullopt;
    }
    last_ = next_;
    while (next_.at < text_.size() && text_[next_.at] != ',' && !is_blank(text_[next_.at]) &&
           !is_line_end(text_[next_.at])) {
        ++next_.at;
    }
    comma_may_come_ = true;
    return text_.substr(last_.at, next_.at - last_.at);
}

// from_chars knows neither a locale nor a leading plus, but it does know "inf" and "nan".
std::optional<double> PhotometricScanner::finite(std::string_view token) {
    std::string_view digits = token;
    if (digits.size() > 1 && digits.front() == '+' && digits[1] != '-') {
        digits.remove_prefix(1);
    }
    double value = 0.0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

std::optional<double> PhotometricScanner::number(std::string_view name, Range range) {
    const std::optional<std::string_view> token = value(name);
    if (!token) {
        return std::nullopt;
    }
    const std::optional<double> read = finite(*token);
    if (!read) {
        fail(fmt::format("\"{}\" is not a number", shown(*token)), name);
        return std::nullopt;
    }
    if (!range.contains(*read)) {
        fail(fmt::format("{} is {}, out of range", name, shown(*token)),
             fmt::format("{} to {}", range.least, range.most));
        return std::nullopt;
    }
    return read;
}

std::optional<int> PhotometricScanner::whole(std::string_view name, int least, int most) {
    const std::optional<double> read = number(name, {static_cast<double>(least), static_cast<double>(most)});
    if (!read) {
        return std::nullopt;
    }
    const std::string_view token = text_.substr(last_.at, next_.at - last_.at);
    if (*read != std::floor(*read)) {
        fail(fmt::format("{} is {}", name, shown(token)), fmt::format("a whole number from {} to {}", least, most));
        return std::nullopt;
    }
    if (token.find_first_of(".eE") != std::string_view::npos && !point_told_) {
        point_told_ = true;
        warn(fmt::format("{} is written {}; the standard wants a whole number", name, shown(token)));
    }
    return static_cast<int>(*read);
}

std::vector<double> PhotometricScanner::numbers(std::string_view name, std::size_t count, Range range) {
    std::vector<double> result;
    for (std::size_t i = 0; i < count; ++i) {
        const std::optional<double> read = number(fmt::format("{} {} of {}", name, i + 1, count), range);
        if (!read) {
            break;
        }
        result.push_back(*read);
    }
    return result;
}

void PhotometricScanner::end(std::string_view expected) {
    if (failed() || !skip_to_value()) {
        return;
    }
    const std::optional<std::string_view> token = value(expected);
    if (!token) {
        return;
    }
    if (finite(*token)) {
        fail(fmt::format("there are more numbers, from {} on, than the counts say", shown(*token)), expected);
        return;
    }
    warn(fmt::format("what follows the last value is not read: \"{}\"", shown(*token)));
}

}  // namespace understudy
