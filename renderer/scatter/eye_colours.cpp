#include "scatter/eye_colours.h"

#include <cmath>

#include "scatter/haemoglobin.h"

namespace understudy {

Spectrum sclera_albedo() {
    return Spectrum::tabulate([](float wave) {
        const double nm = static_cast<double>(wave);
        const double white = 0.66 - 0.06 * std::exp(-(nm - 380.0) / 60.0);
        return white * std::exp(-0.00015 * blood_absorption_per_cm(nm, 0.75));
    });
}

Spectrum iris_albedo() {
    return Spectrum::tabulate([](float wave) {
        const double rise = 1.0 / (1.0 + std::exp(-(static_cast<double>(wave) - 590.0) / 45.0));
        return 0.025 + 0.14 * rise;
    });
}

}  // namespace understudy
