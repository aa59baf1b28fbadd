#include "setup/nearest_name.h"

#include <algorithm>
#include <numeric>

#include <fmt/format.h>

namespace understudy {

namespace {

// More than so many are not all told: some of them, from the first to the last, show what they look like.
constexpr std::size_t kMostNamesTold = 24;
constexpr std::size_t kNamesTold = 8;

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
    // rows[i][j]: from the first i letters of a to the first j of b.
    std::vector<std::vector<std::size_t>> rows(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    std::iota(rows[0].begin(), rows[0].end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        rows[i][0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t substituted = rows[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            rows[i][j] = std::min({substituted, rows[i][j - 1] + 1, rows[i - 1][j] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                rows[i][j] = std::min(rows[i][j], rows[i - 2][j - 2] + 1);
            }
        }
    }
    return rows[a.size()][b.size()];
}

std::string nearest_name(std::string_view given, const std::vector<std::string>& valid) {
    std::string nearest;
    std::size_t least = std::string::npos;
    for (const std::string& name : valid) {
        const std::size_t close = std::max<std::size_t>(1, name.size() / 3);
        if (given.size() > name.size() + close) {
            continue;  // the distance is at least the difference of the lengths
        }
        const std::size_t distance = edit_distance(given, name);
        if (distance <= close && distance < least) {
            least = distance;
            nearest = name;
        }
    }
    return nearest;
}

std::string expected_names(std::string_view given, const std::vector<std::string>& valid) {
    const std::string nearest = nearest_name(given, valid);
    const std::string mean = nearest.empty() ? "" : fmt::format("; did you mean \"{}\"?", nearest);
    if (valid.size() <= kMostNamesTold) {
        return fmt::format("{}{}{}", valid.size() > 1 ? "one of " : "", fmt::join(valid, ", "), mean);
    }
    std::vector<std::string> few;
    const std::size_t step = (valid.size() + kNamesTold - 1) / kNamesTold;
    for (std::size_t i = 0; i < valid.size(); i += step) few.push_back(valid[i]);
    return fmt::format("one of {} names such as {}{}", valid.size(), fmt::join(few, ", "), mean);
}

}  // namespace understudy
