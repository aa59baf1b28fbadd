#include "meter/meter.h"

#include <algorithm>
#include <cmath>

#include "film/exposure.h"
#include "meter/catchlights.h"
#include "meter/eyes.h"
#include "meter/integrate.h"
#include "meter/light_hues.h"
#include "meter/meter_points.h"
#include "meter/ratio.h"

namespace understudy {

namespace {

// Readings this far under the working exposure are black in any picture and need no half per cent of themselves.
constexpr double kBlack = 1.0 / 4096.0;
constexpr double kRelative = 0.005;

double constant_of(Receptor receptor) { return receptor == Receptor::kFlat ? kIncidentFlat : kIncidentDome; }

Reading read_point(const MeterPoint& point, const Stage& stage, const std::vector<LayerLight>& layers,
                   const ExposureSettings& exposure) {
    const double constant = constant_of(point.receptor);
    const double working = exposure_of_f_number(exposure.aperture, exposure.iso, constant);
    Gathering place{Vec3(point.position), Vec3(point.normal)};
    place.response = point.receptor == Receptor::kFlat ? Response::kFlat : Response::kDome;
    const Gathered gathered =
        gather_light(stage, place, exposure_weights(layers), {kRelative, kRelative * kBlack * working});
    Reading reading;
    reading.point = point.name;
    reading.receptor = point.receptor;
    reading.facing = point.facing;
    reading.position_m = point.position;
    reading.normal = point.normal;
    reading.exposure_lxs = gathered.total.mean;
    reading.standard_error_lxs = gathered.total.standard_error;
    reading.f_number = f_number_of_exposure(gathered.total.mean, exposure.iso, constant);
    reading.stops_from_camera = std::log2(gathered.total.mean / working);
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const Estimate& light = gathered.layers[i];
        reading.by_light.push_back({layers[i].light, light.mean, light.standard_error,
                                    f_number_of_exposure(light.mean, exposure.iso, constant)});
    }
    return reading;
}

double brighter_cheek(const std::vector<Reading>& readings) {
    double brighter = 0.0;
    for (const Reading& reading : readings) {
        if (reading.point.starts_with("cheek-")) brighter = std::max(brighter, reading.exposure_lxs);
    }
    return brighter;
}

}  // namespace

MeterReport read_meter(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit) {
    const Setup& setup = studio.setup;
    const ExposureSettings& exposure = setup.camera.exposure;
    MeterReport report;
    report.title = setup.title;
    report.camera_position_m = studio.camera.centre;
    report.camera_aim_m = studio.camera.centre + studio.focus_m * studio.camera.axis;
    report.aperture = exposure.aperture;
    report.shutter_s = exposure.shutter_s;
    report.iso = exposure.iso;
    report.ev100 = ev100(exposure.aperture, exposure.shutter_s, exposure.iso);
    report.powers = lit.powers;
    report.colours = read_colours(studio, nobody, lit);
    for (const MeterPoint& point : meter_points(studio)) {
        report.readings.push_back(read_point(point, point.free_of_sitter ? nobody : stage, lit.layers, exposure));
    }
    report.ratio = lighting_ratio(report.readings);
    report.ambient_lxs = setup.room.ambient_lx * exposure.shutter_s;
    report.ambient_stops_from_camera =
        std::log2(report.ambient_lxs / exposure_of_f_number(exposure.aperture, exposure.iso, kIncidentFlat));
    if (!stage.eyes().empty()) {
        report.eyes = read_eyes(stage, exposure_weights(lit.layers), brighter_cheek(report.readings));
        report.catchlights = find_catchlights(studio, stage, lit);
        report.pupil = lit.pupil;
    }
    return report;
}

}  // namespace understudy
