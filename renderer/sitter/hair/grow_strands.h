// All that grows on a posed head: hair, beard, brows and lashes.
#pragma once

#include "sitter/sitter.h"

namespace understudy {

struct StrandDetail {
    // Hairs of the head and the beard are drawn no thinner than this: fewer of them, as much wider. 0: as they are.
    double least_width_m = 0.0;
};

// In the studio. Nothing on a head that nothing is known to grow on. The same for any number of threads.
Strands grow_strands(const Sitter& sitter, const StrandDetail& detail);

// The places of the meter held before whatever grows there, not in it.
Landmarks clear_of(const Strands& strands, const Landmarks& landmarks);

}  // namespace understudy
