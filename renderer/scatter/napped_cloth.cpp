#include "scatter/napped_cloth.h"

#include <cassert>
#include <cmath>

#include "scatter/table_store.h"

namespace understudy {
namespace {

// 1/sr, without the cosine.
float sheen_lobe(const Vec3& wo, const Vec3& wi, float nap, float spread) {
    const Vec3 h = glm::normalize(wo + wi);
    const float sine = std::sqrt(std::max(0.0F, 1.0F - h.z * h.z));
    const float power = 1.0F / spread;
    const float distribution = (2.0F + power) * std::pow(sine, power) / (2.0F * kPi);
    return nap * distribution / (4.0F * (wo.z + wi.z - wo.z * wi.z));
}

DirectionalAlbedo sheen_of(float nap, float spread) {
    static TableStore store;
    return store.of({nap, spread}, [&] {
        return DirectionalAlbedo::of_lobe(
            [nap, spread](const Vec3& wo, const Vec3& wi) { return sheen_lobe(wo, wi, nap, spread); });
    });
}

}  // namespace

NappedCloth::NappedCloth(const Spectrum& dye, float nap, float spread)
    : dye_(dye), nap_(nap), spread_(spread), sheen_(sheen_of(nap, spread)) {
    assert(nap >= 0.0F && nap <= 1.0F && spread >= 0.2F && spread <= 1.0F);
    const float ground = mean_over_waves(dye);
    // Where the nap shines brightest it needs more samples than its mean would get: half as many again, chosen.
    const float sheen = 1.5F * sheen_.mean();
    sheen_share_ = sheen > 0.0F ? sheen / (sheen + ground) : 0.0F;
}

ScatterValue scatter_value(const NappedCloth& cloth, const Approach& from, const Vec3& wi) {
    if (!above_horizon(from.wo) || !above_horizon(wi)) return {};
    const float ground =
        (1.0F - from.reflected) * (1.0F - cloth.sheen().at(wi.z)) / (kPi * (1.0F - cloth.sheen().mean()));
    return {sheen_lobe(from.wo, wi, cloth.nap(), cloth.spread()) + from.colour * ground,
            cloth.sheen_share() / (2.0F * kPi) + (1.0F - cloth.sheen_share()) * wi.z / kPi};
}

std::optional<ScatterSample> sample_scatter(const NappedCloth& cloth, const Approach& from, const Vec3& u) {
    if (!above_horizon(from.wo)) return std::nullopt;
    Vec3 wi;
    if (u.x < cloth.sheen_share()) {
        // Even over the hemisphere: the lobe is broad, and brightest near the horizon.
        const float sine = std::sqrt(std::max(0.0F, 1.0F - u.y * u.y));
        wi = {sine * std::cos(2.0F * kPi * u.z), sine * std::sin(2.0F * kPi * u.z), u.y};
    } else {
        wi = sample_cosine(u.y, u.z);
    }
    if (!above_horizon(wi)) return std::nullopt;
    const ScatterValue scattered = scatter_value(cloth, from, wi);
    return ScatterSample{wi, scattered.value * (wi.z / scattered.density), scattered.density, false};
}

}  // namespace understudy
