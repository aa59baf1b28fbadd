#include "stage/sclera_pattern.h"

#include <algorithm>
#include <cmath>

#include "scatter/eye_colours.h"
#include "stage/gradient_noise.h"

namespace understudy {

namespace {

constexpr float kMillimetre = 1e-3F;
constexpr float kLimbusShare = 0.42F;   // what the white's colour falls to at the limbus
constexpr float kDarkens = 1.3F;        // millimetres over which it does
constexpr float kCoversCornea = 0.55F;  // millimetres that the white reaches over the cornea

float step(float t) { return static_cast<float>(smooth_step(static_cast<double>(t))); }

// How much of a vessel is here, 0 … 1. place: millimetres, in the eye's frame.
float vessels(const Vec3& place, float thin, float half_width, std::uint32_t seed) {
    const Vec3 at = place * thin;
    const Vec3 wound = at + 0.5F * Vec3(0.0F, gradient_noise(1.7F * at, seed), gradient_noise(1.7F * at, seed + 1));
    const float n = gradient_noise({0.30F * wound.x, wound.y, wound.z}, seed + 2);
    const float line = 1.0F - step(std::abs(n) / (1.6F * thin * half_width));
    return line * step(0.35F + 1.6F * gradient_noise(0.5F * at, seed + 3));
}

}  // namespace

ScleraPattern::ScleraPattern() : white_(sclera_albedo()), blood_per_cm_(eye_blood_per_cm()) {}

Light4 ScleraPattern::colour(const Vec3& way, std::uint32_t seed, const Waves& waves) const {
    const auto radius = static_cast<float>(kEyeballRadius) / kMillimetre;
    const float limbus = std::asin(static_cast<float>(kIrisRadius / kEyeballRadius));
    const float out = radius * (std::acos(std::clamp(way.z, -1.0F, 1.0F)) - limbus);
    const float aside = way.x * way.x / std::max(1e-6F, way.x * way.x + way.y * way.y);
    const float corner = step((out - 0.8F) / 6.0F) * aside;
    const Vec3 place = radius * way;
    const float blotch = 0.8F + 0.5F * gradient_noise(0.4F * place, seed + 11);
    const float reach = step((out - 0.6F) / 3.5F) * (0.25F + 0.75F * aside);
    const float drawn = reach * std::min(1.0F, 0.9F * vessels(place, 0.42F, 0.055F, seed + 12) +
                                                   0.6F * vessels(place, 0.9F, 0.03F, seed + 17));
    const float depth = kScleraBloodCm + kFlushBloodCm * corner * blotch + kVesselBloodCm * drawn;
    const float share = kLimbusShare + (1.0F - kLimbusShare) * step(std::max(0.0F, out) / kDarkens + 0.12F);
    return share * at(white_, waves) * glm::exp(-depth * at(blood_per_cm_, waves));
}

Light4 ScleraPattern::limbus_colour(const Waves& waves) const {
    const float share = kLimbusShare + (1.0F - kLimbusShare) * step(0.12F);
    return share * at(white_, waves) * glm::exp(-kScleraBloodCm * at(blood_per_cm_, waves));
}

float ScleraPattern::covers_cornea(float off_axis) {
    return step(1.0F - (static_cast<float>(kIrisRadius) - off_axis) / (kCoversCornea * kMillimetre));
}

}  // namespace understudy
