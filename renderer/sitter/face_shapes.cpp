#include "sitter/face_shapes.h"

#include <cassert>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace understudy {
namespace {

using Shares = std::vector<std::pair<std::string, double>>;

constexpr double kChildYears = 10.0;
constexpr double kYoungYears = 25.0;
constexpr double kOldYears = 90.0;

Shares shares_of_age(double years) {
    if (years < kYoungYears) {
        const double young = (years - kChildYears) / (kYoungYears - kChildYears);
        return {{"child", 1.0 - young}, {"young", young}};
    }
    const double old = (years - kYoungYears) / (kOldYears - kYoungYears);
    return {{"young", 1.0 - old}, {"old", old}};
}

Shares shares_of_ancestry(const Ancestry& ancestry) {
    return {{"african", ancestry.african}, {"asian", ancestry.asian}, {"caucasian", ancestry.european}};
}

// The two ends of a feature: each shape with how much of it makes as much as people differ.
struct FeatureEnds {
    FaceFeature feature;
    Shares less;
    Shares more;
};

const std::vector<FeatureEnds>& feature_ends() {
    using F = FaceFeature;
    static const std::vector<FeatureEnds> kEnds = {
        {F::kBrowDepth, {{"eyebrows/eyebrows-trans-depth-less", 1.0}}, {{"eyebrows/eyebrows-trans-depth-more", 0.4}}},
        {F::kEyeSpacing,
         {{"eyes/l-eye-move-in", 1.0}, {"eyes/r-eye-move-in", 1.0}},
         {{"eyes/l-eye-move-out", 1.0}, {"eyes/r-eye-move-out", 1.0}}},
        {F::kNoseLength, {{"nose/nose-scale-vert-decr", 1.0}}, {{"nose/nose-scale-vert-incr", 1.0}}},
        {F::kNoseWidth,
         {{"nose/nose-scale-horiz-decr", 0.8}, {"nose/nose-nostril-width-min", 0.5}},
         {{"nose/nose-scale-horiz-incr", 0.8}, {"nose/nose-nostril-width-max", 0.5}}},
        {F::kNoseDepth, {{"nose/nose-scale-depth-decr", 1.0}}, {{"nose/nose-scale-depth-incr", 1.0}}},
        {F::kCheekbone,
         {{"cheek/l-cheek-bones-in", 1.0}, {"cheek/r-cheek-bones-in", 1.0}},
         {{"cheek/l-cheek-bones-out", 0.6}, {"cheek/r-cheek-bones-out", 0.6}}},
        {F::kFaceWidth, {{"head/head-scale-horiz-less", 0.5}}, {{"head/head-scale-horiz-more", 0.5}}},
        {F::kJaw, {{"chin/chin-width-min", 1.0}}, {{"chin/chin-width-max", 0.5}}},
        // The package's word for which way is forward is the other one here.
        {F::kForehead,
         {{"forehead/forehead-trans-depth-forward", 0.5}},
         {{"forehead/forehead-trans-depth-backward", 0.5}}},
        {F::kLips,
         {{"mouth/mouth-upperlip-volume-deflate", 1.0}, {"mouth/mouth-lowerlip-volume-deflate", 1.0}},
         {{"mouth/mouth-upperlip-volume-inflate", 1.0}, {"mouth/mouth-lowerlip-volume-inflate", 1.0}}},
    };
    return kEnds;
}

// The package's heads are a little narrower than those of the survey (ANSUR II, 2012), men's more so.
constexpr const char* kWider = "head/head-scale-horiz-more";
constexpr double kWomenWider = 0.1;
constexpr double kMenWider = 0.3;

void add_kind(const FaceSettings& face, ShapeAmounts& amounts) {
    const Shares ages = shares_of_age(*face.age_years);
    const Shares sexes = {{"female", 1.0 - *face.sex}, {"male", *face.sex}};
    for (const auto& [sex, of_sex] : sexes) {
        for (const auto& [age, of_age] : ages) {
            const double share = of_sex * of_age;
            if (share == 0.0) continue;
            amounts[fmt::format("macrodetails/universal-{}-{}-averagemuscle-averageweight", sex, age)] += share;
            for (const auto& [people, of_people] : shares_of_ancestry(*face.ancestry)) {
                if (of_people == 0.0) continue;
                amounts[fmt::format("macrodetails/{}-{}-{}", people, sex, age)] += share * of_people;
            }
        }
    }
}

}  // namespace

ShapeAmounts face_shapes(const FaceSettings& face) {
    assert(face.age_years && face.sex && face.ancestry);
    ShapeAmounts amounts;
    add_kind(face, amounts);
    amounts[kWider] += std::lerp(kWomenWider, kMenWider, *face.sex);
    for (const FeatureEnds& ends : feature_ends()) {
        const double amount = face.of(ends.feature).value_or(0.0);
        if (amount == 0.0) continue;
        for (const auto& [shape, gain] : amount < 0.0 ? ends.less : ends.more)
            amounts[shape] += gain * std::abs(amount);
    }
    return amounts;
}

ShapeAmounts expression_shapes(const ExpressionSettings& expression, const Ancestry& ancestry) {
    const std::vector<std::pair<double, std::vector<std::string>>> movements = {
        {expression.smile, {"mouth-corner-puller"}},
        {expression.open_mouth, {"mouth-open"}},
        {expression.raised_brows, {"eyebrows-left-up", "eyebrows-right-up"}},
        {expression.squint, {"eye-left-slit", "eye-right-slit"}}};
    ShapeAmounts amounts;
    for (const auto& [amount, units] : movements) {
        for (const auto& [people, share] : shares_of_ancestry(ancestry)) {
            if (amount * share == 0.0) continue;
            for (const auto& unit : units)
                amounts[fmt::format("expression/units/{}/{}", people, unit)] += amount * share;
        }
    }
    return amounts;
}

}  // namespace understudy
