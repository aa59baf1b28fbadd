#include "setup/nearest_name.h"

#include <algorithm>
#include <numeric>

#include <fmt/format.h>

namespace understudy {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t substituted = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({substituted, row[j] + 1, row[j + 1] + 1});
        }
    }
    return row.back();
}

std::string nearest_name(std::string_view given, const std::vector<std::string>& valid) {
    std::string nearest;
    std::size_t least = std::string::npos;
    for (const std::string& name : valid) {
        const std::size_t distance = edit_distance(given, name);
        if (distance <= std::max<std::size_t>(1, name.size() / 3) && distance < least) {
            least = distance;
            nearest = name;
        }
    }
    return nearest;
}

std::string expected_names(std::string_view given, const std::vector<std::string>& valid) {
    const std::string nearest = nearest_name(given, valid);
    return fmt::format("{}{}{}", valid.size() > 1 ? "one of " : "", fmt::join(valid, ", "),
                       nearest.empty() ? "" : fmt::format("; did you mean \"{}\"?", nearest));
}

}  // namespace understudy
