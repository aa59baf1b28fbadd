#include "scatter/hair_fibre.h"

#include <algorithm>
#include <cmath>

#include "base/turns.h"
#include "scatter/fresnel.h"
#include "scatter/whole_fibre.h"

namespace understudy {

namespace {

constexpr std::size_t kR = 0;
constexpr std::size_t kTT = 1;
constexpr std::size_t kTRT = 2;
constexpr std::size_t kRest = 3;
constexpr float kTurn = 2.0F * kPi;

float whole_root(float square) { return std::sqrt(std::max(0.0F, square)); }
float safe_asin(float sine) { return std::asin(std::clamp(sine, -1.0F, 1.0F)); }

// exp(−|x|) I₀(x): Abramowitz and Stegun, Handbook of Mathematical Functions, 9.8.1 and 9.8.2.
float scaled_bessel(float x) {
    if (x < 3.75F) {
        const float t = x / 3.75F * (x / 3.75F);
        const float series =
            1.0F + t * (3.5156229F +
                        t * (3.0899424F + t * (1.2067492F + t * (0.2659732F + t * (0.0360768F + t * 0.0045813F)))));
        return series * std::exp(-x);
    }
    const float t = 3.75F / x;
    const float series =
        0.39894228F +
        t * (0.01328592F +
             t * (0.00225319F +
                  t * (-0.00157565F +
                       t * (0.00916281F +
                            t * (-0.02057706F + t * (0.02635537F + t * (-0.01647633F + t * 0.00392377F)))))));
    return series / std::sqrt(x);
}

// Per unit sine of the angle over the plane square to the fibre; integrates to 1. d'Eon and others 2011, eq. 7.
float density_along(const Vec2& middle, float sin_i, float variance) {
    const float cos_i = whole_root(1.0F - sin_i * sin_i);
    const float a = cos_i * middle.y / variance;
    const float b = sin_i * middle.x / variance;
    const float rest = 1.0F - std::exp(-2.0F / variance);
    return std::exp(a - b - 1.0F / variance) * scaled_bessel(a) / (variance * rest);
}

// A sine with that density: d'Eon, Marschner and Hanika, "Importance Sampling for Physically-Based Hair Fiber Models",
// SIGGRAPH Asia 2013 briefs, eq. 6 and 7.
float sample_along(const Vec2& middle, float variance, float u, float v) {
    const float axial = 1.0F + variance * std::log(std::max(u, 0x1p-26F) + (1.0F - u) * std::exp(-2.0F / variance));
    return -axial * middle.x + whole_root(1.0F - axial * axial) * turned(v).x * middle.y;
}

float logistic_share(float x, float scale) { return 1.0F / (1.0F + std::exp(-x / scale)); }

// Per radian round the fibre: the logistic distribution cut off at half a turn. Chiang and others 2016, eq. 11.
float density_round(float turn, float scale) {
    const float wrapped = turn - kTurn * std::floor(turn / kTurn + 0.5F);
    const float power = std::exp(-std::abs(wrapped) / scale);
    const float whole = 1.0F - 2.0F * logistic_share(-kPi, scale);
    return power / (scale * (1.0F + power) * (1.0F + power) * whole);
}

float sample_round(float scale, float u) {
    const float outside = logistic_share(-kPi, scale);
    const float share = std::clamp(outside + u * (1.0F - 2.0F * outside), 1e-6F, 1.0F - 1e-6F);
    return -scale * std::log(1.0F / share - 1.0F);
}

Vec2 shifted(float sin_o, float cos_o, float by) {
    const float sine = std::sin(by);
    const float cosine = std::cos(by);
    return {sin_o * cosine + cos_o * sine, std::abs(cos_o * cosine - sin_o * sine)};
}

// The share of each lobe: Fresnel's law at the wall, Beer's law on each way through.
std::array<Light4, kFibreLobes> lobe_shares(const Light4& absorption, float sin_o, float cos_o, float across,
                                            float cos_inside_round) {
    const float cos_across = whole_root(1.0F - across * across);
    const float mirrored = dielectric_fresnel(cos_o * cos_across, kHairIndex);
    const float sin_t = sin_o / kHairIndex;
    const float way = 2.0F * cos_inside_round / whole_root(1.0F - sin_t * sin_t);
    const Light4 through = glm::exp(-way * absorption);
    std::array<Light4, kFibreLobes> share;
    share[kR] = Light4(mirrored);
    share[kTT] = (1.0F - mirrored) * (1.0F - mirrored) * through;
    share[kTRT] = share[kTT] * through * mirrored;
    share[kRest] = share[kTRT] * through * mirrored / (1.0F - through * std::min(mirrored, 0.999F));
    return share;
}

std::array<float, kFibreLobes> lobes_along(const FibreApproach& from, float sin_i) {
    std::array<float, kFibreLobes> along{};
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        along.at(p) = density_along(from.along.at(p), sin_i, from.variance.at(p));
    }
    return along;
}

void add_round(FibreValue& sum, const FibreApproach& from, const std::array<float, kFibreLobes>& along, float azimuth) {
    const float turn = azimuth - from.round;
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        const float round = p == kRest ? 1.0F / kTurn : density_round(turn - from.turn.at(p), from.spread);
        const float lobe = round * along.at(p);
        sum.value += lobe * from.share.at(p);
        sum.density += lobe * from.chance.at(p);
    }
}

