#include "setup/read_picture.h"

#include <cctype>
#include <limits>

#include "setup/read_colour.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

WhiteBalance read_white_balance(TableReader& table) {
    WhiteBalance balance;
    const Value* value = table.find("white_balance");
    if (value == nullptr) {
        return balance;
    }
    const std::string* text = std::get_if<std::string>(&value->content);
    if (text != nullptr && !text->empty() && std::isdigit(static_cast<unsigned char>(text->front())) == 0) {
        if (const auto named = white_balance_named(*text)) return *named;
        std::vector<std::string> valid = cie_illuminant_names();
        valid.insert(valid.begin(), {"flash", "tungsten", "as-lit"});
        table.unknown_name("white_balance", *text, valid);
        return balance;
    }
    balance.kelvin = table.quantity("white_balance", kTemperature, kColourTemperatures).value_or(balance.kelvin);
    return balance;
}

}  // namespace

std::optional<WhiteBalance> white_balance_named(const std::string& name) {
    if (name == "flash") return WhiteBalance{false, 5500.0, ""};
    if (name == "tungsten") return WhiteBalance{false, 3200.0, ""};
    if (name == "as-lit") return WhiteBalance{true, 5500.0, ""};
    if (cie_illuminant(name)) return WhiteBalance{false, 5500.0, name};
    return std::nullopt;
}

PictureSettings read_picture(TableReader table) {
    PictureSettings picture;
    picture.width = static_cast<int>(table.whole("width", 16, 16384).value_or(picture.width));
    picture.height = static_cast<int>(table.whole("height", 16, 16384).value_or(picture.height));
    picture.treatment = table
                            .choice<Treatment>("treatment", {{"colour", Treatment::kColour},
                                                             {"black-and-white", Treatment::kBlackAndWhite}})
                            .value_or(picture.treatment);
    picture.samples = static_cast<int>(table.whole("samples", 1, 65536).value_or(picture.samples));
    picture.white_balance = read_white_balance(table);
    picture.seed =
        static_cast<unsigned>(table.whole("seed", 0, std::numeric_limits<unsigned>::max()).value_or(picture.seed));
    picture.skin = table.choice<SkinLight>("skin", {{"deep", SkinLight::kUnderSkin}, {"flat", SkinLight::kAtSurface}})
                       .value_or(picture.skin);
    picture.strands =
        table.choice<StrandWidth>("strands", {{"widened", StrandWidth::kWidened}, {"true", StrandWidth::kTrue}})
            .value_or(picture.strands);
    table.report_unknown_keys();
    return picture;
}

}  // namespace understudy
