// What stands round the sitter as the file says it: surfaces, panels, backdrop, room.
#include <algorithm>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "spectrum/smooth_reflectance.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

Setup read(const std::string& text) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(text + "\n" + kLight);
    EXPECT_TRUE(setup) << all_text(setup.problems());
    return setup ? *setup : Setup{};
}

PanelSettings read_one_panel(const std::string& keys) {
    const auto setup = read("[[panel]]\n" + keys);
    return setup.panels.empty() ? PanelSettings{} : setup.panels[0];
}

TEST(Surroundings, AFrameOfClothTakesItsSharesFromANameOrATable) {
    const auto woven = std::get<Cloth>(read_one_panel("surface = \"grid-cloth\"").surface);
    const auto full = std::get<Cloth>(read_one_panel("surface = \"diffusion\"").surface);
    const auto half = std::get<Cloth>(read_one_panel("surface = \"half-diffusion\"").surface);
    const auto quarter = std::get<Cloth>(read_one_panel("surface = \"quarter-diffusion\"").surface);
    // Stops taken from light far behind: the trade calls diffusers one to two stops, thinner ones less, grid cloth two
    // and a little (common practice, no source).
    const auto stops = [](const Cloth& cloth) { return -std::log2(cloth.transmits + cloth.open); };
    EXPECT_NEAR(stops(woven), 2.2, 0.05);
    EXPECT_NEAR(stops(full), 1.4, 0.05);
    EXPECT_NEAR(stops(half), 0.86, 0.05);
    EXPECT_NEAR(stops(quarter), 0.51, 0.05);
    EXPECT_EQ(full.open, 0.0);
    for (const Cloth& cloth : {woven, full, half, quarter})
        EXPECT_LT(cloth.reflects + cloth.transmits + cloth.open, 1.0);
    const auto own =
        std::get<Cloth>(read_one_panel("surface = { reflects = 0.5, transmits = 0.3, open = 0.1 }").surface);
    EXPECT_DOUBLE_EQ(own.reflects, 0.5);
    EXPECT_DOUBLE_EQ(own.transmits, 0.3);
    EXPECT_DOUBLE_EQ(own.open, 0.1);
}

TEST(Surroundings, ARoundPanelHasADiameter) {
    const PanelSettings disc = read_one_panel("shape = \"disc\"\ndiameter = \"80 cm\"");
    EXPECT_EQ(disc.shape, PanelShape::kDisc);
    EXPECT_DOUBLE_EQ(disc.width_m, 0.8);
    EXPECT_DOUBLE_EQ(disc.height_m, 0.8);
    EXPECT_DOUBLE_EQ(read_one_panel("shape = \"disc\"").width_m, 1.1);
    EXPECT_EQ(read_one_panel("size = [1, 2]").shape, PanelShape::kRectangle);
}

// Under the chin: below the picture's lower edge and before the chest, tipped toward the face; any of it may be said
// otherwise.
TEST(Surroundings, AReflectorUnderTheChinNeedsNoNumbers) {
    const auto setup = read(
        "[[panel]]\nplace = \"under-chin\"\n[[panel]]\nname = \"low\"\nplace = \"under-chin\"\n"
        "distance = 0.8\nelevation = -40\naim = \"face\"");
    const auto& stand = std::get<StandPlacement>(setup.panels[0].placement.where);
    EXPECT_DOUBLE_EQ(stand.angle_deg, 0.0);
    EXPECT_DOUBLE_EQ(*stand.elevation_deg, -55.0);
    EXPECT_DOUBLE_EQ(stand.distance_m, 0.65);
    EXPECT_FALSE(stand.height_m);
    EXPECT_EQ(setup.panels[0].placement.aim.target, Aim::Target::kPoint);
    EXPECT_DOUBLE_EQ(setup.panels[0].placement.aim.point_m.y, 1.75);
    const auto& low = std::get<StandPlacement>(setup.panels[1].placement.where);
    EXPECT_DOUBLE_EQ(*low.elevation_deg, -40.0);
    EXPECT_DOUBLE_EQ(low.distance_m, 0.8);
    EXPECT_EQ(setup.panels[1].placement.aim.target, Aim::Target::kFace);
}

