#include "meter/eyes.h"

#include <algorithm>
#include <cmath>

#include "meter/integrate.h"

namespace understudy {

namespace {

double reference(double cheek_lxs, double face_lxs) { return std::max(cheek_lxs, kLeastCheekOfFace * face_lxs); }

}  // namespace

EyeVerdict eye_verdict(double eye_lxs, double cheek_lxs, double face_lxs) {
    const double share = eye_lxs / reference(cheek_lxs, face_lxs);
    if (share >= kLitShare) return EyeVerdict::kLit;
    return share >= kDimShare ? EyeVerdict::kDim : EyeVerdict::kDark;
}

std::vector<EyeReading> read_eyes(const Stage& stage, const std::vector<Bands>& weights, double cheek_lxs,
                                  double face_lxs) {
    std::vector<EyeReading> readings;
    for (std::size_t i = 0; i < stage.eyes().size(); ++i) {
        const Eye& eye = stage.eyes()[i];
        const Gathering place{Vec3(iris_centre(eye)), Vec3(eye.axis), Response::kFlat, static_cast<float>(kIrisRadius),
                              &eye};
        const Gathered gathered = gather_light(stage, place, weights, {0.005, 1e-4 * reference(cheek_lxs, face_lxs)});
        EyeReading reading;
        reading.eye = eye_name(i);
        reading.exposure_lxs = gathered.total.mean;
        reading.standard_error_lxs = gathered.total.standard_error;
        reading.stops_from_cheek = std::log2(gathered.total.mean / cheek_lxs);
        reading.verdict = eye_verdict(gathered.total.mean, cheek_lxs, face_lxs);
        reading.cornea_centre_m = cornea_centre(eye);
        reading.iris_centre_m = iris_centre(eye);
        reading.axis = eye.axis;
        readings.push_back(reading);
    }
    return readings;
}

}  // namespace understudy
