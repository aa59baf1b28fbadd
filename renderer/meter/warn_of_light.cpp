#include <algorithm>
#include <cmath>
#include <map>

#include "film/exposure.h"
#include "meter/sitters_shadow.h"
#include "meter/warnings.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr double kPercent = 100.0;
constexpr int kGrid = 24;

// ---- cut off from the face ----------------------------------------------------------------------------------------

// Who stands in the way, but for cloths that light goes through.
std::optional<std::string> solid_blocker(const Stage& stage, Ray ray) {
    for (;;) {
        const auto hit = stage.intersect(ray);
        if (!hit) return std::nullopt;
        if (hit->surface == nullptr || !transmits(*hit->surface)) return stage.blocker(ray);
        ray.origin = hit->start_toward(ray.direction);
        ray.far -= hit->distance;
    }
}

struct Cut {
    int facing = 0;  // points of the front that turn their bright side to the face
    int hidden = 0;
    std::map<std::string, int> by;
};

Cut cut_from(const Emitter& emitter, const std::string& own_name, const Vec3& face, const Stage& nobody) {
    Cut cut;
    for (int i = 0; i < kGrid * kGrid; ++i) {
        const int row = i / kGrid;
        const Vec2 square((static_cast<float>(i % kGrid) + 0.5F) / kGrid, (static_cast<float>(row) + 0.5F) / kGrid);
        const EmitterPoint point = emitter.point_at(square, face);
        if (glm::dot(point.normal, face - point.position) <= 0.0F) continue;
        ++cut.facing;
        const auto name = solid_blocker(nobody, shadow_ray(face, point.position));
        if (!name || *name == own_name) continue;
        ++cut.hidden;
        ++cut.by[*name];
    }
    return cut;
}

// A light that is turned elsewhere may be flagged from the face on purpose.
bool is_meant_for_sitter(const Aim& aim) {
    return aim.target == Aim::Target::kFace || aim.target == Aim::Target::kEyes || aim.target == Aim::Target::kChest ||
           aim.target == Aim::Target::kCrown;
}

std::vector<Warning> lights_cut(const Studio& studio, const Stage& nobody) {
    std::vector<Warning> warnings;
    for (std::size_t i = 0; i < nobody.emitters().size(); ++i) {
        const LightSettings& light = studio.setup.lights[i];
        if (!is_meant_for_sitter(light.placement.aim)) continue;
        const Cut cut = cut_from(nobody.emitters()[i], light.name, Vec3(studio.face), nobody);
        const bool is_key = i == 0;
        if (!is_key && 2 * cut.hidden < cut.facing) continue;
        for (const auto& [name, count] : cut.by) {
            warnings.push_back({is_key ? WarningKind::kKeyCut : WarningKind::kLightCut,
                                light.name,
                                kPercent * count / cut.facing,
                                {},
                                {},
                                name});
        }
    }
    return warnings;
}

// ---- the room's own light -----------------------------------------------------------------------------------------

// Five stops under, the room adds log2(1 + 2^-5) = 0.044 stop: under a meter's tenth. Common practice asks for as much.
constexpr double kQuietAmbient = -5.0;

std::vector<Warning> too_much_ambient(const Studio& studio) {
    const ExposureSettings& exposure = studio.setup.camera.exposure;
    const double ambient = studio.setup.room.ambient_lx * exposure.shutter_s;
    const double stops = std::log2(ambient / exposure_of_f_number(exposure.aperture, exposure.iso, kIncidentFlat));
    if (!(stops > kQuietAmbient)) return {};
    return {{WarningKind::kAmbient, "ambient", stops, std::log2(1.0 + std::exp2(stops)), {}, {}}};
}

std::vector<Warning> shadows_in_frame(const Studio& studio, const Stage& stage, const Stage& nobody,
                                      const LitStudio& lit) {
    std::vector<Warning> warnings;
    for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
        const auto shadow = sitters_shadow(studio, stage, nobody, lit, i);
        if (!shadow || shadow->share < kVisibleShadow) continue;
        warnings.push_back(
            {WarningKind::kShadow, studio.setup.lights[i].name, kPercent * shadow->share, {}, shadow->box, "backdrop"});
    }
    return warnings;
}

}  // namespace

std::vector<Warning> warn_of_light(const Studio& studio, const Stage& stage, const Stage& nobody,
                                   const LitStudio& lit) {
    std::vector<Warning> warnings = lights_cut(studio, nobody);
    for (const Warning& warning : shadows_in_frame(studio, stage, nobody, lit)) warnings.push_back(warning);
    for (const Warning& warning : too_much_ambient(studio)) warnings.push_back(warning);
    return warnings;
}

}  // namespace understudy
