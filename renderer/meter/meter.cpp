#include "meter/meter.h"

#include <algorithm>
#include <cmath>

#include <tbb/parallel_for.h>
#include <tbb/parallel_invoke.h>

#include "film/exposure.h"
#include "meter/backdrop_readings.h"
#include "meter/catchlights.h"
#include "meter/eyes.h"
#include "meter/face/read_face.h"
#include "meter/light_hues.h"
#include "meter/meter_points.h"
#include "meter/outline.h"
#include "meter/ratio.h"
#include "meter/read_point.h"
#include "meter/warnings.h"

namespace understudy {

namespace {

double face_dome(const std::vector<Reading>& readings) {
    const Reading* dome = find_reading(readings, "face", Receptor::kDome, Facing::kCamera);
    return dome == nullptr ? 0.0 : dome->exposure_lxs;
}

void read_eyes_and_face(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit,
                        MeterReport& report) {
    if (stage.eyes().empty()) return;
    report.eyes = read_eyes(stage, lit.layers, brighter_cheek(report.readings), face_dome(report.readings));
    report.catchlights = find_catchlights(studio, stage, lit, *report.eyes);
    name_faults(*report.eyes, *report.catchlights);
    report.face = read_face(studio, stage, nobody, lit, *report.catchlights);
    report.pupil = lit.pupil;
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
    const std::vector<MeterPoint> points = meter_points(studio);
    report.readings.resize(points.size());
    tbb::parallel_for(std::size_t{0}, points.size(), [&](std::size_t i) {
        report.readings[i] = read_point(points[i], points[i].free_of_sitter ? nobody : stage, lit.layers, exposure);
    });
    report.ratio = lighting_ratio(report.readings);
    report.ambient_lxs = setup.room.ambient_lx * exposure.shutter_s;
    report.ambient_stops_from_camera =
        std::log2(report.ambient_lxs / exposure_of_f_number(exposure.aperture, exposure.iso, kIncidentFlat));
    if (setup.room.size_m) report.room_size_m = setup.room.size_m;
    // Side by side: none of them needs another's numbers.
    tbb::parallel_invoke([&] { read_eyes_and_face(studio, stage, nobody, lit, report); },
                         [&] {
                             if (!setup.backdrop) return;
                             report.backdrop = read_backdrop(studio, stage, nobody, lit, report.readings);
                         },
                         [&] { report.outline = read_outline(studio, stage, lit, report.readings); },
                         [&] { report.warnings = find_warnings(studio, stage, nobody, lit); });
    return report;
}

}  // namespace understudy
