#include "scatter/skin_layers.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "scatter/skin.h"

namespace understudy {
namespace {

constexpr double kMostMelanin = 0.5;
constexpr double kMostBlood = 0.2;

struct Node {
    std::size_t index;
    float share;
};

Node node_of(float share, double most, std::size_t nodes) {
    const float place = std::sqrt(share / static_cast<float>(most)) * static_cast<float>(nodes - 1);
    const std::size_t index = std::min(static_cast<std::size_t>(place), nodes - 2);
    return {index, place - static_cast<float>(index)};
}

}  // namespace

const SkinLayers& SkinLayers::common() {
    static const SkinLayers layers;
    return layers;
}

SkinLayers::SkinLayers() : internal_(static_cast<float>(internal_reflectance(static_cast<double>(kSkinIndex)))) {
    for (std::size_t i = 0; i < Spectrum::kCount; ++i) {
        const auto nm = static_cast<double>(Spectrum::wave(i));
        Wave& wave = waves_.emplace_back();
        for (std::size_t k = 0; k < kNodes; ++k) {
            const double root = static_cast<double>(k) / static_cast<double>(kNodes - 1);
            const Layer epidermis = epidermis_layer(nm, root * root * kMostMelanin);
            wave.epidermis[k] = {static_cast<float>(epidermis.reflectance),
                                 static_cast<float>(epidermis.transmittance)};
            wave.dermis[k] = static_cast<float>(dermis_reflectance(nm, root * root * kMostBlood));
        }
    }
}

SkinLayers::Mixture SkinLayers::mixture(float melanin, float blood) const {
    assert(melanin >= 0.0F && melanin <= 0.5F && blood >= 0.0F && blood <= 0.2F);
    const Node m = node_of(melanin, kMostMelanin, kNodes);
    const Node b = node_of(blood, kMostBlood, kNodes);
    return {m.index, b.index, m.share, b.share};
}

float SkinLayers::albedo(const Mixture& at, float nm) const {
    const float place = (nm - Spectrum::kFirst) * (1.0F / Spectrum::kStep);
    const std::size_t index = std::min(static_cast<std::size_t>(place), Spectrum::kCount - 2);
    const float share = place - static_cast<float>(index);
    const auto between = [](float a, float b, float on) { return a + on * (b - a); };
    const auto over_both = [&](const auto& value_of, std::size_t node, float on) {
        return between(between(value_of(waves_[index], node), value_of(waves_[index], node + 1), on),
                       between(value_of(waves_[index + 1], node), value_of(waves_[index + 1], node + 1), on), share);
    };
    const float reflectance = over_both(
        [](const Wave& wave, std::size_t node) { return wave.epidermis[node].reflectance; }, at.melanin, at.melanin_on);
    const float transmittance =
        over_both([](const Wave& wave, std::size_t node) { return wave.epidermis[node].transmittance; }, at.melanin,
                  at.melanin_on);
    const float dermis =
        over_both([](const Wave& wave, std::size_t node) { return wave.dermis[node]; }, at.blood, at.blood_on);
    const float within = reflectance + transmittance * transmittance * dermis / (1.0F - reflectance * dermis);
    return (1.0F - internal_) * within / (1.0F - internal_ * within);
}

}  // namespace understudy
