// Integrating the light at a point until it is known well enough.
#pragma once

#include <vector>

#include "spectrum/waves.h"
#include "transport/path_tracer.h"

namespace understudy {

struct Precision {
    double relative = 0.005;  // of the reading
    double absolute = 0.0;    // in the reading's unit; whichever is larger is enough
};

struct Estimate {
    double mean = 0.0;
    double standard_error = 0.0;
};

// One estimate a layer, and their sum's.
struct Gathered {
    std::vector<Estimate> layers;
    Estimate total;
    Estimate by_backdrop;          // of the total, what touched the backdrop on its way
    Estimate by_room;              // of the total, what touched walls, floor or ceiling, and all that is ambient
    std::vector<Bands> transfers;  // each layer's mean before any weight, as a film holds it
};

// weights: for each layer, what its bands count (power times luminous weights). Sixteen independently scrambled
// sequences are run side by side and doubled in length until the spread of their means is small enough, for the sum and
// for each light that makes up a noticeable part of it, or until they have 8192 paths each.
Gathered gather_light(const Stage& stage, const Gathering& place, const std::vector<Bands>& weights,
                      const Precision& precision);

// The same for the radiance along a ray: a luminous exposure a steradian, lx·s/sr.
Gathered look_for_light(const Stage& stage, const Ray& ray, const std::vector<Bands>& weights,
                        const Precision& precision);

}  // namespace understudy
