// One kind of change as something to try: what it does to the room, how far it goes, and how its size is told.
#pragma once

#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "advice/fix.h"
#include "advice/trial_room.h"

namespace understudy {

// A number as a scene file is given it: to a millimetre, or a thousandth of its unit.
inline std::string scene_number(double number) {
    return fmt::format("{}", std::round(1000.0 * number) / 1000.0 + 0.0);  // and never -0
}

struct Way {
    FixKind kind = FixKind::kChin;
    std::string thing{};  // the light, panel surface or modifier, where the kind has one
    // Tried in their order. Between the first that does and the one before it the least is found to `fine`; with none,
    // these sizes are all there are.
    std::vector<double> sizes{};
    double fine = 0.0;
    // False: there is no such setup. Works in any room of the same scene, on another face as well.
    std::function<bool(TrialRoom&, double)> set_up{};
    // Fills in the fix's number and what comes after.
    std::function<void(Fix&, double)> tell = [](Fix& fix, double size) { fix.number = size; };
    bool instead = false;  // only where no way of this kind before it has done
};

// A half and the whole of what is asked for at the most: most kinds of change either help the more the larger they are,
// or do not help at all.
inline std::vector<double> sizes_up_to(double last) { return {0.5 * last, last}; }

}  // namespace understudy
