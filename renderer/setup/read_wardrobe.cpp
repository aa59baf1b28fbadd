#include "setup/read_wardrobe.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/read_finish.h"

namespace understudy {
namespace {

const Choices<Outfit> kOutfits{{"crew-neck", Outfit::kCrewNeck},
                               {"high-neck", Outfit::kHighNeck},
                               {"open-collar", Outfit::kOpenCollar},
                               {"jacket", Outfit::kJacket},
                               {"bare-shoulders", Outfit::kBareShoulders}};
const Choices<Fabric> kFabrics{
    {"jersey", Fabric::kJersey}, {"cotton", Fabric::kCotton}, {"wool", Fabric::kWool}, {"velvet", Fabric::kVelvet}};
const Choices<GlassesFrame> kFrames{
    {"round", GlassesFrame::kRound}, {"square", GlassesFrame::kSquare}, {"half-rim", GlassesFrame::kHalfRim}};

bool is_table(TableReader& table, std::string_view key) {
    const Value* value = table.find(key);
    return value != nullptr && std::holds_alternative<ValueTable>(value->content);
}

TableReader table_of(TableReader& sitter, std::string_view key) {
    return {*sitter.find(key), fmt::format("{} {}", sitter.name(), key), sitter.log()};
}

// A cloth's or a felt's: a grey or a colour, no metal.
std::optional<Spectrum> read_dye(TableReader& table, std::string_view key) {
    const auto finish = read_finish(table, key, Covering::kWall);
    if (!finish) return std::nullopt;
    if (const auto* grey = std::get_if<Reflectance>(&*finish)) return Spectrum(static_cast<float>(grey->value));
    if (const auto* tint = std::get_if<Tint>(&*finish)) return tint->reflectance;
    table.wrong(key, "is a metal", "a grey or a colour: what is worn there is cloth");
    return std::nullopt;
}

// "none", a kind by its name, or a table; anything else is a problem that tells what could be said.
bool is_said(TableReader& sitter, std::string_view key, std::string_view expected) {
    const Value* value = sitter.find(key);
    if (value == nullptr || sitter.is_text(key) || is_table(sitter, key)) return value != nullptr;
    sitter.wrong(key, "is " + kind_of(*value), expected);
    return false;
}

}  // namespace

ClothesSettings read_clothes(TableReader& sitter) {
    ClothesSettings clothes;
    if (!is_said(sitter, "clothes", "the name of an outfit, or a table with outfit, fabric and colour")) return clothes;
    if (sitter.is_text("clothes")) {
        clothes.outfit = sitter.choice<Outfit>("clothes", kOutfits).value_or(clothes.outfit);
        return clothes;
    }
    TableReader table = table_of(sitter, "clothes");
    clothes.outfit = table.choice<Outfit>("outfit", kOutfits).value_or(clothes.outfit);
    clothes.fabric = table.choice<Fabric>("fabric", kFabrics);
    clothes.colour = read_dye(table, "colour").value_or(clothes.colour);
    clothes.shirt_colour = read_dye(table, "shirt").value_or(clothes.shirt_colour);
    if (table.has("shirt") && clothes.outfit != Outfit::kJacket) {
        table.log().add(table.key_place_of("shirt"),
                        fmt::format("{} has a shirt without a jacket over it", table.name()),
                        "shirt with outfit = \"jacket\"; the colour of other outfits is colour");
    }
    table.report_unknown_keys();
    return clothes;
}

std::optional<GlassesSettings> read_glasses(TableReader& sitter) {
    if (!is_said(sitter, "glasses", "\"none\", a frame by its name, or a table")) return std::nullopt;
    GlassesSettings glasses;
    if (sitter.is_text("glasses")) {
        if (*sitter.text("glasses") == "none") return std::nullopt;
        const auto frame = sitter.choice<GlassesFrame>("glasses", kFrames);
        if (!frame) return std::nullopt;
        glasses.frame = *frame;
        return glasses;
    }
    TableReader table = table_of(sitter, "glasses");
    glasses.frame = table.choice<GlassesFrame>("frame", kFrames).value_or(glasses.frame);
    glasses.colour = read_finish(table, "colour", Covering::kWall).value_or(glasses.colour);
    glasses.glass =
        table.choice<LensCoating>("glass", {{"plain", LensCoating::kPlain}, {"coated", LensCoating::kCoated}})
            .value_or(glasses.glass);
    glasses.lean_deg = table.quantity("lean", kAngle, {-10.0, 25.0}).value_or(glasses.lean_deg);
    glasses.curvature_m = table.quantity("curvature", kLength, {0.05, 1.0}).value_or(glasses.curvature_m);
    table.report_unknown_keys();
    return glasses;
}

std::optional<HatSettings> read_hat(TableReader& sitter) {
    if (!is_said(sitter, "hat", R"("none", "brimmed" or a table with brim, tilt and colour)")) return std::nullopt;
    HatSettings hat;
    if (sitter.is_text("hat")) {
        const auto worn = sitter.choice<bool>("hat", {{"none", false}, {"brimmed", true}});
        return worn.value_or(false) ? std::optional(hat) : std::nullopt;
    }
    TableReader table = table_of(sitter, "hat");
    hat.brim_m = table.quantity("brim", kLength, {0.01, 0.25}).value_or(hat.brim_m);
    hat.tilt_deg = table.quantity("tilt", kAngle, {-20.0, 30.0}).value_or(hat.tilt_deg);
    hat.colour = read_dye(table, "colour").value_or(hat.colour);
    table.report_unknown_keys();
    return hat;
}

}  // namespace understudy
