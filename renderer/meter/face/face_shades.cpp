#include "meter/face/face_shades.h"

#include <tbb/parallel_for.h>

#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr float kHalf = 0.5F;

Shade shade_at(const Stage& stage, const FaceMeasures& face, const FacePoint& point, const Vec3& light) {
    if (glm::dot(point.normal, light - point.position) <= 0.0F) return Shade::kTurnedAway;
    const Ray way = shadow_ray(point.leave_from, light);
    if (stage.passes(way) > kHalf) return Shade::kLit;
    const auto hit = stage.intersect(way);
    if (!hit || hit->thing != Thing::kSitter) return Shade::kOther;
    if (face.is_nose(face.frame.place(Double3(hit->position)))) return Shade::kNose;
    // Skin that meets itself close by is turned away, whatever its smooth normal says.
    constexpr float kClose = 0.004F;
    return hit->distance < kClose ? Shade::kTurnedAway : Shade::kOther;
}

}  // namespace

std::vector<Shade> face_shades(const Stage& stage, const FaceView& view, const Vec3& light) {
    std::vector<Shade> shades(view.points().size());
    tbb::parallel_for(std::size_t{0}, shades.size(),
                      [&](std::size_t i) { shades[i] = shade_at(stage, view.face(), view.points()[i], light); });
    return shades;
}

}  // namespace understudy
