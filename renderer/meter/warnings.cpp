#include "meter/warnings.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

void append(std::vector<Warning>& all, std::vector<Warning> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// Some kinds are worse the smaller their number is.
double severity(const Warning& warning) {
    switch (warning.kind) {
        case WarningKind::kOverhead:
        case WarningKind::kCeiling:
        case WarningKind::kIntoLens:
            return -warning.number;
        default:
            return warning.number;
    }
}

}  // namespace

std::vector<Warning> find_warnings(const Studio& studio, const Stage& stage, const Stage& nobody,
                                   const LitStudio& lit) {
    std::vector<Warning> warnings = warn_of_stands(studio, stage);
    append(warnings, warn_of_frame(studio, stage, nobody, lit));
    append(warnings, warn_of_glasses(studio, stage, lit));
    append(warnings, warn_of_light(studio, stage, nobody, lit));
    std::stable_sort(warnings.begin(), warnings.end(), [](const Warning& a, const Warning& b) {
        return a.kind != b.kind ? a.kind < b.kind : severity(a) > severity(b);
    });
    return warnings;
}

}  // namespace understudy
