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

Four chosen(const FourTruth& truth, const Four& yes, const Four& no) { return truth ? yes : no; }

Four root_of(const Four& square) {
    return Four{std::sqrt(square[0]), std::sqrt(square[1]), std::sqrt(square[2]), std::sqrt(square[3])};
}

// exp(−p) I₀(x), for x >= 0 and p >= x: Abramowitz and Stegun, Handbook of Mathematical Functions, 9.8.1 and 9.8.2.
Four damped_bessel(const Four& x, const Four& p) {
    const Four limit = all_four(3.75F);
    const FourTruth near = x < limit;
    const Four bounded = chosen(near, x, limit);
    const Four s = bounded / 3.75F * (bounded / 3.75F);
    const Four series =
        1.0F +
        s * (3.5156229F + s * (3.0899424F + s * (1.2067492F + s * (0.2659732F + s * (0.0360768F + s * 0.0045813F)))));
    const Four t = 3.75F / chosen(near, limit, x);
    const Four far_series =
        0.39894228F +
        t * (0.01328592F +
             t * (0.00225319F +
                  t * (-0.00157565F +
                       t * (0.00916281F +
                            t * (-0.02057706F + t * (0.02635537F + t * (-0.01647633F + t * 0.00392377F)))))));
    return exponential(chosen(near, -p, x - p)) * chosen(near, series, far_series / root_of(chosen(near, limit, x)));
}

// Per unit sine of the angle over the plane square to the fibre; integrates to 1. d'Eon and others 2011, eq. 7.
Four density_along(const FibreAlong& from, float sin_i) {
    const float cos_i = whole_root(1.0F - sin_i * sin_i);
    const Four a = cos_i * from.middle_cosine / from.variance;
    const Four b = sin_i * from.middle_sine / from.variance;
    return damped_bessel(a, b + 1.0F / from.variance) * from.along_scale;
}

// A sine with that density: d'Eon, Marschner and Hanika, "Importance Sampling for Physically-Based Hair Fiber Models",
// SIGGRAPH Asia 2013 briefs, eq. 6 and 7.
float sample_along(const Vec2& middle, float variance, float u, float v) {
    const float axial = 1.0F + variance * std::log(std::max(u, 0x1p-26F) + (1.0F - u) * std::exp(-2.0F / variance));
    return -axial * middle.x + whole_root(1.0F - axial * axial) * turned(v).x * middle.y;
}

float logistic_share(float x, float scale) { return 1.0F / (1.0F + std::exp(-x / scale)); }

// Per radian round the fibre: the logistic distribution cut off at half a turn. Chiang and others 2016, eq. 11.
Four density_round(const Four& turn, const FibreAlong& from) {
    const Four wrapped = turn - kTurn * nearest_whole(turn / kTurn);
    const Four power = exponential(chosen(wrapped < 0.0F, wrapped, -wrapped) / from.spread);
    return power * from.round_scale / ((1.0F + power) * (1.0F + power));
}

float round_scale_of(float spread) { return 1.0F / (spread * (1.0F - 2.0F * logistic_share(-kPi, spread))); }

Four along_scale_of(const Four& variance) { return 1.0F / (variance * (1.0F - exponential(-2.0F / variance))); }

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
    const Light4 through = vec4_of(exponential(four_of(-way * absorption)));
    std::array<Light4, kFibreLobes> share;
    share[kR] = Light4(mirrored);
    share[kTT] = (1.0F - mirrored) * (1.0F - mirrored) * through;
    share[kTRT] = share[kTT] * through * mirrored;
    share[kRest] = share[kTRT] * through * mirrored / (1.0F - through * std::min(mirrored, 0.999F));
    return share;
}

// One of its lobes a turn.
Four turns_of(const FibreApproach& from) { return Four{from.turn[kR], from.turn[kTT], from.turn[kTRT], 0.0F}; }

Vec3 sample_direction(const FibreAlong& from, std::size_t lobe, float turn, const Vec2& along, float round) {
    const float sine = std::clamp(
        sample_along({from.middle_sine[lobe], from.middle_cosine[lobe]}, from.variance[lobe], along.x, along.y), -1.0F,
        1.0F);
    const float turned_by = lobe == kRest ? kTurn * round : turn + sample_round(from.spread, round);
    const Vec2 azimuth = whole_root(1.0F - sine * sine) * turned((from.round + turned_by) / kTurn);
    return {sine, azimuth.x, azimuth.y};
}

