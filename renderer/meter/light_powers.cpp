#include "meter/light_powers.h"

#include <cmath>

#include <fmt/format.h>

#include "film/exposure.h"
#include "kit/flash_energy.h"
#include "meter/flash_efficacy.h"
#include "meter/flash_heads.h"
#include "meter/light_colours.h"
#include "meter/own_reading.h"

namespace understudy {

namespace {

Problem reaches_nothing(const LightSettings& light) {
    return {Blame::kWrongInput,
            fmt::format("{}: the light \"{}\" sends no light to the face, so it cannot be set by a reading there; "
                        "expected it to face the sitter, or its power as energy or lumens",
                        place_text(light.said_at), light.name)};
}

// lx·s at the face that the settings ask for; none when they ask for light and not for a reading.
std::optional<double> wanted_exposure(const Power& power, const ExposureSettings& exposure, double key_exposure) {
    if (const auto* meter = std::get_if<PowerFromMeter>(&power)) {
        return exposure_of_f_number(meter->f_number, exposure.iso, kIncidentFlat);
    }
    if (const auto* lamp = std::get_if<PowerFromIlluminance>(&power)) return lamp->lux * exposure.shutter_s;
    if (const auto* under = std::get_if<PowerFromKey>(&power)) return key_exposure * std::exp2(under->stops);
    return std::nullopt;
}

// The way from a flash pack or a lamp to the light out of the modifier.
struct LightWay {
    double efficacy = kFlashEfficacy;  // lm·s/J
    double efficiency = 1.0;           // of the modifier
    double through_gels = 1.0;
    double all() const { return efficiency * through_gels; }
};

// lm·s while the shutter is open, out of a light that is told what it gives and not what it reads.
double told_power(const Setup& setup, const LightSettings& light, const LightWay& way) {
    if (const auto* energy = std::get_if<PowerFromEnergy>(&light.power)) {
        return luminous_energy(energy->joules, way.all(), way.efficacy);
    }
    if (const auto* dial = std::get_if<PowerFromDial>(&light.power)) {
        return luminous_energy(joules_at(setup.flashes[*light.flash], dial->steps), way.all(), way.efficacy);
    }
    return std::get<PowerFromFlux>(light.power).lumens * way.through_gels * setup.camera.exposure.shutter_s;
}

// What the report tells of a light that gives so many lm·s and reads per_lumen at the face.
LightPower tell(const Studio& studio, std::size_t i, const LightWay& way, double power, double per_lumen) {
    const ExposureSettings& exposure = studio.setup.camera.exposure;
    LightPower told;
    told.light = studio.setup.lights[i].name;
    told.flash = studio.setup.lights[i].source == SourceKind::kFlash;
    told.lumens = told.flash ? power : power / exposure.shutter_s;
    told.lux = told.flash ? 0.0 : told.lumens * per_lumen;
    told.energy_j = told.flash ? joules_for(power, way.all(), way.efficacy) : 0.0;
    told.f_number = f_number_of_exposure(power * per_lumen, exposure.iso, kIncidentFlat);
    told.efficacy_lms_per_j = told.flash ? way.efficacy : 0.0;
    told.modifier_efficiency = way.efficiency;
    return with_head(studio, i, told);
}

}  // namespace

Expected<LitStudio> set_powers(const Studio& studio, const Stage& nobody) {
    const Setup& setup = studio.setup;
    LitStudio lit;
    Problems problems;
    double key_exposure = 0.0;
    for (std::size_t i = 0; i < setup.lights.size(); ++i) {
        const LightSettings& light = setup.lights[i];
        const Spectrum spectrum = light_spectrum(light.colour);
        const double per_lumen = own_reading_per_lumen(studio, nobody, i, spectrum);
        const auto efficacy = flash_efficacy(studio, light);
        if (!efficacy) {
            problems.insert(problems.end(), efficacy.problems().begin(), efficacy.problems().end());
            continue;
        }
        const LightWay way{efficacy->lms_per_j, studio.modifiers[i].efficiency, gel_share(light.colour)};
        const auto wanted = wanted_exposure(light.power, setup.camera.exposure, key_exposure);
        if (wanted && !(per_lumen > 0.0)) {
            problems.push_back(reaches_nothing(light));
            continue;
        }
        const double power = wanted ? *wanted / per_lumen : told_power(setup, light, way);
        if (i == 0) key_exposure = power * per_lumen;
        lit.powers.push_back(tell(studio, i, way, power, per_lumen));
        lit.powers.back().efficacy_from = efficacy->from;
        lit.layers.push_back({light.name, power, spectrum});
    }
    if (!problems.empty()) return problems;
    if (nobody.has_ambient()) {
        const double exposure = setup.room.ambient_lx * setup.camera.exposure.shutter_s;
        lit.layers.push_back({"ambient", exposure, ambient_spectrum(setup.room)});
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
