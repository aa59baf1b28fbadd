#include "meter/sitters_shadow.h"

#include <algorithm>
#include <cmath>

#include "meter/integrate.h"
#include "stage/camera.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr std::size_t kSitterPoints = 400;
constexpr std::size_t kDepths = 5;  // places of the shadow that are measured
constexpr double kRelative = 0.01;
constexpr float kLevel = 0.99F;  // a floor's normal

// Points over the sitter's skin, or over the ball.
std::vector<Vec3> sitters_points(const Studio& studio) {
    std::vector<Vec3> points;
    const auto& mesh = studio.sitter.mesh.positions;
    const std::size_t step = std::max<std::size_t>(1, mesh.size() / kSitterPoints);
    for (std::size_t i = 0; i < mesh.size(); i += step) points.push_back(mesh[i]);
    if (studio.sitter.kind != Sitter::Kind::kBall) return points;
    for (std::size_t i = 0; i < kSitterPoints; ++i) {
        // Vogel's spiral on the sphere: even in area.
        const double height = 1.0 - 2.0 * (static_cast<double>(i) + 0.5) / kSitterPoints;
        const double out = std::sqrt(1.0 - height * height);
        const double angle = static_cast<double>(i) * kPiDouble * (3.0 - std::sqrt(5.0));
        const Double3 away(out * std::cos(angle), height, out * std::sin(angle));
        points.emplace_back(studio.face + studio.sitter.ball_radius_m * away);
    }
    return points;
}

struct Place {
    Hit hit;
    Vec2 pixel;
};

class ShadowFinder {
  public:
    ShadowFinder(const Studio& studio, const Stage& stage, const Stage& nobody)
        : studio_(studio), stage_(stage), nobody_(nobody), camera_(studio) {}

    // Where the shadow of a point of the sitter falls, if the picture shows it.
    std::optional<Place> landing(const Vec3& point, const Vec3& light) const {
        const Ray on{point, glm::normalize(point - light)};
        const auto hit = nobody_.intersect(on);
        if (!hit || hit->thing != Thing::kBackdrop || hit->geometric.y > kLevel) return std::nullopt;
        if (glm::dot(Double3(hit->position) - camera_.position(), camera_.axis()) <= 0.0) return std::nullopt;
        const Vec2 pixel = camera_.pixel_of(Double3(hit->position));
        const PictureSettings& picture = studio_.setup.picture;
        const bool inside = pixel.x >= 0.0F && pixel.y >= 0.0F && pixel.x <= static_cast<float>(picture.width) &&
                            pixel.y <= static_cast<float>(picture.height);
        if (!inside || stage_.blocks(shadow_ray(hit->leave_from, Vec3(camera_.position())))) return std::nullopt;
        return Place{*hit, pixel};
    }

    double depth_at(const Hit& hit, const std::vector<Bands>& weights, std::size_t light) const {
        const Gathering place{hit.leave_from, hit.geometric};
        const Gathered open = gather_light(nobody_, place, weights, {kRelative, 0.0});
        const Gathered shaded = gather_light(stage_, place, weights, {kRelative, kRelative * open.total.mean});
        const double lost = std::max(0.0, open.layers[light].mean - shaded.layers[light].mean);
        return open.total.mean > 0.0 ? lost / open.total.mean : 0.0;
    }

  private:
    const Studio& studio_;
    const Stage& stage_;
    const Stage& nobody_;
    Camera camera_;
};

PixelBox box_round(const std::vector<Place>& places) {
    PixelBox box{1e9, 1e9, -1e9, -1e9};
    for (const Place& place : places) {
        const glm::dvec2 pixel(place.pixel);
        box = {std::min(box.left, pixel.x), std::min(box.top, pixel.y), std::max(box.right, pixel.x),
               std::max(box.bottom, pixel.y)};
    }
    return box;
}

}  // namespace

std::optional<SittersShadow> sitters_shadow(const Studio& studio, const Stage& stage, const Stage& nobody,
                                            const LitStudio& lit, std::size_t light) {
    const ShadowFinder finder(studio, stage, nobody);
    const Vec3 from = stage.emitters()[light].centre();
    std::vector<Place> places;
    for (const Vec3& point : sitters_points(studio)) {
        if (const auto place = finder.landing(point, from)) places.push_back(*place);
    }
    if (places.empty()) return std::nullopt;
    const std::vector<Bands> weights = exposure_weights(lit.layers);
    SittersShadow shadow{0.0, box_round(places)};
    const std::size_t step = std::max<std::size_t>(1, places.size() / kDepths);
    for (std::size_t i = step / 2; i < places.size(); i += step) {
        shadow.share = std::max(shadow.share, finder.depth_at(places[i].hit, weights, light));
    }
    return shadow;
}

}  // namespace understudy
