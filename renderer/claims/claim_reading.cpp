#include "claims/claim_reading.h"

#include <algorithm>
#include <cmath>

#include "meter/backdrop_readings.h"
#include "meter/catchlights.h"
#include "meter/eyes.h"
#include "meter/face/light_pattern.h"
#include "meter/face/read_face.h"
#include "meter/meter_points.h"
#include "meter/outline.h"
#include "meter/ratio.h"
#include "meter/read_point.h"
#include "meter/standing_light.h"
#include "meter/warnings.h"

namespace understudy {

namespace {

// Standard errors of a reading: 0.004 stop of the free ones, which are held against formulae, 0.015 on the skin.
constexpr double kOfFree = 0.003;
constexpr double kOfSkin = 0.01;
constexpr double kHalfFace = 0.075;  // metres from the middle of the face to a cheek's outermost part

bool of_the_face(const MeterPoint& point) { return point.name != "backdrop" && point.name != "crown"; }

class CaseReader {
  public:
    CaseReader(const Studio& studio, const Stage& stage, const Stage& nobody, ClaimReading& reading)
        : studio_(studio), stage_(stage), nobody_(nobody), lit_(reading.lit), report_(reading.report) {
        const ExposureSettings& exposure = studio.setup.camera.exposure;
        report_.title = studio.setup.title;
        report_.aperture = exposure.aperture;
        report_.shutter_s = exposure.shutter_s;
        report_.iso = exposure.iso;
        report_.powers = lit_.powers;
        report_.pupil = lit_.pupil;
    }

    void readings(bool skin) {
        for (const MeterPoint& point : meter_points(studio_)) {
            if (!point.free_of_sitter && !(skin && of_the_face(point))) continue;
            const Stage& there = point.free_of_sitter ? nobody_ : stage_;
            const double relative = point.free_of_sitter ? kOfFree : kOfSkin;
            report_.readings.push_back(read_point(point, there, lit_.layers, studio_.setup.camera.exposure, relative));
        }
        report_.ratio = lighting_ratio(report_.readings);
    }
    void eyes() {
        if (stage_.eyes().empty()) return;
        const Reading* dome = find_reading(report_.readings, "face", Receptor::kDome, Facing::kCamera);
        report_.eyes = read_eyes(stage_, lit_.layers, brighter_cheek(report_.readings), dome->exposure_lxs, kOfSkin);
        report_.catchlights = find_catchlights(studio_, stage_, lit_, *report_.eyes);
        name_faults(*report_.eyes, *report_.catchlights);
    }
    void face() {
        report_.face =
            read_face(studio_, stage_, nobody_, lit_, report_.catchlights.value_or(std::vector<Catchlight>{}));
    }
    // The key swung straight before the face at its distance, judged at its own height and at all from level to 75
    // degrees.
    void nose_shadow_in_front(ClaimReading& reading) const {
        constexpr double kStep = 0.0015;
        constexpr double kHighest = 75.0;
        constexpr double kRise = 2.5;
        if (!stage_.sitter_mesh()) return;
        const auto measures = measure_face(studio_.sitter, *stage_.sitter_mesh());
        if (!measures) return;
        const FaceView view(stage_, *measures, studio_.camera.centre, kStep);
        const double up = degrees(std::asin((key_.y - studio_.face.y) / glm::distance(key_, studio_.face)));
        reading.to_lip_in_front = to_lip(view, up);
        for (double raised = 0.0; raised <= kHighest && !reading.lip_at_deg; raised += kRise) {
            if (to_lip(view, raised).value_or(0.0) >= 1.0) reading.lip_at_deg = raised;
        }
    }
    void backdrop() { report_.backdrop = read_backdrop(studio_, stage_, nobody_, lit_, report_.readings); }
    void outline() { report_.outline = read_outline(studio_, stage_, lit_, report_.readings); }
    void glare() { report_.warnings = warn_of_glasses(studio_, stage_, lit_); }

    // A receptor of its own beside the face, turned from the camera by 90°; the head itself is away, as it would only
    // hide what lies on its other side.
    double paper_at_edge(double side) const {
        const Double3 way(side, 0.0, 0.0);
        const MeterPoint edge{"edge", Receptor::kFlat, Facing::kSurface, studio_.face + kHalfFace * way, way, true};
        return read_point(edge, nobody_, lit_.layers, studio_.setup.camera.exposure, kOfSkin).by_backdrop_lxs;
    }

  private:
    // 0 where the nose's shadow stays on the nose; none where the camera sees too little of the cheeks.
    std::optional<double> to_lip(const FaceView& view, double up_deg) const {
        const double away = glm::distance(key_, studio_.face);
        const double up = radians(up_deg);
        const Double3 there = studio_.face + away * Double3(0.0, std::sin(up), std::cos(up));
        const auto pattern = read_pattern(stage_, view, Vec3(there));
        if (!pattern) return std::nullopt;
        return pattern->nose ? std::max(0.0, pattern->nose->to_lip) : 0.0;
    }

    const Studio& studio_;
    Double3 key_{studio_.lights.front().centre};
    const Stage& stage_;
    const Stage& nobody_;
    const LitStudio& lit_;
    MeterReport& report_;
};

}  // namespace

Expected<ClaimReading> read_case(const Setup& setup, const Library& library, const Asked& asked) {
    Setup measured = setup;
    measured.picture.skin = SkinLight::kAtSurface;
    const auto studio = place_studio(measured, library);
    if (!studio) return studio.problems();
    Stage stage(*studio, Stage::With::kSitter);
    const Stage nobody(*studio, Stage::With::kNobody);
    if (Problems problems = stage.problems_with(*studio); !problems.empty()) return problems;
    auto lit = set_powers(*studio, nobody);
    if (!lit) return lit.problems();
    lit->pupil = read_pupil(*studio, nobody, *lit);
    ClaimReading reading;
    reading.setup = setup;
    reading.lit = std::move(*lit);
    const Emitter& key = stage.emitters().front();
    reading.key_distance_m = glm::distance(studio->lights.front().centre, studio->face);
    reading.key_width = lit_width(key, Vec3(studio->face));
    CaseReader reader(*studio, stage, nobody, reading);
    reader.readings(asked.skin || asked.eyes || asked.tones);
    if (asked.eyes) reader.eyes();
    if (asked.face) {
        reader.face();
        reader.nose_shadow_in_front(reading);
    }
    if (asked.backdrop) {
        reader.backdrop();
        reading.paper_on_edges_lxs = {reader.paper_at_edge(-1.0), reader.paper_at_edge(1.0)};
    }
    if (asked.outline) {
        reader.outline();
        if (reading.report.outline) {
            reading.rim_linear =
                rim_line(*studio, stage, reading.lit, reading.report.readings, *reading.report.outline);
        }
    }
    if (asked.glare) reader.glare();
    if (asked.tones) reading.tones = skin_tones(*studio, stage, reading.lit, reading.report.readings);
    return reading;
}

}  // namespace understudy