// Which lobe a number takes, and what is left of the number.
struct Lobe {
    std::size_t number = 0;
    float left = 0.0F;
};
template <class Chance>
Lobe lobe_at(float u, const Chance& chance) {
    std::size_t lobe = 0;
    while (lobe + 1 < kFibreLobes && u >= chance(lobe)) u -= chance(lobe++);
    return {lobe, std::clamp(u / std::max(chance(lobe), 1e-9F), 0.0F, 1.0F - 0x1p-24F)};
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

namespace {

FibreAlong approach_along(const HairFibre& fibre, const Vec3& wo, float blur) {
    FibreAlong from;
    const float sin_o = std::clamp(wo.x, -1.0F, 1.0F);
    const float cos_o = std::max(whole_root(1.0F - sin_o * sin_o), 1e-4F);
    from.sin_along = sin_o;
    from.cos_along = cos_o;
    from.round = std::atan2(wo.z, wo.y);
    // Variances add up; a logistic distribution's is π²/3 of its squared scale.
    from.spread = std::sqrt(fibre.round_spread * fibre.round_spread + 3.0F / (kPi * kPi) * blur * blur);
    from.round_scale = round_scale_of(from.spread);
    const auto tilt = static_cast<float>(radians(static_cast<double>(kCuticleTilt)));
    // Toward the root for R, toward the tip for what has been inside: Chiang and others 2016, section 4.
    const std::array<Vec2, kFibreLobes> middles{shifted(sin_o, cos_o, 2.0F * tilt), shifted(sin_o, cos_o, -tilt),
                                                shifted(sin_o, cos_o, -4.0F * tilt), Vec2(sin_o, cos_o)};
    const auto along = static_cast<float>(radians(static_cast<double>(fibre.along_deg)));
    const Four share{1.0F, 0.25F, 4.0F, 4.0F};
    from.variance = share * (along * along) + blur * blur;
    from.along_scale = along_scale_of(from.variance);
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        from.middle_sine[p] = middles.at(p).x;
        from.middle_cosine[p] = middles.at(p).y;
    }
    return from;
}

// What depends on where across the fibre it is met.
void meet_across(FibreApproach& from, float across, const Light4& absorption) {
    // Seen along the fibre, the index is Bravais's.
    const float index = std::sqrt(kHairIndex * kHairIndex - from.sin_along * from.sin_along) / from.cos_along;
    const float sin_inside = std::clamp(across / index, -1.0F, 1.0F);
    const float outside = safe_asin(across);
    const float inside = std::asin(sin_inside);
    for (std::size_t p = 0; p < kRest; ++p) {
        const auto times = static_cast<float>(p);
        from.turn.at(p) = 2.0F * times * inside - 2.0F * outside + times * kPi;
    }
    from.share =
        lobe_shares(absorption, from.sin_along, from.cos_along, across, whole_root(1.0F - sin_inside * sin_inside));
    float all = 0.0F;
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        const Light4& share = from.share.at(p);
        from.chance.at(p) = share.x + share.y + share.z + share.w;
        all += from.chance.at(p);
    }
    for (float& chance : from.chance) chance /= all;
}

}  // namespace

FibreApproach approach_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves, float blur) {
    FibreApproach from{approach_along(fibre, wo, blur)};
    meet_across(from, across, at(fibre.absorption, waves));
    return from;
}

FibreValue fibre_value(const FibreApproach& from, const Vec3& wi) {
    const Four along = density_along(from, wi.x);
    Four round = density_round(std::atan2(wi.z, wi.y) - from.round - turns_of(from), from);
    round[kRest] = 1.0F / kTurn;
    const Four lobes = along * round;
    FibreValue sum;
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        sum.value += lobes[p] * from.share.at(p);
        sum.density += lobes[p] * from.chance.at(p);
    }
    return sum;
}

FibreSample sample_fibre(const FibreApproach& from, const Vec3& u) {
    const Lobe lobe = lobe_at(u.x, [&](std::size_t p) { return from.chance.at(p); });
    const float turn = lobe.number == kRest ? 0.0F : from.turn.at(lobe.number);
    const Vec3 wi = sample_direction(from, lobe.number, turn, {u.y, lobe.left}, u.z);
    return weighed(wi, fibre_value(from, wi));
}

WholeFibre approach_whole_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves, float blur) {
    WholeFibre from{approach_along(fibre, wo, blur)};
    const Light4 absorption = at(fibre.absorption, waves);
    FibreApproach one{from};
    for (std::size_t k = 0; k < kPlacesAcross; ++k) {
        const float place = across + 2.0F * static_cast<float>(k) / static_cast<float>(kPlacesAcross);
        meet_across(one, place < 1.0F ? place : place - 2.0F, absorption);
        for (std::size_t p = 0; p < kFibreLobes; ++p) {
            from.turn.at(p)[k] = one.turn.at(p);
            from.chance.at(p)[k] = one.chance.at(p);
            from.share.at(p).at(k) = one.share.at(p);
        }
    }
    return from;
}

FibreValue fibre_value(const WholeFibre& from, const Vec3& wi) {
    const Four along = density_along(from, wi.x);
    const float turn = std::atan2(wi.z, wi.y) - from.round;
    constexpr float kEach = 1.0F / static_cast<float>(kPlacesAcross);
    FibreValue sum;
    for (std::size_t p = 0; p < kFibreLobes; ++p) {
        const Four round = p == kRest ? all_four(1.0F / kTurn) : density_round(turn - from.turn.at(p), from);
        const Four lobes = kEach * along[p] * round;
        for (std::size_t k = 0; k < kPlacesAcross; ++k) sum.value += lobes[k] * from.share.at(p).at(k);
        sum.density += sum_of(lobes * from.chance.at(p));
    }
    return sum;
}

FibreSample sample_fibre(const WholeFibre& from, const Vec3& u) {
    const float place = u.x * static_cast<float>(kPlacesAcross);
    const auto k = std::min(static_cast<std::size_t>(place), kPlacesAcross - 1);
    const float left = std::min(place - static_cast<float>(k), 1.0F - 0x1p-24F);
    const Lobe lobe = lobe_at(left, [&](std::size_t p) { return from.chance.at(p)[k]; });
    const Vec3 wi = sample_direction(from, lobe.number, from.turn.at(lobe.number)[k], {u.y, lobe.left}, u.z);
    return weighed(wi, fibre_value(from, wi));
}

}  // namespace understudy
