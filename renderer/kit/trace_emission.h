// From what a modifier is built of to what leaves its front.
#pragma once

#include <optional>

#include "kit/emission_table.h"
#include "setup/construction.h"
#include "setup/setup.h"

namespace understudy {

// Changes whenever the same construction would give another table.
inline constexpr std::uint32_t kTraceVersion = 2;

struct TracedEmission {
    EmissionTable table;
    double efficiency = 0.0;      // lm out of the front for each lm of the bare tube, by photons from the tube
    double standard_error = 0.0;  // of the efficiency
    double traced_flux = 0.0;     // the same, by the paths from the front that filled the table
};

// The same for any number of threads. effort: 1 is enough to see no noise; less for tests. None when no path finds a
// way out.
std::optional<TracedEmission> trace_emission(const Construction& construction, const ModifierShape& front,
                                             double effort = 1.0);

// Where the table's knots lie.
EmissionLayout emission_layout(const Construction& construction, const ModifierShape& front);

}  // namespace understudy
