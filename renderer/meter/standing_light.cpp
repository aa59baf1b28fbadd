#include "meter/standing_light.h"

#include <algorithm>

#include "meter/integrate.h"
#include "sitter/pupil.h"

namespace understudy {
namespace {

// The layers with the lumens (or the ambient lux) that they shine with all the time.
std::vector<LayerLight> standing_layers(const Setup& setup, const LitStudio& lit) {
    std::vector<LayerLight> layers = lit.layers;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        LayerLight& layer = layers[i];
        if (i >= setup.lights.size() || !lit.powers[i].flash) {
            layer.exposure_power /= setup.camera.exposure.shutter_s;
            continue;
        }
        const LightPower& power = lit.powers[i];
        const auto& head = setup.lights[i].flash;
        const double lamp_lm = head ? setup.flashes[*head].modelling_lamp_lm : 0.0;
        // Of what the lamp gives as much leaves the modifier as of what the tube gives.
        const double tube_lms = power.energy_j * power.efficacy_lms_per_j;
        layer.exposure_power *= tube_lms > 0.0 ? lamp_lm / tube_lms : 0.0;
    }
    return layers;
}

Double3 line_of_sight(const Studio& studio) {
    if (studio.sitter.eyes) {
        const auto& eyes = *studio.sitter.eyes;
        return glm::normalize(eyes[0].axis + eyes[1].axis);
    }
    return glm::normalize(studio.camera.centre - studio.face);
}

}  // namespace

PupilReading read_pupil(const Studio& studio, const Stage& nobody, const LitStudio& lit) {
    const std::vector<LayerLight> layers = standing_layers(studio.setup, lit);
    PupilReading pupil;
    pupil.diameter_mm = 1e3 * pupil_seen_m(Eye{}.pupil_radius_m);
    const bool dark =
        std::none_of(layers.begin(), layers.end(), [](const LayerLight& layer) { return layer.exposure_power > 0.0; });
    if (!dark) {
        const Gathering place{Vec3(studio.face), Vec3(line_of_sight(studio))};
        pupil.illuminance_lx = gather_light(nobody, place, exposure_weights(layers), {0.01, 0.01}).total.mean;
        pupil.diameter_mm = pupil_mm_of_illuminance(pupil.illuminance_lx);
        pupil.from = PupilFrom::kStandingLight;
    }
    if (studio.setup.sitter.pupil_m) {
        pupil.diameter_mm = 1e3 * *studio.setup.sitter.pupil_m;
        pupil.from = PupilFrom::kTold;
    }
    return pupil;
}

}  // namespace understudy
