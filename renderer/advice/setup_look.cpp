#include "advice/setup_look.h"

#include "meter/face/face_view.h"
#include "meter/face/light_pattern.h"
#include "meter/face/nose_edge.h"

namespace understudy {

namespace {

constexpr double kStep = 0.003;  // metres between places of the face

struct KeyOnFace {
    FaceView view;
    std::vector<Shade> shades;
};

std::optional<KeyOnFace> key_on_face(const TrialRoom& room) {
    const auto& mesh = room.stage().sitter_mesh();
    const auto face = mesh ? measure_face(room.studio().sitter, *mesh) : std::nullopt;
    if (!face) return std::nullopt;
    const FaceView view(room.stage(), *face, room.studio().camera.centre, kStep);
    const Emitter& key = room.stage().emitters().front();
    return KeyOnFace{view, face_shades(room.stage(), view, key.centre())};
}

std::optional<LightPattern> pattern_on(const KeyOnFace& face, const Emitter& key) {
    const auto reading = read_pattern(face.view, face.shades, key.centre());
    return reading ? std::optional(reading->pattern) : std::nullopt;
}

}  // namespace

SetupLook look_of(const TrialRoom& room) {
    SetupLook look;
    look.eyes = look_at_eyes(room);
    const auto face = key_on_face(room);
    if (!face) return look;
    const Emitter& key = room.stage().emitters().front();
    look.pattern = pattern_on(*face, key);
    look.nose_edge_m = nose_edge(room.stage(), face->view, face->shades, key);
    return look;
}

std::optional<LightPattern> pattern_in(const TrialRoom& room) {
    const auto face = key_on_face(room);
    return face ? pattern_on(*face, room.stage().emitters().front()) : std::nullopt;
}

}  // namespace understudy
