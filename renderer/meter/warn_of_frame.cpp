#include <algorithm>
#include <cmath>
#include <map>

#include "film/exposure.h"
#include "meter/warnings.h"
#include "stage/camera.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr double kPercent = 100.0;

// ---- between the lens and the face --------------------------------------------------------------------------------

// The face as a disc toward the lens, as large as the sitter's stand-in, the ball.
constexpr double kFaceRadius = 0.1;
constexpr int kDiscPoints = 400;

std::vector<Warning> blocked_lens(const Studio& studio, const Stage& nobody) {
    const Camera camera(studio);
    std::map<std::string, int> counts;
    const Double3 face = studio.face;
    const Frame frame = Frame::around(Vec3(glm::normalize(camera.position() - face)));
    for (int i = 0; i < kDiscPoints; ++i) {
        // Vogel's spiral: even in area.
        const double radius = kFaceRadius * std::sqrt((i + 0.5) / kDiscPoints);
        const double angle = i * kPiDouble * (3.0 - std::sqrt(5.0));
        const Double3 point =
            face + radius * (std::cos(angle) * Double3(frame.tangent) + std::sin(angle) * Double3(frame.bitangent));
        if (const auto name = nobody.blocker(shadow_ray(Vec3(camera.position()), Vec3(point)))) ++counts[*name];
    }
    std::vector<Warning> warnings;
    warnings.reserve(counts.size());
    for (const auto& [name, count] : counts) {
        warnings.push_back({WarningKind::kLensBlocked, name, kPercent * count / kDiscPoints, {}, {}, {}});
    }
    return warnings;
}

// ---- in the frame -------------------------------------------------------------------------------------------------

// The frame is looked at by so many rays at most.
constexpr double kMostRays = 600000.0;

struct Seen {
    std::size_t count = 0;
    PixelBox box{1e9, 1e9, -1e9, -1e9};
};

std::vector<Warning> things_in_frame(const Studio& studio, const Stage& stage) {
    const PictureSettings& picture = studio.setup.picture;
    const Camera camera(studio);
    const double pixels = static_cast<double>(picture.width) * picture.height;
    const int step = static_cast<int>(std::ceil(std::sqrt(std::max(1.0, pixels / kMostRays))));
    std::map<std::string, Seen> seen;
    std::size_t all = 0;
    for (int y = 0; y < picture.height; y += step) {
        for (int x = 0; x < picture.width; x += step) {
            ++all;
            const Vec2 film = Vec2(x, y) + 0.5F * static_cast<float>(step);
            const auto hit = stage.intersect(camera.ray(film, kLensMiddle));
            if (!hit || (hit->thing != Thing::kEmitter && hit->thing != Thing::kPanel)) continue;
            const bool light = hit->thing == Thing::kEmitter;
            Seen& thing = seen[light ? studio.setup.lights[hit->index].name : studio.setup.panels[hit->index].name];
            ++thing.count;
            thing.box.left = std::min<double>(thing.box.left, x);
            thing.box.top = std::min<double>(thing.box.top, y);
            thing.box.right = std::max<double>(thing.box.right, std::min(x + step, picture.width));
            thing.box.bottom = std::max<double>(thing.box.bottom, std::min(y + step, picture.height));
        }
    }
    std::vector<Warning> warnings;
    for (const auto& [name, thing] : seen) {
        const double share = static_cast<double>(thing.count) / static_cast<double>(all);
        warnings.push_back({WarningKind::kInPicture, name, kPercent * share, {}, thing.box, {}});
    }
    return warnings;
}

// ---- into the lens ------------------------------------------------------------------------------------------------

constexpr int kGrid = 16;
// A lens stands in a light's beam while the light is at least half as strong toward it as along its axis: what lamp
// data sheets call the beam angle.
constexpr double kBeamEdge = 0.5;

struct TowardLens {
    double strength = 0.0;     // luminous intensity for 1 lm, cd/lm
    double illuminance = 0.0;  // on the lens from the parts that it sees, square to its axis, lx/lm
};

TowardLens toward_lens(const Emitter& emitter, const Camera& camera, const Vec3& place, const Stage* blocking) {
    TowardLens sum;
    for (int i = 0; i < kGrid * kGrid; ++i) {
        const int row = i / kGrid;
        const Vec2 square((static_cast<float>(i % kGrid) + 0.5F) / kGrid, (static_cast<float>(row) + 0.5F) / kGrid);
        const EmitterPoint point = emitter.point_at(square, place);
        const Vec3 away = place - point.position;
        const float distance = glm::length(away);
        const Vec3 direction = away / distance;
        const float cosine = glm::dot(direction, point.normal);
        if (!(cosine > 0.0F)) continue;
        const float strength =
            emitter.radiance(point.position, direction) * cosine * point.area / static_cast<float>(kGrid * kGrid);
        sum.strength += static_cast<double>(strength);
        const double on_lens = -glm::dot(Double3(direction), camera.axis());
        if (blocking == nullptr || on_lens <= 0.0) continue;
        const float passed = blocking->passes(shadow_ray(place, point.position));
        sum.illuminance += static_cast<double>(passed * strength) * on_lens / static_cast<double>(distance * distance);
    }
    return sum;
}

std::vector<Warning> lights_into_lens(const Studio& studio, const Stage& stage, const LitStudio& lit) {
    const Camera camera(studio);
    const double key_lxs =
        exposure_of_f_number(lit.powers.front().f_number, studio.setup.camera.exposure.iso, kIncidentFlat);
    std::vector<Warning> warnings;
    for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
        const Emitter& emitter = stage.emitters()[i];
        const Vec3 lens(camera.position());
        const Vec3 away = lens - emitter.centre();
        const TowardLens here = toward_lens(emitter, camera, lens, &stage);
        const TowardLens straight =
            toward_lens(emitter, camera, emitter.centre() + glm::length(away) * emitter.axis(), nullptr);
        if (!(here.illuminance > 0.0) || here.strength < kBeamEdge * straight.strength) continue;
        const double cosine = glm::dot(Double3(glm::normalize(away)), Double3(emitter.axis()));
        const double stops = std::log2(here.illuminance * lit.layers[i].exposure_power / key_lxs);
        warnings.push_back({WarningKind::kIntoLens,
                            studio.setup.lights[i].name,
                            degrees(std::acos(std::clamp(cosine, -1.0, 1.0))),
                            stops,
                            {},
                            {}});
    }
    return warnings;
}

std::vector<Warning> eyes_turned_far(const Sitter& sitter) {
    if (sitter.gaze_asked_deg <= kFarthestGazeDeg) return {};
    return {{WarningKind::kGaze, "gaze", sitter.gaze_asked_deg, {}, {}, {}}};
}

}  // namespace

std::vector<Warning> warn_of_frame(const Studio& studio, const Stage& stage, const Stage& nobody,
                                   const LitStudio& lit) {
    std::vector<Warning> warnings = blocked_lens(studio, nobody);
    for (const Warning& warning : things_in_frame(studio, stage)) warnings.push_back(warning);
    for (const Warning& warning : lights_into_lens(studio, stage, lit)) warnings.push_back(warning);
    for (const Warning& warning : eyes_turned_far(studio.sitter)) warnings.push_back(warning);
    return warnings;
}

}  // namespace understudy
