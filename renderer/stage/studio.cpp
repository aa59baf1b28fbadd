#include "stage/studio.h"

#include <algorithm>

#include <fmt/format.h>
#include <glm/geometric.hpp>

#include "sitter/eye.h"
#include "sitter/hair/kept_strands.h"
#include "sitter/head.h"
#include "stage/camera.h"
#include "stage/placing.h"

namespace understudy {

namespace {

void append(Problems& all, const Problems& more) { all.insert(all.end(), more.begin(), more.end()); }

std::vector<BuiltModifier> build_all(const std::vector<LightSettings>& lights, const std::filesystem::path& cache,
                                     Problems& problems) {
    std::vector<BuiltModifier> modifiers;
    for (const LightSettings& light : lights) {
        const auto built = build_modifier(light.modifier, cache);
        if (built) {
            modifiers.push_back(*built);
        } else {
            append(problems, built.problems());
        }
    }
    return modifiers;
}

std::vector<std::optional<BuiltModifier>> build_calibrations(const std::vector<FlashHead>& heads,
                                                             const std::filesystem::path& cache, Problems& problems) {
    std::vector<std::optional<BuiltModifier>> modifiers;
    for (const FlashHead& head : heads) {
        modifiers.emplace_back();
        if (!head.calibration) continue;
        const auto built = build_modifier(head.calibration->modifier, cache);
        if (built) {
            modifiers.back() = *built;
        } else {
            append(problems, built.problems());
        }
    }
    return modifiers;
}

// What photometric files give by themselves.
void set_fluxes_of_files(std::vector<LightSettings>& lights, const std::vector<BuiltModifier>& modifiers) {
    for (std::size_t i = 0; i < lights.size(); ++i) {
        if (!std::holds_alternative<PowerOfFile>(lights[i].power)) continue;
        lights[i].power = PowerFromFlux{modifiers[i].web->lumens()};
    }
}

double focus_distance(const Studio& studio, const Sitter& sitter) {
    const auto along = [&](const Double3& point) { return glm::dot(point - studio.camera.centre, studio.camera.axis); };
    const Focus& focus = studio.setup.camera.focus;
    switch (focus.on) {
        case Focus::On::kDistance:
            return focus.distance_m;
        case Focus::On::kBackdrop:
            return along(studio.points.backdrop);
        case Focus::On::kNearEye:
            if (sitter.eyes) {
                const auto& eyes = *sitter.eyes;
                return std::min(along(iris_centre(eyes[0])), along(iris_centre(eyes[1])));
            }
            break;
        case Focus::On::kFace:
            break;
    }
    return along(studio.face);
}

// How wide hairs are drawn at the least: half a pixel has no more grain in it than a whole one and twice the fineness.
constexpr double kStrandInPixels = 0.5;

// Metres a pixel of the picture, at the face.
double pixel_at_face(const Studio& studio) {
    const Camera camera(studio);
    constexpr double kAside = 0.01;
    const Vec2 here = camera.pixel_of(studio.points.face);
    const Vec2 aside = camera.pixel_of(studio.points.face + kAside * camera.right());
    return kAside / static_cast<double>(glm::distance(here, aside));
}

// Everything but the sitter.
Expected<Studio> furnished(const Setup& setup, const Library& library, const HeadPointer& head) {
    Studio studio;
    studio.setup = setup;
    const double eye_height = setup.sitter.eye_height_m;
    studio.points.face = face_point(*head, eye_height);
    studio.face = stepped_face(*head, setup.sitter);
    studio.points.chest = chest_point(*head, eye_height);
    studio.points.crown = crown_point(*head, eye_height);
    const double behind = setup.backdrop ? setup.backdrop->distance_m : BackdropSettings{}.distance_m;
    studio.points.backdrop = Double3(0.0, eye_height, -behind);

    Problems problems;
    const auto camera = place_front(setup.camera.placement, studio.points);
    if (!camera) return camera.problems();
    studio.camera = *camera;
    studio.points.camera = camera->centre;
    problems = place_things(studio);
    studio.modifier_cache = library.cache;
    studio.modifiers = build_all(setup.lights, library.cache, problems);
    studio.calibrations = build_calibrations(setup.flashes, library.cache, problems);
    if (!problems.empty()) return problems;
    set_fluxes_of_files(studio.setup.lights, studio.modifiers);
    return studio;
}

Expected<Done> focus_on(Studio& studio, const Sitter& sitter) {
    studio.focus_m = focus_distance(studio, sitter);
    const CameraSettings& camera = studio.setup.camera;
    if (studio.focus_m > 2.0 * camera.focal_length_m) return Done{};
    return Problem{Blame::kWrongInput,
                   fmt::format("{}: [camera] focus is {:.3f} m from the lens; expected more than twice the focal "
                               "length, {:.3f} m",
                               studio.setup.file.string(), studio.focus_m, 2.0 * camera.focal_length_m)};
}

}  // namespace

Expected<Studio> place_studio(const Setup& setup, const Library& library, Growing growing) {
    const auto head = load_head(setup.sitter, library);
    if (!head) return head.problems();
    return place_studio(setup, library, *head, growing);
}

Expected<Studio> place_studio_round(const Sitter& sitter, const Setup& setup, const Library& library,
                                    const HeadPointer& head) {
    auto studio = furnished(setup, library, head);
    if (!studio) return studio;
    if (const auto focused = focus_on(*studio, sitter); !focused) return focused.problems();
    return studio;
}

Expected<Studio> place_studio(const Setup& setup, const Library& library, const HeadPointer& head, Growing growing) {
    auto placed = furnished(setup, library, head);
    if (!placed) return placed;
    Studio& studio = *placed;
    studio.sitter = pose_head(*head, setup.sitter, gaze_target(studio));
    if (const auto focused = focus_on(studio, studio.sitter); !focused) return focused.problems();
    if (growing == Growing::kNothing) return placed;
    const bool widened = setup.picture.strands == StrandWidth::kWidened;
    const StrandDetail detail{widened ? kStrandInPixels * pixel_at_face(studio) : 0.0};
    studio.sitter.strands = kept_strands(studio.sitter, detail, library.kept());
    if (studio.sitter.landmarks) {
        studio.sitter.landmarks = clear_of(studio.sitter.strands, *studio.sitter.landmarks);
    }
    return placed;
}

}  // namespace understudy
