#include "meter/face/fill_shadow.h"

#include <algorithm>
#include <cmath>

#include "meter/face/light_pattern.h"
#include "meter/integrate.h"

namespace understudy {

namespace {

constexpr std::size_t kPlaces = 5;
constexpr double kRelative = 0.02;

// In stops, at one place of the skin.
double darker_by(const Stage& stage, const Stage& nobody, const FacePoint& point, const std::vector<Bands>& weights,
                 std::size_t light) {
    const Gathering place{point.leave_from, point.normal};
    const double all = gather_light(stage, place, weights, {kRelative, 0.0}).total.mean;
    std::vector<Bands> only(weights.size(), Bands{});
    only[light] = weights[light];
    const double open = gather_light(nobody, place, only, {kRelative, kRelative * all}).total.mean;
    const double got = gather_light(stage, place, only, {kRelative, kRelative * all}).total.mean;
    return all > 0.0 ? std::log2((all + std::max(0.0, open - got)) / all) : 0.0;
}

}  // namespace

std::vector<FillShadow> fill_shadows(const Studio& studio, const Stage& stage, const Stage& nobody,
                                     const FaceView& view, const LitStudio& lit) {
    const std::vector<Bands> weights = exposure_weights(lit.layers);
    std::vector<FillShadow> shadows;
    for (std::size_t light = 1; light < studio.setup.lights.size(); ++light) {
        const std::vector<Shade> shades = face_shades(stage, view, stage.emitters()[light].centre());
        const std::vector<std::size_t> places = nose_shadow_points(view, shades);
        if (static_cast<double>(places.size()) * view.point_area_m2() < kLeastNoseShadowM2) continue;
        FillShadow shadow{studio.setup.lights[light].name, 0.0, false};
        for (std::size_t k = 0; k < kPlaces; ++k) {
            const FacePoint& point = view.points()[places[(2 * k + 1) * places.size() / (2 * kPlaces)]];
            shadow.stops = std::max(shadow.stops, darker_by(stage, nobody, point, weights, light));
        }
        shadow.visible = shadow.stops >= kShowingStops;
        shadows.push_back(shadow);
    }
    return shadows;
}

}  // namespace understudy