// In sRGB, code 118 is 0.18 of white to the nearest code (IEC 61966-2-1).
TEST(Surroundings, AColourBecomesAReflectance) {
    const auto grey = read("[backdrop]\nsurface = { colour = [118, 118, 118] }");
    EXPECT_NEAR(std::get<Tint>(grey.backdrop->surface).reflectance.at(550.0F), 0.18F, 0.002F);
    const auto red = read("[backdrop]\nsurface = { lab = [40, 50, 30] }");
    const Lab seen = daylight_colour(std::get<Tint>(red.backdrop->surface).reflectance);
    EXPECT_LT(colour_difference(seen, {40.0, 50.0, 30.0}), 0.05);
    EXPECT_TRUE(std::holds_alternative<Tint>(read("[backdrop]\nsurface = \"navy\"").backdrop->surface));
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(read("[backdrop]\nsurface = \"light-grey\"").backdrop->surface).value, 0.5);
}

TEST(Surroundings, APaintedBackdropHasTwoTonesAndAScale) {
    const auto setup =
        read("[backdrop]\nsurface = { mottled = [0.3, { colour = [90, 80, 60] }], scale = \"40 cm\", seed = 3 }");
    const auto& paint = std::get<Mottled>(setup.backdrop->surface);
    EXPECT_NEAR(paint.first.at(500.0F), 0.3F, 1e-6F);
    EXPECT_LT(paint.second.at(450.0F), paint.second.at(600.0F));
    EXPECT_DOUBLE_EQ(paint.scale_m, 0.4);
    EXPECT_EQ(paint.seed, 3U);
}

TEST(Surroundings, ARoomsCeilingAndFloorAreAsItsWallsUnlessSaid) {
    const auto plain = read("[backdrop]\nsurface = \"none\"\n[room]\nsize = [4, 5, 3]\nwalls = 0.6");
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(plain.room.ceiling).value, 0.6);
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(plain.room.floor).value, 0.6);
    const auto painted =
        read("[room]\nsize = [4, 5, 3]\nwalls = \"cream\"\nceiling = \"white\"\nfloor = { colour = [90, 60, 40] }");
    EXPECT_TRUE(std::holds_alternative<Tint>(painted.room.walls));
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(painted.room.ceiling).value, 0.9);
    EXPECT_TRUE(std::holds_alternative<Tint>(painted.room.floor));
}

// One mistake each.
struct Mistake {
    std::string text;
    std::string at;
    std::vector<std::string> words;
};
void PrintTo(const Mistake& mistake, std::ostream* stream) { *stream << mistake.text; }

class SurroundingMistakes : public testing::TestWithParam<Mistake> {};

TEST_P(SurroundingMistakes, AreToldWithTheirPlace) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(GetParam().text + "\n" + kLight);
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const std::string& text = setup.problems().front().text;
    const std::string place = (scratch.folder() / "scene.toml").string() + ":" + GetParam().at + ": ";
    EXPECT_EQ(text.find(place), 0U) << text << "\nnot at " << GetParam().at;
    EXPECT_NE(text.find("; expected "), std::string::npos) << text;
    for (const std::string& word : GetParam().words)
        EXPECT_NE(text.find(word), std::string::npos) << text << ": " << word;
}

