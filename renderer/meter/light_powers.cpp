#include "meter/light_powers.h"

#include <cmath>

#include <fmt/format.h>

#include "film/exposure.h"
#include "kit/flash_energy.h"
#include "meter/integrate.h"
#include "meter/light_colours.h"

namespace understudy {

namespace {

// lx at the face for 1 lm of this light.
double reading_per_lumen(const Studio& studio, const Stage& nobody, std::size_t light, const Spectrum& spectrum) {
    const Double3 face = studio.points.face;
    Gathering place;
    place.position = Vec3(face);
    place.normal = Vec3(glm::normalize(studio.lights[light].centre - face));
    std::vector<Bands> weights(nobody.layer_count(), Bands{});
    weights[light] = luminous_weights(spectrum);
    return gather_light(nobody, place, weights, {0.001, 0.0}).layers[light].mean;
}

Problem reaches_nothing(const LightSettings& light) {
    return {
        Blame::kWrongInput,
        fmt::format("{}:{}:{}: the light \"{}\" sends no light to the face, so it cannot be set by a reading there; "
                    "expected it to face the sitter, or its power as energy or lumens",
                    light.said_at.file, light.said_at.line, light.said_at.column, light.name)};
}

// lx·s at the face that the settings ask for; none when they ask for light and not for a reading.
std::optional<double> wanted_exposure(const Power& power, double iso, double key_exposure) {
    if (const auto* meter = std::get_if<PowerFromMeter>(&power)) {
        return exposure_of_f_number(meter->f_number, iso, kIncidentFlat);
    }
    if (const auto* under = std::get_if<PowerFromKey>(&power)) return key_exposure * std::exp2(under->stops);
    return std::nullopt;
}

}  // namespace

Expected<LitStudio> set_powers(const Studio& studio, const Stage& nobody) {
    const Setup& setup = studio.setup;
    const ExposureSettings& exposure = setup.camera.exposure;
    LitStudio lit;
    Problems problems;
    double key_exposure = 0.0;
    for (std::size_t i = 0; i < setup.lights.size(); ++i) {
        const LightSettings& light = setup.lights[i];
        const Spectrum spectrum = light_spectrum(light.colour);
        const double through_gels = gel_share(light.colour);
        const double per_lumen = reading_per_lumen(studio, nobody, i, spectrum);
        const bool flash = light.source == SourceKind::kFlash;
        double power = 0.0;  // lm·s while the shutter is open
        if (const auto wanted = wanted_exposure(light.power, exposure.iso, key_exposure)) {
            if (!(per_lumen > 0.0)) {
                problems.push_back(reaches_nothing(light));
                continue;
            }
            power = *wanted / per_lumen;
        } else if (const auto* energy = std::get_if<PowerFromEnergy>(&light.power)) {
            power = luminous_energy(energy->joules, studio.modifiers[i].efficiency) * through_gels;
        } else {
            const double lumens = std::get<PowerFromFlux>(light.power).lumens * through_gels;
            power = flash ? lumens : lumens * exposure.shutter_s;
        }
        if (i == 0) key_exposure = power * per_lumen;
        LightPower told;
        told.light = light.name;
        told.flash = flash;
        told.lumens = flash ? power : power / exposure.shutter_s;
        told.energy_j = flash ? joules_for(power / through_gels, studio.modifiers[i].efficiency) : 0.0;
        told.f_number = f_number_of_exposure(power * per_lumen, exposure.iso, kIncidentFlat);
        lit.powers.push_back(told);
        lit.layers.push_back({light.name, power, spectrum});
    }
    if (!problems.empty()) return problems;
    if (nobody.has_ambient()) {
        lit.layers.push_back({"ambient", setup.room.ambient_lx * exposure.shutter_s, ambient_spectrum(setup.room)});
    }
    return lit;
}

std::vector<Bands> exposure_weights(const std::vector<LayerLight>& layers) {
    std::vector<Bands> weights;
    for (const LayerLight& layer : layers) {
        Bands bands = luminous_weights(layer.spectrum);
        for (float& weight : bands) weight *= static_cast<float>(layer.exposure_power);
        weights.push_back(bands);
    }
    return weights;
}

}  // namespace understudy
