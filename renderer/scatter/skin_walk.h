// A random walk under the skin, from where light is seen to come out to where it went in.
//
// Guided: most steps are drawn as if the light knew that it has to get out again, toward the surface and longer that
// way, shorter into the depth: the asymptotic zero-variance walk of J. Křivánek and E. d'Eon, "A Zero-Variance-Based
// Sampling Scheme for Monte Carlo Subsurface Scattering", SIGGRAPH 2014 talks. The rest are drawn as the medium has
// them. Every step is weighed by the density with which all ways of drawing, for all four wavelengths, would have made
// it (the one-sample balance heuristic; for the wavelengths A. Wilkie and others, "Hero Wavelength Spectral Sampling",
// 2014), so the mixture changes the noise and not the mean.
#pragma once

#include <cstdint>
#include <optional>

#include "base/geometry.h"
#include "base/turns.h"
#include "scatter/skin_medium.h"

namespace understudy {

struct WalkTuning {
    float guided = 0.75F;     // of the steps
    bool roulette = true;     // a walk that has become weak may end, what goes on makes up for it
    bool by_distance = true;  // ask for the free distance before a wall is looked for
};

// Longer walks are given up, and counted: after so many steps of light skin's red under 1e-4 is left.
inline constexpr int kMostSkinSteps = 256;

// Numbers of one walk, keyed by the path that it belongs to: a counter through Wellons's lowbias32.
class SkinWalkNumbers {
  public:
    explicit SkinWalkNumbers(std::uint32_t key) : state_(key) {}
    float next() {
        state_ += 0x9e3779b9U;
        std::uint32_t x = state_;
        x ^= x >> 16;
        x *= 0x7feb352dU;
        x ^= x >> 15;
        x *= 0x846ca68bU;
        x ^= x >> 16;
        return static_cast<float>(x >> 8) * 0x1p-24F;
    }

  private:
    std::uint32_t state_;
};

struct WalkStart {
    Vec3 position{0.0F};             // on the surface, or a hair below
    Vec3 outward{0.0F, 0.0F, 1.0F};  // unit
    Vec3 direction{0.0F};            // unit, inward: the first step's
    float thickness = kInfinity;     // to the other side of the flesh, straight in; metres
};

enum class WalkEnd : std::uint8_t { kEmerged, kTakenUp, kLost, kCapped };

template <class Wall>
struct WalkResult {
    WalkEnd end = WalkEnd::kTakenUp;
    std::optional<Wall> wall;  // where it emerged
    Four throughput{};         // of even light from outside that falls on the wall there
    int steps = 0;
    int rays = 0;  // walls that had to be looked for
};

// The ways in which a step is drawn at one place.
class GuidedStep {
  public:
    // toward: unit, the way out. back: of the guided steps, the share that is sent the other way.
    GuidedStep(const SkinMedium& medium, const Vec3& toward, float guided, float decay, float back)
        : medium_(medium),
          frame_(Frame::around(toward)),
          decay_(decay),
          turn_(1.0F / decay),
          log_ratio_(std::log((turn_ + 1.0F) / (turn_ - 1.0F))),
          plain_(1.0F - guided),
          forth_(guided * (1.0F - back)),
          back_(guided * back) {}

    void set_back(float guided, float back) {
        forth_ = guided * (1.0F - back);
        back_ = guided * back;
    }

    // u.x chooses the kind, then u.y and u.z the direction.
    Vec3 direction(float choice, float u, float v) {
        kind_ = choice < plain_ ? Kind::kPlain : (choice < plain_ + forth_ ? Kind::kForth : Kind::kBack);
        float cosine = 1.0F - 2.0F * u;
        if (kind_ != Kind::kPlain) {
            cosine = turn_ - (turn_ + 1.0F) * std::exp(-log_ratio_ * u);
            cosine = cosine < -1.0F ? -1.0F : (cosine > 1.0F ? 1.0F : cosine);
            if (kind_ == Kind::kBack) cosine = -cosine;
        }
        const float across = std::sqrt(std::fmax(0.0F, 1.0F - cosine * cosine));
        const Vec2 round = across * turned(v);
        // Times 4π, so that the phase function's 1/4π drops out.
        const float toward = 2.0F / (log_ratio_ * (turn_ - cosine));
        const float away = 2.0F / (log_ratio_ * (turn_ + cosine));
        weights(cosine, 1.0F, toward, away);
        return frame_.to_world({round.x, round.y, cosine});
    }

    // A direction that was drawn otherwise: only how far it goes is guided.
    void given(const Vec3& direction, float choice) {
        kind_ = choice < plain_ ? Kind::kPlain : (choice < plain_ + forth_ ? Kind::kForth : Kind::kBack);
        weights(glm::dot(direction, frame_.normal), 1.0F, 1.0F, 1.0F);
    }

    // u chooses among the wavelengths by these shares, v how far.
    float distance(const Four& shares, float u, float v) {
        shares_ = shares;
        int wave = 0;
        for (float rest = u - shares[0]; wave < 3 && rest >= 0.0F; rest -= shares[wave]) ++wave;
        const float stretch = kind_ == Kind::kPlain ? 1.0F : (kind_ == Kind::kForth ? forth_rate_ : back_rate_);
        return -std::log(1.0F - v) / (stretch * medium_.extinction[wave]);
    }

