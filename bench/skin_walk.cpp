// The walk under the skin by itself: what comes back of light that goes in evenly from all around, how noisy one walk's
// is, and what it takes. Guided, as pictures have it, beside a plain one, under a flat face and inside a ball of 1 cm.

#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "bench.h"
#include "scatter/skin_medium.h"
#include "scatter/skin_walk.h"

namespace understudy {

namespace {

constexpr int kWalks = 100'000;

struct WayToWall {
    float distance;
};

// What every flesh here has: walls that take all that comes to them from within.
struct BareWalls {
    using Wall = WayToWall;
    static bool contains(const Wall&) { return true; }
    static float sends_back(const Wall&) { return 0.0F; }
    static Vec3 mirrored(const Wall&, const Vec3& way) { return way; }
};

// All below z = 0.
struct UnderFace : BareWalls {
    static bool free(const Vec3& from, float distance) { return distance < -from.z; }
    static std::optional<Wall> wall(const Ray& ray) {
        if (!(ray.direction.z > 0.0F)) return std::nullopt;
        const float distance = -ray.origin.z / ray.direction.z;
        if (!(distance < ray.far)) return std::nullopt;
        return Wall{distance};
    }
};

// Whose highest point is the origin.
struct InBall : BareWalls {
    static constexpr float kRadius = 0.01F;
    static Vec3 from_centre(const Vec3& place) { return place + Vec3(0.0F, 0.0F, kRadius); }
    static bool free(const Vec3& from, float distance) { return distance < kRadius - glm::length(from_centre(from)); }
    static std::optional<Wall> wall(const Ray& ray) {
        const Vec3 from = from_centre(ray.origin);
        const float along = glm::dot(from, ray.direction);
        const float inside = kRadius * kRadius - (glm::dot(from, from) - along * along);
        const float distance = std::sqrt(std::fmax(inside, 0.0F)) - along;
        if (!(distance < ray.far)) return std::nullopt;
        return Wall{std::fmax(distance, 0.0F)};
    }
};

struct Outcome {
    std::array<double, 3> back{};     // of the light at each wavelength
    std::array<double, 3> spread2{};  // of one walk's, over the mean squared
    double rays = 0.0;                // a walk
    double free = 0.0;                // share of its steps that need none
    double nanoseconds = 0.0;         // a walk
};

template <class Place>
Outcome measure(const SkinMedium& medium, const Place& flesh, const WalkTuning& tuning) {
    std::array<double, 3> sum{};
    std::array<double, 3> squares{};
    double steps = 0.0;
    double rays = 0.0;
    const double seconds = shortest_time(1, [&] {
        for (std::uint32_t i = 0; i < kWalks; ++i) {
            SkinWalkNumbers numbers(7919U * i);
            const float u = numbers.next();
            const WalkStart start{Vec3(0.0F), {0.0F, 0.0F, 1.0F}, -sample_cosine(u, numbers.next())};
            const auto result = walk_through_skin(medium, start, flesh, numbers, tuning);
            steps += result.steps;
            rays += result.rays;
            if (result.end != WalkEnd::kEmerged) continue;
            for (std::size_t k = 0; k < 3; ++k) {
                const auto light = static_cast<double>(result.throughput[static_cast<int>(k)]);
                sum[k] += light;
                squares[k] += light * light;
            }
        }
    });
    Outcome outcome{{}, {}, rays / kWalks, 1.0 - rays / steps, 1e9 * seconds / kWalks};
    for (std::size_t k = 0; k < 3; ++k) {
        outcome.back[k] = sum[k] / kWalks;
        outcome.spread2[k] = kWalks * squares[k] / (sum[k] * sum[k]) - 1.0;
    }
    return outcome;
}

template <class Place>
void bench_in(const char* where, const char* skin, const Four& asked, const Place& flesh) {
    // Jensen and others 2001: measured skin's mean free paths in red, green and blue.
    const SkinMedium medium{single_scattering(asked), 1.0F / Four{1.30e-3F, 0.95e-3F, 0.67e-3F, 1.0e-3F}};
    const Outcome guided = measure(medium, flesh, {});
    const Outcome plain = measure(medium, flesh, {0.0F, false, false});
    fmt::print(
        "skin-walk: {} skin, {}: {:.3f} {:.3f} {:.3f} comes back of {:.2f} {:.2f} {:.2f} under a flat face; squared "
        "spread {:.2f} {:.2f} {:.2f} (plain {:.2f} {:.2f} {:.2f}); {:.1f} rays (plain {:.1f}), {:.0f} % of the steps "
        "need none; {:.0f} ns (plain {:.0f})\n",
        skin, where, guided.back[0], guided.back[1], guided.back[2], asked[0], asked[1], asked[2], guided.spread2[0],
        guided.spread2[1], guided.spread2[2], plain.spread2[0], plain.spread2[1], plain.spread2[2], guided.rays,
        plain.rays, 100.0 * guided.free, guided.nanoseconds, plain.nanoseconds);
}

}  // namespace

void bench_skin_walk() {
    struct Skin {
        const char* name;
        Four asked;
    };
    for (const Skin& skin :
         {Skin{"light", {0.78F, 0.56F, 0.46F, 0.65F}}, Skin{"middling", {0.55F, 0.32F, 0.22F, 0.40F}},
          Skin{"dark", {0.20F, 0.12F, 0.08F, 0.15F}}}) {
        bench_in("flat face", skin.name, skin.asked, UnderFace{});
        bench_in("ball of 1 cm", skin.name, skin.asked, InBall{});
    }
}

}  // namespace understudy
