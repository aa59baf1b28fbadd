#include "scatter/enamel.h"

#include <cmath>

namespace understudy {

Spectrum enamel_albedo() {
    return Spectrum::tabulate([](float wave) {
        const double past_violet = static_cast<double>(wave) - 380.0;
        return 0.515 - 0.368 * std::exp(-past_violet / 110.0) + 0.032 * std::tanh((past_violet - 210.0) / 30.0);
    });
}

}  // namespace understudy
