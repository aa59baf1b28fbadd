#include "setup/read_face.h"

#include <cmath>

#include <fmt/format.h>

namespace understudy {
namespace {

constexpr Range kYears{16.0, 90.0};
constexpr Range kFeature{-1.0, 1.0};
constexpr Range kShare{0.0, 1.0};

std::optional<double> read_sex(TableReader& table) {
    if (table.is_text("sex")) return table.choice<double>("sex", {{"woman", 0.0}, {"man", 1.0}});
    return table.quantity("sex", kPlainNumber, kShare);
}

std::optional<Ancestry> read_mix(TableReader table) {
    const auto african = table.quantity("african", kPlainNumber, kShare);
    const auto asian = table.quantity("asian", kPlainNumber, kShare);
    const auto european = table.quantity("european", kPlainNumber, kShare);
    table.report_unknown_keys();
    const Ancestry mix{african.value_or(0.0), asian.value_or(0.0), european.value_or(0.0)};
    const double sum = mix.african + mix.asian + mix.european;
    if (std::abs(sum - 1.0) <= 1e-3) return mix;
    table.log().add(table.place(), fmt::format("the shares of {} add up to {:.4g}", table.name(), sum),
                    "shares of african, asian and european that add up to 1");
    return std::nullopt;
}

std::optional<Ancestry> read_ancestry(TableReader& table) {
    if (table.is_text("ancestry")) {
        return table.choice<Ancestry>(
            "ancestry", {{"african", {1.0, 0.0, 0.0}}, {"asian", {0.0, 1.0, 0.0}}, {"european", {0.0, 0.0, 1.0}}});
    }
    const auto mix = table.table("ancestry");
    return mix ? read_mix(*mix) : std::nullopt;
}

}  // namespace

FaceSettings face_over(const FaceSettings& asked, const FaceSettings& own) {
    FaceSettings face = asked;
    if (!face.age_years) face.age_years = own.age_years;
    if (!face.sex) face.sex = own.sex;
    if (!face.ancestry) face.ancestry = own.ancestry;
    for (std::size_t f = 0; f < kFaceFeatures; ++f) {
        if (!face.features.at(f)) face.features.at(f) = own.features.at(f);
    }
    return face;
}

FaceSettings read_face(TableReader table) {
    FaceSettings face;
    face.age_years = table.quantity("age", kPlainNumber, kYears);
    face.sex = read_sex(table);
    face.ancestry = read_ancestry(table);
    for (std::size_t f = 0; f < kFaceFeatures; ++f) {
        face.features.at(f) = table.quantity(kFaceFeatureNames.at(f), kPlainNumber, kFeature);
    }
    table.report_unknown_keys();
    return face;
}

ExpressionSettings read_expression(TableReader table) {
    ExpressionSettings expression;
    expression.smile = table.quantity("smile", kPlainNumber, kShare).value_or(0.0);
    expression.open_mouth = table.quantity("open_mouth", kPlainNumber, kShare).value_or(0.0);
    expression.raised_brows = table.quantity("raised_brows", kPlainNumber, kShare).value_or(0.0);
    expression.squint = table.quantity("squint", kPlainNumber, kShare).value_or(0.0);
    table.report_unknown_keys();
    return expression;
}

}  // namespace understudy
