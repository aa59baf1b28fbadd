#include "claims/claim_reading.h"

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
    std::optional<double> to_lip_in_front() const {
        constexpr double kStep = 0.001;
        if (!stage_.sitter_mesh()) return std::nullopt;
        const auto measures = measure_face(studio_.sitter, *stage_.sitter_mesh());
        if (!measures) return std::nullopt;
        const Double3 from = studio_.lights.front().centre - studio_.face;
        const Double3 swung = studio_.face + Double3(0.0, from.y, std::hypot(from.x, from.z));
        const auto pattern =
            read_pattern(stage_, FaceView(stage_, *measures, studio_.camera.centre, kStep), Vec3(swung));
        if (!pattern || !pattern->nose) return std::nullopt;
        return pattern->nose->to_lip;
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
    const Studio& studio_;
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
        reading.to_lip_in_front = reader.to_lip_in_front();
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
