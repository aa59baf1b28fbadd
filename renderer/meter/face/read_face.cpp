#include "meter/face/read_face.h"

#include "meter/face/fill_shadow.h"
#include "meter/face/forehead_highlight.h"
#include "meter/face/key_fall_off.h"
#include "meter/face/light_pattern.h"
#include "meter/face/next_pattern.h"
#include "meter/face/nose_edge.h"

namespace understudy {

namespace {

constexpr double kStep = 0.002;  // metres between places of the face

// Between half past four and half past seven.
constexpr double kLowFrom = 135.0;
constexpr double kLowTo = 225.0;

std::string clamshell_with(const PatternReading& pattern, const std::string& key,
                           const std::vector<Catchlight>& catchlights) {
    if (pattern.pattern != LightPattern::kButterfly && pattern.pattern != LightPattern::kFlat) return "";
    for (const Catchlight& image : catchlights) {
        const bool low = image.clock_deg > kLowFrom && image.clock_deg < kLowTo;
        if (image.light != key && low && image.visible >= kLeastShown) return image.light;
    }
    return "";
}

}  // namespace

std::optional<FaceReading> read_face(const Studio& studio, const Stage& stage, const Stage& nobody,
                                     const LitStudio& lit, const std::vector<Catchlight>& catchlights) {
    if (!stage.sitter_mesh()) return std::nullopt;
    const auto measures = measure_face(studio.sitter, *stage.sitter_mesh());
    if (!measures) return std::nullopt;
    const FaceView view(stage, *measures, studio.camera.centre, kStep);
    const Emitter& key = stage.emitters().front();
    const std::vector<Shade> shades = face_shades(stage, view, key.centre());
    FaceReading face;
    face.pattern = read_pattern(view, shades, key.centre());
    if (face.pattern) {
        face.next = next_patterns(stage, view, Double3(key.centre()), face.pattern->pattern);
        face.clamshell_with = clamshell_with(*face.pattern, studio.setup.lights.front().name, catchlights);
    }
    face.nose_edge_m = nose_edge(stage, view, shades, key);
    face.highlight = forehead_highlight(stage, view, key, exposure_weights(lit.layers).front());
    face.fill_shadows = fill_shadows(studio, stage, nobody, view, lit);
    face.fall_off = key_fall_off(studio, nobody, lit);
    return face;
}

}  // namespace understudy