INSTANTIATE_TEST_SUITE_P(
    Panel, SurroundingMistakes,
    testing::Values(
        Mistake{"[[panel]]\nsurface = \"difusion\"", "2:11", {"difusion", "did you mean \"diffusion\"?"}},
        Mistake{"[[panel]]\nsurface = { reflects = 0.7, transmits = 0.5 }", "2:11", {"1.2 in all", "at most 1"}},
        Mistake{"[[panel]]\nsurface = { reflects = 0.7, transmit = 0.2 }", "2:29", {"transmit", "transmits"}},
        Mistake{"[[panel]]\nsurface = { open = 1.5 }", "2:20", {"open", "1.5", "0 to 1"}},
        Mistake{"[[panel]]\nsurface = { }", "2:11", {"colour = [r, g, b]", "reflects"}},
        Mistake{"[[panel]]\nsurface = { mottled = [0.1, 0.2] }", "2:11", {"reflects"}},
        Mistake{"[[panel]]\nsurface = 0.99", "2:11", {"0.99", "0 to 0.98"}},
        Mistake{"[[panel]]\nsurface = [1]", "2:11", {"surface"}},
        Mistake{"[[panel]]\nshape = \"disk\"", "2:9", {"did you mean \"disc\"?"}},
        Mistake{"[[panel]]\nshape = \"disc\"\nsize = [1, 1]", "3:1", {"disc", "no size", "diameter"}},
        Mistake{"[[panel]]\ndiameter = 1", "2:1", {"rectangle", "no diameter"}},
        Mistake{"[[panel]]\nshape = \"disc\"\ndiameter = 0", "3:12", {"diameter", "0 m"}},
        Mistake{"[[panel]]\nplace = \"chin\"", "2:9", {"chin", "under-chin"}},
        Mistake{"[[panel]]\nplace = \"under-chin\"\nheight = 1\nelevation = 3", "4:1", {"both height and elevation"}}));

INSTANTIATE_TEST_SUITE_P(
    Backdrop, SurroundingMistakes,
    testing::Values(
        Mistake{"[backdrop]\nsurface = \"diffusion\"", "2:11", {"diffusion", "unknown name"}},
        Mistake{"[backdrop]\nsurface = { reflects = 0.5 }", "2:11", {"no surface that could be here", "mottled"}},
        Mistake{"[backdrop]\nsurface = { colour = [1, 2] }", "2:22", {"a list of 3"}},
        Mistake{"[backdrop]\nsurface = { colour = [300, 0, 0] }", "2:23", {"300", "0 to 255"}},
        Mistake{"[backdrop]\nsurface = { colour = [255, 255, 255] }", "2:22", {"no matt surface", "darker"}},
        Mistake{"[backdrop]\nsurface = { lab = [50, 150, 0] }", "2:19", {"no matt surface"}},
        Mistake{"[backdrop]\nsurface = { colour = [9, 9, 9], lab = [50, 0, 0] }", "2:33", {"both colour and lab"}},
        Mistake{"[backdrop]\nsurface = { mottled = 0.5 }", "2:23", {"a list of two"}},
        Mistake{"[backdrop]\nsurface = { mottled = [0.1, 0.2, 0.3] }", "2:23", {"a list of two"}},
        Mistake{"[backdrop]\nsurface = { mottled = [0.1, \"gery\"] }", "2:29", {"gery", "did you mean \"grey\"?"}},
        Mistake{"[backdrop]\nsurface = { mottled = [0.1, \"gold\"] }", "2:29", {"metal", "matt"}},
        Mistake{"[backdrop]\nsurface = { mottled = [0.1, 0.2], scale = 9 }", "2:43", {"scale", "9 m"}},
        Mistake{"[backdrop]\nsurface = { mottled = [0.1, 0.2], seed = -1 }", "2:42", {"seed"}}));

INSTANTIATE_TEST_SUITE_P(
    Room, SurroundingMistakes,
    testing::Values(
        Mistake{"[room]\nceiling = 0.5", "2:1", {"ceiling without a size"}},
        Mistake{"[room]\nfloor = \"white\"", "2:1", {"floor without a size"}},
        Mistake{"[room]\nsize = [4, 5, 3]\nwalls = \"diffusion\"", "3:9", {"diffusion"}},
        Mistake{"[room]\nsize = [4, 5, 3]\nfloor = \"none\"", "3:9", {"none"}},
        Mistake{"[room]\nsize = [4, 5, 3]\n[backdrop]\ndistance = 2.6", "4:12", {"2.6 m", "2.5 m behind the mark"}},
        Mistake{"[room]\nsize = [2.5, 5, 3]\n[backdrop]\nwidth = 3", "4:9", {"3 m", "2.5 m wide"}},
        Mistake{"[room]\nsize = [4, 5, 3]\n[backdrop]\nheight = 3.5", "4:10", {"3.5 m", "3 m high"}},
        Mistake{"[room]\nsize = [4, 5, 2.4]", "2:8", {"2.7 m", "2.4 m high", "[backdrop] height of at most 2.4 m"}}));

}  // namespace
}  // namespace understudy
