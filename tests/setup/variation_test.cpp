// What --vary may say, and what a scene becomes by it.
#include "setup/variation.h"

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "setup/developed_keys.h"
#include "setup/vary_scene.h"

namespace understudy {
namespace {

using Texts = std::vector<std::string>;

Variation variation(const std::string& argument) {
    const auto read = read_variation(argument);
    if (!read) throw std::runtime_error(all_text(read.problems()));
    return *read;
}

TEST(Variation, HasAPathAndItsValues) {
    const Variation modifier = variation("light.key.modifier=strip-30x120, octa-120,dish-55");
    EXPECT_EQ(modifier.path, (Texts{"light", "key", "modifier"}));
    EXPECT_EQ(modifier.values, (Texts{"strip-30x120", "octa-120", "dish-55"}));
    EXPECT_EQ(variation("light.\"no. 2\".meter=4").path, (Texts{"light", "no. 2", "meter"}));
    EXPECT_EQ(variation("light.key.meter=5.6 + 3/10,1/8 + 0.3").values, (Texts{"5.6 + 3/10", "1/8 + 0.3"}));
}

TEST(Variation, ListsAndTablesAreOneValue) {
    EXPECT_EQ(variation("light.key.position=[0, 1.5, 1],[0, 2, 1]").values, (Texts{"[0, 1.5, 1]", "[0, 2, 1]"}));
    EXPECT_EQ(variation("sitter.expression={ smile = 0.4, squint = 1 },{}").values,
              (Texts{"{ smile = 0.4, squint = 1 }", "{}"}));
    EXPECT_EQ(variation("title=\"a, b\",c").values, (Texts{"\"a, b\"", "c"}));
}

// By arithmetic: 0.6 + i · 1.4 / 4; and 0.5 · 2^i.
TEST(Variation, RangesHaveBothTheirEnds) {
    EXPECT_EQ(variation("light.key.distance=0.6 m..2 m/5").values,
              (Texts{"0.6 m", "0.95 m", "1.3 m", "1.65 m", "2 m"}));
    EXPECT_EQ(variation("light.key.distance=0.6..2 m/3").values, (Texts{"0.6 m", "1.3 m", "2 m"}));
    EXPECT_EQ(variation("sitter.turn=-40..40/5").values, (Texts{"-40", "-20", "0", "20", "40"}));
    EXPECT_EQ(variation("sitter.turn=30..-30/3").values, (Texts{"30", "0", "-30"}));
    EXPECT_EQ(variation("light.key.distance=0.5 m..4 m*4").values, (Texts{"0.5 m", "1 m", "2 m", "4 m"}));
    EXPECT_EQ(variation("camera.iso=50, 100..400/2").values, (Texts{"50", "100", "400"}));
    EXPECT_EQ(variation("sitter.head=../heads/one.obj").values, (Texts{"../heads/one.obj"}));
}

TEST(Variation, MistakesAreToldWithTheArgument) {
    const std::vector<std::pair<std::string, std::string>> mistakes{
        {"light.key.modifier", "no \"=\""},
        {"light..modifier=a", "empty part"},
        {"=a", "empty part"},
        {"light.key.modifier=a,,b", "a value is empty"},
        {"light.key.modifier=", "a value is empty"},
        {"light.key.position=[0, 1", "left open"},
        {"title=\"a", "left open"},
        {"light.key.distance=0.6 m..2 m", "is no range"},
        {"light.key.distance=0.6 m..2 m/1", "is no range"},
        {"light.key.distance=0.6 m..2 m/49", "is no range"},
        {"light.key.distance=0.6 m..2 m/five", "is no range"},
        {"light.key.distance=0.6 m../5", "is no range"},
        {"light.key.distance=60 cm..2 m/5", "two units"},
        {"light.key.distance=2 m..2 m/5", "ends where it begins"},
        {"sitter.turn=-1..1*3", "no even ratio"},
        {"title=a\nb", "control character"}};
    for (const auto& [argument, words] : mistakes) {
        const auto read = read_variation(argument);
        ASSERT_FALSE(read) << argument;
        EXPECT_NE(read.problems().front().text.find("--vary "), std::string::npos) << all_text(read.problems());
        EXPECT_NE(read.problems().front().text.find(words), std::string::npos) << all_text(read.problems());
        EXPECT_NE(read.problems().front().text.find("expected"), std::string::npos) << all_text(read.problems());
    }
}

class VariedScenes : public testing::Test {
  protected:
    void write(const std::string& text) const { std::ofstream(file()) << text; }
    std::filesystem::path file() const { return scratch_.folder() / "scene.toml"; }