    // What the step weighs at each wavelength: as the medium has it over how it was drawn. Up to a scattering there,
    // or only that far.
    Four weight_of_scattering(float distance) const {
        const Four optical = medium_.extinction * distance;
        const Four plain = medium_.extinction * exponential(-optical);
        Four drawn = plain_density_ * plain;
        if (forth_density_ > 0.0F) {
            drawn += (forth_density_ * forth_rate_) * (medium_.extinction * exponential(-forth_rate_ * optical));
        }
        if (back_density_ > 0.0F) {
            drawn += (back_density_ * back_rate_) * (medium_.extinction * exponential(-back_rate_ * optical));
        }
        return plain / sum_of(shares_ * drawn);
    }
    Four weight_of_passing(float distance) const {
        const Four optical = medium_.extinction * distance;
        const Four plain = exponential(-optical);
        Four drawn = plain_density_ * plain;
        if (forth_density_ > 0.0F) drawn += forth_density_ * exponential(-forth_rate_ * optical);
        if (back_density_ > 0.0F) drawn += back_density_ * exponential(-back_rate_ * optical);
        return plain / sum_of(shares_ * drawn);
    }

  private:
    enum class Kind : std::uint8_t { kPlain, kForth, kBack };

    void weights(float cosine, float plain, float forth, float back) {
        plain_density_ = plain_ * plain;
        forth_density_ = forth_ * forth;
        back_density_ = back_ * back;
        forth_rate_ = 1.0F - decay_ * cosine;
        back_rate_ = 1.0F + decay_ * cosine;
    }

    const SkinMedium& medium_;
    Frame frame_;
    float decay_, turn_, log_ratio_;
    float plain_, forth_, back_;  // shares of the kinds
    Kind kind_ = Kind::kPlain;
    float plain_density_ = 1.0F, forth_density_ = 0.0F, back_density_ = 0.0F;
    float forth_rate_ = 1.0F, back_rate_ = 1.0F;
    Four shares_{};
};

namespace skin_walk_parts {

// So little of its light would die on the way that no walk is so sure of the way out.
inline constexpr float kLeastDecay = 0.02F;
inline constexpr float kMostDecay = 0.99F;
inline constexpr float kOffMirror = 1e-6F;  // metres

inline Four shares_of(const Four& strength) {
    const float all = sum_of(strength);
    return all > 0.0F ? strength / all : all_four(0.25F);
}

}  // namespace skin_walk_parts

// Flesh is where the walk goes:
//   bool free(const Vec3& from, float distance)          whether there is surely no wall so near;
//   std::optional<Wall> wall(const Ray& ray)             the first wall on the ray, with its `distance`;
//   bool contains(const Wall& wall)                      whether that wall was met from within;
//   float sends_back(const Wall& wall)                   of the light that meets it from within, the share it mirrors;
//   Vec3 mirrored(const Wall& wall, const Vec3& way)     where to, unit.
template <class Flesh>
auto walk_through_skin(const SkinMedium& medium, const WalkStart& start, const Flesh& flesh, SkinWalkNumbers numbers,
                       const WalkTuning& tuning) -> WalkResult<typename Flesh::Wall> {
    using namespace skin_walk_parts;
    WalkResult<typename Flesh::Wall> result;
    const float strongest = largest_of(medium.scattered);
    const float decay = std::fmin(std::fmax(diffuse_decay(strongest), kLeastDecay), kMostDecay);
    const float least_extinction = least_of(medium.extinction);
    const bool thin = start.thickness < kInfinity;
    GuidedStep step(medium, start.outward, tuning.guided, decay, 0.0F);
    Vec3 place = start.position;
    Vec3 direction = start.direction;
    Four throughput = all_four(1.0F);
    bool mirrored = false;
    for (result.steps = 1; result.steps <= kMostSkinSteps; ++result.steps) {
        const float choice = numbers.next();
        if (thin) {
            const float depth = glm::dot(start.position - place, start.outward);
            // Light leaves a slab by either side as it dies away toward it.
            const float lead = decay * least_extinction * (start.thickness - 2.0F * depth);
            step.set_back(tuning.guided, 1.0F / (1.0F + std::exp(std::fmin(lead, 60.0F))));
        }
        if (result.steps == 1 || mirrored) {
            step.given(direction, choice);
            mirrored = false;
        } else {
            throughput *= medium.scattered;
            if (tuning.roulette && result.steps > 3) {
                const float chance = 2.0F * largest_of(throughput);
                if (!(chance > 0.0F)) return result;
                if (chance < 1.0F) {
                    if (numbers.next() >= chance) return result;
                    throughput = throughput / chance;
                }
            }
            const float u = numbers.next();
            direction = step.direction(choice, u, numbers.next());
        }
        const float u = numbers.next();
        const float reach = step.distance(shares_of(throughput * medium.scattered), u, numbers.next());
        if (!tuning.by_distance || !flesh.free(place, reach)) {
            ++result.rays;
            result.wall = flesh.wall({place, direction, 0.0F, reach});
            if (result.wall) {
                const float back = flesh.sends_back(*result.wall);
                if (back > 0.0F && numbers.next() < back) {
                    throughput *= step.weight_of_passing(result.wall->distance);
                    place += result.wall->distance * direction;
                    direction = flesh.mirrored(*result.wall, direction);
                    place += kOffMirror * direction;
                    mirrored = true;
                    continue;
                }
                result.throughput = throughput * step.weight_of_passing(result.wall->distance);
                result.end = flesh.contains(*result.wall) ? WalkEnd::kEmerged : WalkEnd::kLost;
                return result;
            }
        }
        throughput *= step.weight_of_scattering(reach);
        place += reach * direction;
    }
    result.end = WalkEnd::kCapped;
    return result;
}

}  // namespace understudy
