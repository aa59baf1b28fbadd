// Looking for the least change that lights both eyes.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "advice/fix.h"

namespace understudy {

// The look of the room as it stands.
SetupLook look_of(const TrialRoom& room);

// Sets up a change of this size; false: there is no such setup.
using Change = std::function<bool(double)>;

// The sizes are tried in their order; between the first that lights both eyes and the one before it the least is found
// to `fine`, confirmed and, where it is a hair short, made a little larger. None: no size
// does.
struct Found {
    double size = 0.0;
    SetupLook look;
};
std::optional<Found> least_change(TrialRoom& room, const Change& change, const std::vector<double>& sizes, double fine);

// A half and the whole of what is asked for at the most: most kinds of change either help the more the larger they are,
// or do not help at all.
inline std::vector<double> sizes_up_to(double last) { return {0.5 * last, last}; }

}  // namespace understudy