Vec3 sample_direction(const FibreApproach& from, const Vec3& u) {
    std::size_t lobe = 0;
    float left = u.x;
    while (lobe + 1 < kFibreLobes && left >= from.chance.at(lobe)) left -= from.chance.at(lobe++);
    const float again = std::clamp(left / std::max(from.chance.at(lobe), 1e-9F), 0.0F, 1.0F - 0x1p-24F);
    const float sine = std::clamp(sample_along(from.along.at(lobe), from.variance.at(lobe), u.y, again), -1.0F, 1.0F);
    const float turn = lobe == kRest ? kTurn * u.z : from.turn.at(lobe) + sample_round(from.spread, u.z);
    const Vec2 round = whole_root(1.0F - sine * sine) * turned((from.round + turn) / kTurn);
    return {sine, round.x, round.y};
}

FibreSample weighed(const Vec3& wi, const FibreValue& value) {
    return {wi, value.density > 0.0F ? value.value / value.density : Light4(0.0F), value.density};
}

}  // namespace

Spectrum hair_absorption(const HairPigment& pigment) {
    return Spectrum::tabulate([&](float nm) {
        const double relative = static_cast<double>(nm) / 450.0;
        return pigment.eumelanin * 1.37 * std::pow(relative, -3.33) +
               pigment.pheomelanin * 1.05 * std::pow(relative, -4.75);
    });
}

FibreApproach approach_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves, float blur) {
    FibreApproach from;
    const float sin_o = std::clamp(wo.x, -1.0F, 1.0F);
    const float cos_o = std::max(whole_root(1.0F - sin_o * sin_o), 1e-4F);
    from.sin_along = sin_o;
    from.round = std::atan2(wo.z, wo.y);
    // Variances add up; a logistic distribution's is π²/3 of its squared scale.
    from.spread = std::sqrt(fibre.round_spread * fibre.round_spread + 3.0F / (kPi * kPi) * blur * blur);
    const auto tilt = static_cast<float>(radians(static_cast<double>(kCuticleTilt)));
    // Toward the root for R, toward the tip for what has been inside: Chiang and others 2016, section 4.
    from.along = {shifted(sin_o, cos_o, 2.0F * tilt), shifted(sin_o, cos_o, -tilt), shifted(sin_o, cos_o, -4.0F * tilt),
                  Vec2(sin_o, cos_o)};
    const auto along = static_cast<float>(radians(static_cast<double>(fibre.along_deg)));
    from.variance = {along * along, 0.25F * along * along, 4.0F * along * along, 4.0F * along * along};
    for (float& variance : from.variance) variance += blur * blur;

    // Seen along the fibre, the index is Bravais's.
    const float index = std::sqrt(kHairIndex * kHairIndex - sin_o * sin_o) / cos_o;
    const float sin_inside = std::clamp(across / index, -1.0F, 1.0F);
    const float outside = safe_asin(across);
    const float inside = std::asin(sin_inside);
    for (std::size_t p = 0; p < kRest; ++p) {
        const auto times = static_cast<float>(p);
        from.turn.at(p) = 2.0F * times * inside - 2.0F * outside + times * kPi;
    }
    from.share =
        lobe_shares(at(fibre.absorption, waves), sin_o, cos_o, across, whole_root(1.0F - sin_inside * sin_inside));
    float all = 0.0F;
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        const Light4& share = from.share.at(p);
        from.chance.at(p) = share.x + share.y + share.z + share.w;
        all += from.chance.at(p);
    }
    for (float& chance : from.chance) chance /= all;
    return from;
}

FibreValue fibre_value(const FibreApproach& from, const Vec3& wi) {
    FibreValue result;
    add_round(result, from, lobes_along(from, wi.x), std::atan2(wi.z, wi.y));
    return result;
}

FibreSample sample_fibre(const FibreApproach& from, const Vec3& u) {
    const Vec3 wi = sample_direction(from, u);
    return weighed(wi, fibre_value(from, wi));
}

WholeFibre approach_whole_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves, float blur) {
    WholeFibre from;
    for (std::size_t k = 0; k < kPlacesAcross; ++k) {
        const float place = across + 2.0F * static_cast<float>(k) / static_cast<float>(kPlacesAcross);
        from.at(k) = approach_fibre(fibre, wo, place < 1.0F ? place : place - 2.0F, waves, blur);
    }
    return from;
}

// The lobes along the fibre are the same wherever it is met.
FibreValue fibre_value(const WholeFibre& from, const Vec3& wi) {
    FibreValue sum;
    const auto along = lobes_along(from[0], wi.x);
    const float azimuth = std::atan2(wi.z, wi.y);
    for (const FibreApproach& place : from) add_round(sum, place, along, azimuth);
    constexpr float kEach = 1.0F / static_cast<float>(kPlacesAcross);
    return {kEach * sum.value, kEach * sum.density};
}

FibreSample sample_fibre(const WholeFibre& from, const Vec3& u) {
    const float place = u.x * static_cast<float>(kPlacesAcross);
    const auto k = std::min(static_cast<std::size_t>(place), kPlacesAcross - 1);
    const float left = std::min(place - static_cast<float>(k), 1.0F - 0x1p-24F);
    const Vec3 wi = sample_direction(from.at(k), {left, u.y, u.z});
    return weighed(wi, fibre_value(from, wi));
}

}  // namespace understudy
