#include "meter/face/forehead_highlight.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <tbb/parallel_for.h>

#include "scatter/skin_surface.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr int kAcross = 8;    // places of the front, squared
constexpr int kWaveSets = 4;  // of four wavelengths: one in each band

struct Sent {
    double sheen = 0.0;
    double skin = 0.0;
};

// Luminance toward the camera for the key's light, in a unit of its own.
class SkinPlace {
  public:
    SkinPlace(const FacePoint& point, const Bands& weights)
        : around_(Frame::around(point.normal)), out_(around_.to_local(point.toward_camera)), spot_(point.spot) {
        coat_ = approach_of_coat(spot_, out_);
        for (int i = 0; i < kWaveSets; ++i) {
            const Waves waves = sample_waves((static_cast<float>(i) + 0.5F) / kWaveSets);
            const Approach both = approach(spot_, out_, waves);
            Vec4 weight(0.0F);
            for (int w = 0; w < 4; ++w) weight[w] = weights[waves.band[static_cast<std::size_t>(w)]];
            approaches_.push_back({both, weight});
        }
    }

    Sent sent(const Vec3& toward_light) const {
        const Vec3 in = around_.to_local(toward_light);
        if (in.z <= 0.0F) return {};
        const Light4 coat = scatter_value(SkinSurface(spot_), coat_, in).value;
        Sent sent;
        for (const auto& [from, weight] : approaches_) {
            const Light4 all = scatter_value(SkinSurface(spot_), from, in).value;
            for (int w = 0; w < 4; ++w) {
                sent.sheen += static_cast<double>(weight[w] * coat[w] * in.z);
                sent.skin += static_cast<double>(weight[w] * (all[w] - coat[w]) * in.z);
            }
        }
        return sent;
    }

  private:
    struct AtWaves {
        Approach from;
        Vec4 weight;
    };
    Frame around_;
    Vec3 out_;
    SkinSpot spot_;
    Approach coat_;
    std::vector<AtWaves> approaches_;
};

Sent sent_from(const Stage& stage, const FacePoint& point, const Emitter& key, const Bands& weights) {
    const SkinPlace place(point, weights);
    Sent sum;
    for (int i = 0; i < kAcross * kAcross; ++i) {
        const int row = i / kAcross;
        const Vec2 square((static_cast<float>(i % kAcross) + 0.5F) / kAcross,
                          (static_cast<float>(row) + 0.5F) / kAcross);
        const EmitterPoint there = key.point_at(square, point.position);
        const Ray way = shadow_ray(point.leave_from, there.position);
        const float leaving = -glm::dot(there.normal, way.direction);
        if (leaving <= 0.0F || glm::dot(point.normal, way.direction) <= 0.0F) continue;
        const float away = glm::distance(there.position, point.position);
        const auto light = static_cast<double>(stage.passes(way) * key.radiance(there.position, -way.direction) *
                                               there.area * leaving / (away * away));
        if (light <= 0.0) continue;
        const Sent sent = place.sent(way.direction);
        sum.sheen += light * sent.sheen;
        sum.skin += light * sent.skin;
    }
    return sum;
}

}  // namespace

std::optional<ForeheadHighlight> forehead_highlight(const Stage& stage, const FaceView& view, const Emitter& key,
                                                    const Bands& weights) {
    std::vector<Sent> sent(view.points().size());
    tbb::parallel_for(std::size_t{0}, sent.size(), [&](std::size_t i) {
        const FacePoint& point = view.points()[i];
        if (point.zone == Zone::kForehead) sent[i] = sent_from(stage, point, key, weights);
    });
    const auto strongest =
        std::max_element(sent.begin(), sent.end(), [](const Sent& a, const Sent& b) { return a.sheen < b.sheen; });
    if (strongest == sent.end() || strongest->sheen <= 0.0) return std::nullopt;
    ForeheadHighlight highlight;
    highlight.peak_stops = std::log2((strongest->skin + strongest->sheen) / strongest->skin);
    for (const Sent& place : sent) {
        if (place.sheen >= 0.5 * strongest->sheen) highlight.area_m2 += view.point_area_m2();
    }
    return highlight;
}

}  // namespace understudy
