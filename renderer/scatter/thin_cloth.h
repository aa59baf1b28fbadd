// A thin cloth that light goes through: what a diffusion frame is covered with.
//
// Of the light that falls on it one share is scattered back, one is scattered out of the other side, both evenly
// (Lambert's law), and one passes between the threads without being turned. The sides are alike. The shares may add up
// to 1 at most. A ray that passes between the threads is a delta sample; lights behind are then reached by rays that
// the cloth weakens, and not by the value.
#pragma once

#include <optional>

#include "scatter/microfacet.h"
#include "scatter/scatter_sample.h"

namespace understudy {

class ThinCloth {
  public:
    ThinCloth(const Spectrum& reflected, const Spectrum& transmitted, float open)
        : reflected_(reflected), transmitted_(transmitted), open_(open) {
        const float back = mean_over_waves(reflected);
        const float through = mean_over_waves(transmitted);
        const float all = back + through + open;
        if (!(all > 0.0F)) return;
        back_chance_ = back / all;
        through_chance_ = through / all;
        open_chance_ = open / all;
    }

    const Spectrum& reflected() const { return reflected_; }
    const Spectrum& transmitted() const { return transmitted_; }
    // Passes without being turned.
    float open() const { return open_; }

    // Of a sample to go each way.
    float back_chance() const { return back_chance_; }
    float through_chance() const { return through_chance_; }
    float open_chance() const { return open_chance_; }

  private:
    Spectrum reflected_;
    Spectrum transmitted_;
    float open_;
    float back_chance_ = 1.0F;
    float through_chance_ = 0.0F;
    float open_chance_ = 0.0F;
};

inline bool off_horizon(const Vec3& w) { return std::abs(w.z) > kHorizon; }

inline Approach approach(const ThinCloth& cloth, const Vec3& wo, const Waves& waves) {
    return {wo, at(cloth.reflected(), waves), 0.0F, at(cloth.transmitted(), waves)};
}

inline ScatterValue scatter_value(const ThinCloth& cloth, const Approach& from, const Vec3& wi) {
    if (!off_horizon(from.wo) || !off_horizon(wi)) return {};
    const bool back = from.wo.z * wi.z > 0.0F;
    const float chance = back ? cloth.back_chance() : cloth.through_chance();
    return {(back ? from.colour : from.through) * (1.0F / kPi), chance * std::abs(wi.z) / kPi};
}

inline std::optional<ScatterSample> sample_scatter(const ThinCloth& cloth, const Approach& from, const Vec3& u) {
    if (!off_horizon(from.wo)) return std::nullopt;
    if (u.x >= cloth.back_chance() + cloth.through_chance()) {
        if (!(cloth.open_chance() > 0.0F)) return std::nullopt;
        return ScatterSample{-from.wo, Light4(cloth.open() / cloth.open_chance()), 0.0F, true};
    }
    const bool back = u.x < cloth.back_chance();
    Vec3 wi = sample_cosine(u.y, u.z);
    if (!off_horizon(wi)) return std::nullopt;
    const float chance = back ? cloth.back_chance() : cloth.through_chance();
    const Light4& colour = back ? from.colour : from.through;
    const float density = chance * wi.z / kPi;
    if (back != (from.wo.z > 0.0F)) wi.z = -wi.z;
    return ScatterSample{wi, colour / chance, density, false};
}

// Under even light from both sides.
inline Light4 albedo(const ThinCloth& cloth, const Waves& waves) {
    return at(cloth.reflected(), waves) + at(cloth.transmitted(), waves) + cloth.open();
}

inline bool wants_mis(const ThinCloth&) { return false; }

}  // namespace understudy
