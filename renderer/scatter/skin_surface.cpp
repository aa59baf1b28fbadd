#include "scatter/skin_surface.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "scatter/directional_albedo.h"
#include "scatter/fresnel.h"
#include "scatter/skin_layers.h"

namespace understudy {
namespace {

// The coat's directional albedo over its roughness.
class CoatTable {
  public:
    CoatTable() {
        for (std::size_t i = 0; i < kRows; ++i) {
            const float alpha = kLeastSkinRoughness + kStep * static_cast<float>(i);
            rows_[i] = Row::of_gloss(alpha, [](float cosine) { return dielectric_fresnel(cosine, kSkinIndex); });
        }
    }
    float at(float alpha, float cosine) const {
        const Place place = place_of(alpha);
        const float low = rows_[place.row].at(cosine);
        return low + place.share * (rows_[place.row + 1].at(cosine) - low);
    }
    float mean(float alpha) const {
        const Place place = place_of(alpha);
        const float low = rows_[place.row].mean();
        return low + place.share * (rows_[place.row + 1].mean() - low);
    }

  private:
    using Row = AlbedoTable<48, 24>;
    static constexpr std::size_t kRows = 13;
    static constexpr float kStep = (kMostSkinRoughness - kLeastSkinRoughness) / static_cast<float>(kRows - 1);
    struct Place {
        std::size_t row;
        float share;
    };
    static Place place_of(float alpha) {
        const float place = (alpha - kLeastSkinRoughness) / kStep;
        const std::size_t row = std::min(static_cast<std::size_t>(std::max(place, 0.0F)), kRows - 2);
        return {row, place - static_cast<float>(row)};
    }
    std::array<Row, kRows> rows_;
};

const CoatTable& coats() {
    static const CoatTable table;
    return table;
}

// Of light that is sampled, the share of samples that the coat gets.
float coat_share(const SkinSurface& surface, const Approach& from) {
    if (from.part == SkinPart::kCoat) return 1.0F;
    if (from.part == SkinPart::kFromBelow) return 0.0F;
    const Light4& colour = from.colour;
    const float mean = 0.25F * (colour.x + colour.y + colour.z + colour.w);
    const float coat = from.reflected;
    const float share = coat > 0.0F ? coat / (coat + (1.0F - coat) * mean) : 0.0F;
    return wants_mis(surface) ? std::max(share, kLeastSharpCoatShare) : share;
}

}  // namespace

Light4 skin_colour(const SkinSpot& spot, const Waves& waves) {
    const SkinLayers& layers = SkinLayers::common();
    const SkinLayers::Mixture mixture = layers.mixture(spot.melanin, spot.blood);
    return {layers.albedo(mixture, waves.nm[0]), layers.albedo(mixture, waves.nm[1]),
            layers.albedo(mixture, waves.nm[2]), layers.albedo(mixture, waves.nm[3])};
}

SkinDepth skin_depth(const SkinSpot& spot, const Light4& colour, const Waves& waves) {
    SkinSpot bare = spot;
    bare.melanin = 0.0F;
    const Light4 flesh = skin_colour(bare, waves);
    return {flesh, glm::sqrt(colour / flesh)};
}

float coat_reflectance(const SkinSpot& spot, float cosine) {
    return spot.coat * coats().at(spot.roughness, std::max(cosine, 0.0F));
}

float mean_coat_reflectance(const SkinSpot& spot) { return spot.coat * coats().mean(spot.roughness); }

Approach approach(const SkinSpot& spot, const Vec3& wo, const Waves& waves) {
    Approach result = approach_of_coat(spot, wo);
    result.part = SkinPart::kBoth;
    result.colour = skin_colour(spot, waves);
    return result;
}

Approach approach_of_coat(const SkinSpot& spot, const Vec3& wo) {
    Approach result;
    result.wo = wo;
    result.reflected = coat_reflectance(spot, wo.z);
    result.spot = spot;
    result.part = SkinPart::kCoat;
    return result;
}

Approach approach_from_below(const SkinSpot& spot) {
    Approach result;
    result.wo = Vec3(0.0F, 0.0F, 1.0F);
    result.colour = Light4(1.0F);
    result.spot = spot;
    result.part = SkinPart::kFromBelow;
    return result;
}

ScatterValue scatter_value(const SkinSurface& surface, const Approach& from, const Vec3& wi) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo) || !above_horizon(wi)) return {};
    const SkinSpot& spot = from.spot;
    const float share = coat_share(surface, from);
    ScatterValue result;
    if (from.part != SkinPart::kFromBelow) {
        const Vec3 h = glm::normalize(wo + wi);
        const float fresnel = spot.coat * dielectric_fresnel(std::min(1.0F, glm::dot(wo, h)), kSkinIndex);
        const float distribution = ggx_distribution(h, spot.roughness);
        result.value = Light4(fresnel * distribution * smith_visibility(wo.z, wi.z, spot.roughness));
        result.density = share * distribution / (2.0F * (wo.z + smith_root(wo.z, spot.roughness)));
    }
    if (from.part != SkinPart::kCoat) {
        const float through = (1.0F - from.reflected) * (1.0F - coat_reflectance(spot, wi.z)) /
                              (kPi * (1.0F - mean_coat_reflectance(spot)));
        result.value += through * from.colour;
        result.density += (1.0F - share) * wi.z / kPi;
    }
    return result;
}

std::optional<ScatterSample> sample_scatter(const SkinSurface& surface, const Approach& from, const Vec3& u) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo)) return std::nullopt;
    const bool by_coat = u.x < coat_share(surface, from);
    const Vec3 wi =
        by_coat ? mirror(wo, sample_visible_normal(wo, from.spot.roughness, u.y, u.z)) : sample_cosine(u.y, u.z);
    if (!above_horizon(wi)) return std::nullopt;
    const ScatterValue both = scatter_value(surface, from, wi);
    return ScatterSample{wi, both.value * (wi.z / both.density), both.density, false};
}

Light4 albedo_over(const SkinSpot& spot, const Light4& colour) {
    const float coat = mean_coat_reflectance(spot);
    return coat + (1.0F - coat) * colour;
}

}  // namespace understudy
