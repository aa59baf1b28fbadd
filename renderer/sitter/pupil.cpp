#include "sitter/pupil.h"

#include <cmath>

namespace understudy {

double stanley_davies_pupil_mm(double flux_cdm2_deg2) {
    const double bent = std::pow(flux_cdm2_deg2 / 846.0, 0.41);
    return 7.75 - 5.75 * bent / (bent + 2.0);
}

double watson_yellott_pupil_mm(double flux_cdm2_deg2, int eyes, double age_years) {
    const double both = stanley_davies_pupil_mm((eyes == 1 ? 0.1 : 1.0) * flux_cdm2_deg2);
    constexpr double kReferenceAge = 28.58;
    return both + (age_years - kReferenceAge) * (0.02132 - 0.009562 * both);
}

double pupil_mm_of_illuminance(double lux) {
    constexpr double kDegreesARadian = 180.0 / kPiDouble;
    return watson_yellott_pupil_mm(lux * kDegreesARadian * kDegreesARadian, 2, kPupilAge);
}

}  // namespace understudy
