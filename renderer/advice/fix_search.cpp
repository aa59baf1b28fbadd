#include "advice/fix_search.h"

#include <cmath>

#include "meter/face/face_view.h"
#include "meter/face/light_pattern.h"
#include "meter/face/nose_edge.h"

namespace understudy {

namespace {

constexpr double kStep = 0.003;  // metres between places of the face
constexpr int kMostNudges = 4;

bool lights_both(TrialRoom& room, const Change& change, double size) {
    return change(size) && look_at_eyes(room, kForSearch).both_alive();
}

}  // namespace

SetupLook look_of(const TrialRoom& room) {
    SetupLook look;
    look.eyes = look_at_eyes(room, kForReport);
    const auto& mesh = room.stage().sitter_mesh();
    const auto face = mesh ? measure_face(room.studio().sitter, *mesh) : std::nullopt;
    if (!face) return look;
    const FaceView view(room.stage(), *face, room.studio().camera.centre, kStep);
    const Emitter& key = room.stage().emitters().front();
    const std::vector<Shade> shades = face_shades(room.stage(), view, key.centre());
    if (const auto pattern = read_pattern(view, shades, key.centre())) look.pattern = pattern->pattern;
    look.nose_edge_m = nose_edge(room.stage(), view, shades, key);
    return look;
}

std::optional<Found> least_change(TrialRoom& room, const Change& change, const std::vector<double>& sizes,
                                  double fine) {
    double before = 0.0;
    for (const double size : sizes) {
        if (!lights_both(room, change, size)) {
            before = size;
            continue;
        }
        double enough = size;
        while (std::abs(enough - before) > fine) {
            const double middle = 0.5 * (enough + before);
            (lights_both(room, change, middle) ? enough : before) = middle;
        }
        // Rounded up to what can be said, and so also clear of the search's own noise.
        enough = std::copysign(fine * std::ceil(std::abs(enough) / fine - 1e-9), size);
        for (int nudge = 0; nudge <= kMostNudges; ++nudge) {
            if (change(enough)) {
                const SetupLook look = look_of(room);
                if (look.eyes.both_alive()) return Found{enough, look};
            }
            enough += std::copysign(fine, size);
        }
        before = size;
    }
    return std::nullopt;
}

}  // namespace understudy
