#include "stage/iris_pattern.h"

#include <algorithm>
#include <cmath>

#include "stage/gradient_noise.h"

namespace understudy {

namespace {

constexpr float kLeastMelanin = 2e-4F;
constexpr float kMostMelanin = 0.4F;
constexpr std::size_t kTones = 24;

// Depths of the relief, metres. The iris is about half a millimetre thick.
constexpr float kFibreHeight = 42e-6F;
constexpr float kCollaretteHeight = 60e-6F;
constexpr float kCryptDepth = 90e-6F;
constexpr float kFurrowDepth = 22e-6F;

float step(float t) { return static_cast<float>(smooth_step(static_cast<double>(t))); }

// A place on the ring between the pupil's edge, 0, and the rim, 1.
struct RingPlace {
    float out;
    float turn;  // radians

    // Chance with so many cells round the ring and across it.
    float noise(float round, float over, std::uint32_t seed) const {
        const float radius = round / (2.0F * kPi);
        return gradient_noise({radius * std::cos(turn), radius * std::sin(turn), over * out + 0.37F}, seed);
    }
};

// What is found at a place, each 0 … 1.
struct Parts {
    float fibres, collarette, inside, crypt, furrow;

    float height() const {
        return kFibreHeight * fibres * (1.0F - 0.4F * inside) * (1.0F - 0.6F * crypt) + kCollaretteHeight * collarette -
               kCryptDepth * crypt - kFurrowDepth * furrow;
    }
};

Parts parts_at(const RingPlace& place, std::uint32_t seed) {
    const float border =
        0.33F + 0.07F * place.noise(11.0F, 0.0F, seed + 1) + 0.035F * place.noise(34.0F, 0.0F, seed + 2);
    const RingPlace bent{place.out, place.turn + 0.06F * place.noise(16.0F, 3.0F, seed + 3)};
    const auto ridge = [](float noise) { return std::max(0.0F, 1.0F - 2.2F * std::abs(noise)); };
    Parts parts{};
    parts.inside = 1.0F - step((place.out - border + 0.04F) / 0.08F);
    parts.fibres = 0.62F * ridge(bent.noise(64.0F, 1.6F, seed + 4)) + 0.38F * ridge(bent.noise(140.0F, 3.2F, seed + 5));
    const float off = (place.out - border) / 0.055F;
    parts.collarette = std::exp(-off * off);
    const float reach = step((place.out - border) / 0.07F) * (1.0F - step((place.out - 0.62F) / 0.22F));
    parts.crypt = reach * step((bent.noise(15.0F, 2.6F, seed + 6) - 0.12F) / 0.3F);
    const float waves = std::sin(2.0F * kPi * (4.6F * place.out + 0.5F * place.noise(5.0F, 0.7F, seed + 7)));
    const float broken = step(0.5F + 1.4F * place.noise(9.0F, 4.0F, seed + 8));
    parts.furrow = broken * step((place.out - 0.5F) / 0.2F) * step((waves - 0.5F) / 0.5F);
    return parts;
}

RingPlace ring_place(const Vec2& across, float pupil_radius) {
    const float width = static_cast<float>(kIrisRadius) - pupil_radius;
    return {(glm::length(across) - pupil_radius) / width, std::atan2(across.y, across.x)};
}

// The dark seam round the pupil and the dark ring toward the limbus.
float edge_share(const Vec2& across, float pupil_radius) {
    constexpr float kSeam = 0.00013F;
    constexpr float kRing = 0.0011F;
    const float from_pupil = glm::length(across) - pupil_radius;
    const float from_rim = static_cast<float>(kIrisRadius) - glm::length(across);
    return (0.2F + 0.8F * step(from_pupil / kSeam)) * (0.22F + 0.78F * step(from_rim / kRing));
}

}  // namespace

IrisPattern::IrisPattern(IrisColour colour) : pigment_(iris_pigment(colour)) {
    for (std::size_t i = 0; i < kTones; ++i) {
        const float place = static_cast<float>(i) / (kTones - 1);
        const float melanin = kLeastMelanin * std::pow(kMostMelanin / kLeastMelanin, place);
        tones_.push_back(iris_albedo(pigment_, static_cast<double>(melanin)));
    }
}

IrisPattern::Patch IrisPattern::patch(const Vec2& across, float pupil_radius, std::uint32_t seed) const {
    constexpr float kStep = 12e-6F;
    const RingPlace place = ring_place(across, pupil_radius);
    const Parts parts = parts_at(place, seed);
    const auto height = [&](const Vec2& at) { return parts_at(ring_place(at, pupil_radius), seed).height(); };
    const float here = parts.height();
    Patch patch;
    patch.slope = Vec2(height(across + Vec2(kStep, 0.0F)) - here, height(across + Vec2(0.0F, kStep)) - here) / kStep;
    // Blotches of their own, and fibres paler than what lies between them.
    const float border = parts.inside + 0.5F * place.noise(10.0F, 2.0F, seed + 9);
    const float zone = std::clamp(border, 0.0F, 1.0F);
    const float mean = std::log(static_cast<float>(pigment_.at_rim)) * (1.0F - zone) +
                       std::log(static_cast<float>(pigment_.at_pupil)) * zone;
    patch.melanin = std::exp(mean + 0.7F * place.noise(23.0F, 3.0F, seed + 10) - 0.9F * (parts.fibres - 0.35F) -
                             0.3F * parts.collarette);
    patch.share = edge_share(across, pupil_radius) * (1.0F - 0.55F * parts.crypt) * (1.0F - 0.15F * parts.furrow) *
                  (0.85F + 0.45F * parts.fibres);
    return patch;
}

Light4 IrisPattern::colour(const Patch& patch, const Waves& waves) const {
    const float steps = std::log(patch.melanin / kLeastMelanin) / std::log(kMostMelanin / kLeastMelanin);
    const float place = std::clamp(steps, 0.0F, 1.0F) * (kTones - 1);
    const auto lower = std::min(static_cast<std::size_t>(place), kTones - 2);
    const float over = place - static_cast<float>(lower);
    return patch.share * ((1.0F - over) * at(tones_[lower], waves) + over * at(tones_[lower + 1], waves));
}

}  // namespace understudy
