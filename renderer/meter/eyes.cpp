#include "meter/eyes.h"

#include <cmath>

#include "meter/integrate.h"

namespace understudy {

EyeVerdict eye_verdict(double share_of_cheek) {
    if (share_of_cheek >= kLitShare) return EyeVerdict::kLit;
    return share_of_cheek >= kDimShare ? EyeVerdict::kDim : EyeVerdict::kDark;
}

std::vector<EyeReading> read_eyes(const Stage& stage, const std::vector<Bands>& weights, double cheek_lxs) {
    std::vector<EyeReading> readings;
    for (std::size_t i = 0; i < stage.eyes().size(); ++i) {
        const Eye& eye = stage.eyes()[i];
        const Gathering place{Vec3(iris_centre(eye)), Vec3(eye.axis), Response::kFlat, static_cast<float>(kIrisRadius),
                              &eye};
        const Gathered gathered = gather_light(stage, place, weights, {0.005, 1e-4 * cheek_lxs});
        EyeReading reading;
        reading.eye = eye_name(i);
        reading.exposure_lxs = gathered.total.mean;
        reading.standard_error_lxs = gathered.total.standard_error;
        reading.stops_from_cheek = std::log2(gathered.total.mean / cheek_lxs);
        reading.verdict = eye_verdict(gathered.total.mean / cheek_lxs);
        reading.cornea_centre_m = cornea_centre(eye);
        reading.iris_centre_m = iris_centre(eye);
        reading.axis = eye.axis;
        readings.push_back(reading);
    }
    return readings;
}

}  // namespace understudy
