#include "meter/eyes.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

// Of the cheek's light. In an eye three stops under it, the limit of the dark, this is a hundredth of a stop.
constexpr double kNoticed = 1e-3;

double reference(double cheek_lxs, double face_lxs) { return std::max(cheek_lxs, kLeastCheekOfFace * face_lxs); }

}  // namespace

EyeVerdict eye_verdict(double eye_lxs, double cheek_lxs, double face_lxs) {
    const double share = eye_lxs / reference(cheek_lxs, face_lxs);
    if (share >= kLitShare) return EyeVerdict::kLit;
    return share >= kDimShare ? EyeVerdict::kDim : EyeVerdict::kDark;
}

namespace {

std::vector<EyeLight> lights_of(const Stage& stage, const Eye& eye, const std::vector<LayerLight>& layers,
                                const Gathered& gathered, const Reading* cheek) {
    std::vector<EyeLight> lights;
    for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
        EyeLight light;
        light.light = layers[i].light;
        light.sight = sight_of(stage, eye, stage.emitters()[i]);
        light.exposure_lxs = gathered.layers[i].mean;
        if (cheek != nullptr) {
            light.stops_from_cheek = std::log2(light.exposure_lxs / cheek->by_light[i].exposure_lxs);
        }
        lights.push_back(light);
    }
    return lights;
}

}  // namespace

Gathered gather_at_iris(const Stage& stage, const Eye& eye, const std::vector<Bands>& weights,
                        const Precision& precision) {
    const Gathering place{Vec3(iris_centre(eye)), Vec3(eye.axis), Response::kFlat, static_cast<float>(kIrisRadius),
                          &eye};
    return gather_light(stage, place, weights, precision);
}

std::vector<EyeReading> read_eyes(const Stage& stage, const std::vector<LayerLight>& layers, const Reading* cheek,
                                  double face_lxs, double relative) {
    const std::vector<Bands> weights = exposure_weights(layers);
    const double cheek_lxs = cheek == nullptr ? 0.0 : cheek->exposure_lxs;
    std::vector<EyeReading> readings;
    for (std::size_t i = 0; i < stage.eyes().size(); ++i) {
        const Eye& eye = stage.eyes()[i];
        const Gathered gathered =
            gather_at_iris(stage, eye, weights, {relative, kNoticed * reference(cheek_lxs, face_lxs)});
        EyeReading reading;
        reading.eye = eye_name(i);
        reading.exposure_lxs = gathered.total.mean;
        reading.standard_error_lxs = gathered.total.standard_error;
        reading.stops_from_cheek = std::log2(gathered.total.mean / cheek_lxs);
        reading.verdict = eye_verdict(gathered.total.mean, cheek_lxs, face_lxs);
        reading.lights = lights_of(stage, eye, layers, gathered, cheek);
        reading.cornea_centre_m = cornea_centre(eye);
        reading.iris_centre_m = iris_centre(eye);
        reading.axis = eye.axis;
        readings.push_back(reading);
    }
    return readings;
}

void name_faults(std::vector<EyeReading>& eyes, const std::vector<Catchlight>& catchlights) {
    for (EyeReading& eye : eyes) {
        for (EyeLight& light : eye.lights) {
            const auto image = std::find_if(catchlights.begin(), catchlights.end(), [&](const Catchlight& one) {
                return one.eye == eye.eye && one.light == light.light && !one.is_panel;
            });
            const double shown = image == catchlights.end() ? 0.0 : image->visible;
            light.fault = light.sight.share < kLeastSeen ? EyeFault::kNoLight
                          : shown < kLeastShown          ? EyeFault::kNoReflection
                                                         : EyeFault::kNone;
        }
    }
}

}  // namespace understudy
