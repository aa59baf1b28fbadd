#include "setup/problem_log.h"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

namespace understudy {
namespace {

constexpr std::size_t kLongestShown = 60;

std::string without_control_characters(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, '?');
    return text;
}

}  // namespace

std::string shown(std::string_view text) {
    std::size_t length = text.size();
    if (length > kLongestShown) {
        length = kLongestShown;
        while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
            --length;  // not inside a character of UTF-8
        }
    }
    const std::string result = without_control_characters(std::string(text.substr(0, length)));
    return length < text.size() ? result + "..." : result;
}

Problem problem_at(const SourcePlace& place, std::string_view what) {
    return {Blame::kWrongInput, fmt::format("{}: {}", place_text(place),
                                            // The parser's own messages quote the file as it is.
                                            without_control_characters(std::string(what)))};
}

void ProblemLog::add(const SourcePlace& place, std::string_view what, std::string_view expected) {
    noted_.push_back({place, problem_at(place, fmt::format("{}; expected {}", what, expected))});
}

void ProblemLog::add_all(const SourcePlace& place, const Problems& problems) {
    for (const Problem& problem : problems) {
        noted_.push_back({place, problem});
    }
}

Problems ProblemLog::in_order() const {
    std::vector<Noted> sorted = noted_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Noted& a, const Noted& b) {
        return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
    });
    Problems result;
    for (const Noted& noted : sorted) {
        result.push_back(noted.problem);
    }
    return result;
}

}  // namespace understudy