    Expected<std::vector<VariedScene>> vary(const Texts& arguments) const {
        std::vector<Variation> variations;
        for (const std::string& argument : arguments) variations.push_back(variation(argument));
        return vary_scene(file(), variations, scratch_.library());
    }
    std::vector<VariedScene> scenes(const Texts& arguments) const {
        const auto varied = vary(arguments);
        if (!varied) throw std::runtime_error(all_text(varied.problems()));
        return *varied;
    }
    std::string told(const Texts& arguments) const {
        const auto varied = vary(arguments);
        return varied ? "" : all_text(varied.problems());
    }

    ScratchLibrary scratch_;
};

const std::string kScene =
    "[camera]\nfocal_length = \"85 mm\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n"
    "[[light]]\nname = \"rim\"\nmodifier = { base = \"octa-120\", depth = \"40 cm\" }\nfrom_key = -1\n"
    "[[panel]]\nname = \"card\"\n[flash.studio]\nenergy = \"500 J\"\n";

TEST_F(VariedScenes, TakeEachValueInTurn) {
    write(kScene);
    const auto lengths = scenes({"camera.focal_length=50,85 mm,\"150 mm\""});
    ASSERT_EQ(lengths.size(), 3U);
    EXPECT_DOUBLE_EQ(lengths[0].setup.camera.focal_length_m, 0.050);  // a bare number as scenes/README.md has it
    EXPECT_DOUBLE_EQ(lengths[1].setup.camera.focal_length_m, 0.085);
    EXPECT_DOUBLE_EQ(lengths[2].setup.camera.focal_length_m, 0.150);
    EXPECT_EQ(lengths[0].setup.lights.size(), 2U);

    // A light goes by its usual name too, and a table that is not in the file is made.
    EXPECT_EQ(std::get<StandPlacement>(scenes({"light.key.angle=-30"})[0].setup.lights[0].placement.where).angle_deg,
              -30.0);
    EXPECT_EQ(scenes({"light.rim.name=edge"})[0].setup.lights[1].name, "edge");
    EXPECT_EQ(scenes({"sitter.expression.smile=0.4"}).size(), 1U);
    EXPECT_EQ(scenes({"sitter.head=birch,ball"}).size(), 2U);
    EXPECT_DOUBLE_EQ(scenes({"backdrop.distance=3 m"})[0].setup.backdrop->distance_m, 3.0);
    EXPECT_EQ(scenes({"panel.card.size=[0.5, 0.7]"})[0].setup.panels[0].height_m, 0.7);
    EXPECT_EQ(scenes({"picture.strands=\"true\""}).size(), 1U);
    EXPECT_DOUBLE_EQ(scenes({"flash.studio.energy=250 J"})[0].setup.flashes[0].full_energy_j, 250.0);
    EXPECT_EQ(scenes({"light.rim.modifier.depth=30 cm..50 cm/2"}).size(), 2U);
    EXPECT_EQ(scenes({"title=1/8 # not a comment"})[0].setup.title, "1/8 # not a comment");
}

// A person who changes one thing means it in place of what says the same otherwise.
TEST_F(VariedScenes, OneWayToSayAThingStandsInPlaceOfAnother) {
    write(kScene);
    const understudy::Setup energy = scenes({"light.key.energy=100 J"})[0].setup;
    EXPECT_DOUBLE_EQ(std::get<PowerFromEnergy>(energy.lights[0].power).joules, 100.0);
    const understudy::Setup placed = scenes({"light.key.position=[0.5, 1.6, 1]"})[0].setup;
    EXPECT_EQ(std::get<Double3>(placed.lights[0].placement.where), Double3(0.5, 1.6, 1.0));
    const understudy::Setup raised = scenes({"light.key.elevation=30"})[0].setup;
    EXPECT_TRUE(std::holds_alternative<StandPlacement>(raised.lights[0].placement.where));
}

TEST_F(VariedScenes, TwoMakeAGrid) {
    write(kScene);
    const auto grid = scenes({"light.key.meter=4,8", "camera.iso=100,200,400"});
    ASSERT_EQ(grid.size(), 6U);
    EXPECT_EQ(grid[0].values, (Texts{"4", "100"}));
    EXPECT_EQ(grid[1].values, (Texts{"4", "200"}));
    EXPECT_EQ(grid[5].values, (Texts{"8", "400"}));
    EXPECT_EQ(grid[4].setup.camera.exposure.iso, 200.0);
}

TEST_F(VariedScenes, WrongPathsAreToldWithTheNearestName) {
    write(kScene);
    const std::vector<std::pair<std::string, Texts>> mistakes{
        {"light.kye.meter=4", {"--vary light.kye.meter: there is no light \"kye\"", "did you mean \"key\"?"}},
        {"panel.crad.size=[1, 1]", {"there is no panel \"crad\"", "card"}},
        {"flash.studoi.energy=5 J", {"there is no flash head \"studoi\"", "did you mean \"studio\"?"}},
        {"light.key=4", {"names a light and no key of it", "light.NAME.KEY"}},
        {"light=4", {"names no key", "light.NAME.KEY"}},
        {"light.key.modifer=bulb", {"--vary light.key.modifer=bulb: unknown key", "did you mean \"modifier\"?"}},
        {"camra.iso=100", {"--vary camra.iso=100: unknown key \"camra\"", "did you mean \"camera\"?"}},
        {"camera.focal=100", {"--vary camera.focal=100: unknown key \"focal\""}},
        {"light.key.modifier.depth=1 m", {"modifier is the string \"bulb\"", "a table that holds depth"}},
        {"light.key.modifier=octa-121", {"--vary light.key.modifier=octa-121: ", "did you mean \"octa-120\"?"}},
        {"camera.iso=-5", {"--vary camera.iso=-5: [camera] iso is -5, out of range"}},
        {"light.key.distance=2 lx", {"--vary light.key.distance=2 lx: ", "units"}},
        {"light.key.position=[1, 2]", {"--vary light.key.position=[1, 2]: ", "a list of 3"}},
        {"light.key.position=[1, 2 3]", {"is not a value", "as in TOML"}},
        {"sitter.gaze=kye", {"--vary sitter.gaze=kye: [sitter] gaze is the unknown name", "did you mean \"key\"?"}}};
    for (const auto& [argument, words] : mistakes) {
        const std::string text = told({argument});
        for (const std::string& word : words) EXPECT_NE(text.find(word), std::string::npos) << argument << '\n' << text;
        EXPECT_NE(text.find("--vary "), std::string::npos) << text;
        EXPECT_NE(text.find("expected"), std::string::npos) << text;
    }
}

TEST_F(VariedScenes, AllThatIsWrongIsToldOnce) {
    write(kScene);
    const std::string text = told({"camera.iso=-1,100,-2", "light.key.meter=4,8"});
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 2) << text;
    // What the file itself says is told with its place and with what was varied.
    write(kScene + "[backdrop]\nsurface = \"none\"\n");
    const std::string aim = told({"light.key.aim=face,backdrop"});
    EXPECT_NE(aim.find("--vary light.key.aim=backdrop: "), std::string::npos) << aim;
    write("[camera]\niso = -1\n" + kScene.substr(kScene.find("[[light]]")));
    const std::string base = told({"light.key.meter=4,8"});
    EXPECT_TRUE(base.starts_with(file().string() + ":2:7: ")) << base;
}

TEST_F(VariedScenes, AreNoMoreThanASheetHolds) {
    write(kScene);
    EXPECT_NE(told({"camera.iso=100,200", "light.key.meter=4,8", "light.rim.from_key=0,1"}).find("given 3 times"),
              std::string::npos);
    EXPECT_NE(told({"camera.iso=100,200", "camera.iso=100,200"}).find("given twice"), std::string::npos);
    EXPECT_EQ(scenes({"sitter.turn=0..5/6", "sitter.chin=0..7/8"}).size(), 48U);
    EXPECT_NE(told({"sitter.turn=0..6/7", "sitter.chin=0..6/7"}).find("49 pictures; expected at most 48"),
              std::string::npos);
}

TEST(DevelopedKeys, AreThoseThatLeaveThePathsAlone) {
    const auto later = [](const std::string& argument) {
        return comes_in_at_development(variation(argument + "=1").path);
    };
    for (const char* key : {"light.key.meter", "light.key.from_key", "light.key.gel", "camera.iso", "camera.shutter",
                            "picture.white_balance", "room.ambient", "flash.studio.energy"}) {
        EXPECT_TRUE(later(key)) << key;
    }
    // The aperture sets what is sharp; distance and modifier where light comes from.
    for (const char* key : {"camera.aperture", "light.key.distance", "light.key.modifier", "light.key.modifier.meter",
                            "sitter.head", "picture.seed", "panel.card.size", "room.size"}) {
        EXPECT_FALSE(later(key)) << key;
    }
}

}  // namespace
}  // namespace understudy
