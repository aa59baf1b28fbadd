#include "scatter/eye_colours.h"

#include <cmath>

#include "scatter/haemoglobin.h"

namespace understudy {

Spectrum sclera_albedo() {
    return Spectrum::tabulate(
        [](float wave) { return 0.68 - 0.06 * std::exp(-(static_cast<double>(wave) - 380.0) / 60.0); });
}

Spectrum eye_blood_per_cm() {
    constexpr double kOxygenation = 0.75;  // as in skin
    return Spectrum::tabulate(
        [](float wave) { return blood_absorption_per_cm(static_cast<double>(wave), kOxygenation); });
}

}  // namespace understudy
