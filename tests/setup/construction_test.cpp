// What a modifier is built of: the kit's own files, changes to them, and parts that do not fit each other.
#include <algorithm>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "setup/kit_files.h"
#include "setup/kit_modifier.h"

namespace understudy {
namespace {

const std::string kBox =
    R"(shape = "rectangle", width = 0.6, height = 0.9, body = "box", depth = 0.35, back = 0.15, front_cloth = true)";
const std::string kDish = R"(shape = "disc", diameter = 0.55, body = "bowl", depth = 0.16, back = 0.16)";

Expected<Setup> with_modifier(const ScratchLibrary& scratch, const std::string& modifier) {
    return scratch.parse("[[light]]\nmeter = 4\nmodifier = " + modifier + "\n");
}

TEST(Construction, EveryKitFileReads) {
    const ScratchLibrary scratch;
    const auto names = toml_names_in(scratch.library().kit);
    EXPECT_GE(names.size(), 45U);
    for (const std::string& name : names) {
        const auto settings = read_kit_file(name, scratch.library().kit);
        EXPECT_TRUE(settings) << name << ": " << (settings ? "" : all_text(settings.problems()));
    }
}

// A scene takes a modifier of the kit and changes what it likes; the rest stays.
TEST(Construction, ASceneMayChangeAnyDimensionOrSurface) {
    const ScratchLibrary scratch;
    const auto setup = with_modifier(
        scratch,
        R"({ base = "octa-120", depth = "40 cm", inner_cloth = false, walls = "white", tube = { ring = "6 cm" } })");
    ASSERT_TRUE(setup) << all_text(setup.problems());
    const ModifierSettings& changed = setup->lights[0].modifier;
    const auto original = read_kit_file("octa-120", scratch.library().kit);
    ASSERT_TRUE(original && original->construction && changed.construction);
    EXPECT_EQ(changed.name, "octa-120 (changed)");
    EXPECT_DOUBLE_EQ(changed.construction->depth_m, 0.4);
    EXPECT_FALSE(changed.construction->inner_cloth);
    EXPECT_FALSE(changed.construction->lining.metal);
    EXPECT_DOUBLE_EQ(changed.construction->tube.diameter_m, 0.06);
    EXPECT_DOUBLE_EQ(changed.construction->tube.before_back_m, original->construction->tube.before_back_m);
    EXPECT_DOUBLE_EQ(std::get<PolygonShape>(changed.shape).diameter_m, 1.2);
    EXPECT_TRUE(original->construction->inner_cloth);
}

// The plain keys still make an even front.
TEST(Construction, APlainShapeHasNone) {
    const ScratchLibrary scratch;
    const auto setup = with_modifier(scratch, R"({ shape = "disc", diameter = 0.5, efficiency = 0.7 })");
    ASSERT_TRUE(setup);
    EXPECT_FALSE(setup->lights[0].modifier.construction);
    EXPECT_DOUBLE_EQ(setup->lights[0].modifier.efficiency, 0.7);
}

// The grid's depth follows from its angle: 6.35 mm and 38.86° are 18 mm, by arithmetic.
TEST(Construction, AGridMayBeGivenByItsAngle) {
    const ScratchLibrary scratch;
    const auto setup = with_modifier(scratch, "{ " + kDish + R"(, grid = { width = "6.35 mm", angle = 38.86 } })");
    ASSERT_TRUE(setup) << all_text(setup.problems());
    EXPECT_NEAR(setup->lights[0].modifier.construction->grid->depth_m, 0.018, 1e-5);
}

// radius² = 4 f · depth: 65 cm and 22 cm make 48.0 cm.
TEST(Construction, AParabolasDepthFollowsFromItsFocus) {
    const ScratchLibrary scratch;
    const auto settings = read_kit_file("parabolic-130", scratch.library().kit);
    ASSERT_TRUE(settings);
    EXPECT_NEAR(settings->construction->depth_m, 0.480, 5e-4);
    EXPECT_DOUBLE_EQ(settings->construction->tube.before_back_m, 0.22);
}

struct Misfit {
    std::string modifier;
    std::vector<std::string> words;
};

void PrintTo(const Misfit& misfit, std::ostream* stream) { *stream << misfit.modifier; }

class Misfits : public testing::TestWithParam<Misfit> {};

// One problem, on the modifier's line, that says what was expected.
TEST_P(Misfits, AreTold) {
    const ScratchLibrary scratch;
    const auto setup = with_modifier(scratch, GetParam().modifier);
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const std::string& text = setup.problems().front().text;
    EXPECT_NE(text.find("scene.toml:3:"), std::string::npos) << text;
    EXPECT_NE(text.find("; expected "), std::string::npos) << text;
    for (const std::string& word : GetParam().words) EXPECT_NE(text.find(word), std::string::npos) << text;
}

INSTANTIATE_TEST_SUITE_P(
    Parts, Misfits,
    testing::Values(
        Misfit{"{ " + kBox + R"(, inner_cloth = { behind_front = "50 cm" } })", {"inner_cloth", "0.5 m", "less than"}},
        Misfit{"{ " + kBox + R"(, inner_cloth = true })", {"inner_cloth", "a table"}},
        Misfit{"{ " + kBox + R"(, efficiency = 0.5 })", {"both a body and an efficiency"}},
        Misfit{"{ " + kBox + R"(, wals = "white" })", {"unknown key \"wals\"", "did you mean \"walls\"?"}},
        Misfit{"{ " + kBox + R"(, walls = "wite" })", {"wite", "did you mean \"white\"?"}},
        Misfit{"{ " + kBox + R"(, walls = { reflectance = 1.0 } })", {"reflectance", "0 to 0.98"}},
        Misfit{"{ " + kBox + R"(, walls = { roughness = 0.2 } })", {"no reflectance"}},
        Misfit{"{ " + kBox + R"(, tube = { ring = "5 cm", ball = "3 cm" } })", {"both ring and ball"}},
        Misfit{"{ " + kBox + R"(, tube = { ring = "40 cm" } })", {"tube", "0.408 m across", "between the walls"}},
        Misfit{"{ " + kBox + R"(, tube = { ring = "5 cm", before_back = "36 cm" } })", {"tube", "inside the body"}},
        Misfit{"{ " + kBox + R"(, tube = { ring = "5 cm", before_back = "2 mm" } })", {"tube", "inside the body"}},
        Misfit{"{ " + kBox + R"(, grid = { width = "6 mm" } })", {"grid has no depth"}},
        Misfit{"{ " + kBox + R"(, grid = { width = "6 mm", depth = "2 cm", angle = 30 } })", {"both depth and angle"}},
        Misfit{"{ " + kBox + R"(, grid = { width = "6 mm", depth = "30 cm" } })",
               {"grid", "2.29 degrees", "at least 4"}},
        Misfit{R"({ shape = "rectangle", width = 0.3, height = 0.9, body = "box", depth = 0.35, back = 0.4 })",
               {"back", "wider than the front"}},
        Misfit{R"({ shape = "disc", diameter = 0.5, body = "box", depth = 0.35, back = 0.15 })",
               {"box with a round front"}},
        Misfit{R"({ shape = "disc", diameter = 0.5, body = "bowl", depth = 0.2 })", {"has no back"}},
        Misfit{R"({ shape = "rectangle", width = 0.3, height = 0.9, body = "bowl", depth = 0.2, back = 0.1 })",
               {"round front", "disc"}},
        Misfit{"{ " + kDish + R"(, deflector = { diameter = "60 cm", before_back = "10 cm" } })",
               {"deflector", "no light comes out"}},
        Misfit{"{ " + kDish + R"(, deflector = { diameter = "15 cm", before_back = "3 cm" } })",
               {"deflector", "before the tube"}},
        Misfit{"{ " + kDish + R"(, deflector = { diameter = "15 cm", before_back = "20 cm" } })",
               {"deflector", "inside the body"}},
        Misfit{"{ " + kDish + R"(, deflector = { diameter = "15 cm" } })", {"deflector has no before_back"}},
        Misfit{"{ " + kDish + R"(, front_cloth = { transmittance = 0.7, reflectance = 0.5 } })", {"more than all"}},
        Misfit{R"({ shape = "disc", diameter = 1.3, body = "parabola", focal_length = 0.4 })",
               {"focal_length", "outside", "0.325 m"}},
        Misfit{R"({ shape = "disc", diameter = 1.3, body = "parabola" })", {"no focal_length"}},
        Misfit{R"({ shape = "sphere", diameter = 0.6, body = "ball" })", {"ball of nothing"}},
        Misfit{
            R"({ shape = "ring", diameter = 0.45, inner = 0.3, body = "ring", depth = 0.07, tube = { ring = "25 cm" } })",
            {"tube", "hole"}},
        Misfit{R"({ base = "ring-45", deflector = { diameter = 0.1, before_back = 0.05 } })",
               {"unknown key \"deflector\""}},
        Misfit{R"({ base = "octa-12O" })", {"octa-12O", "did you mean \"octa-120\"?"}},
        Misfit{R"({ base = 3 })", {"base", "a string"}},
        Misfit{R"({ base = "octa-120", depth = "9 m" })", {"depth", "9 m"}}));

// A file that is based on itself is told, not followed for ever.
TEST(Construction, AFileBasedOnItselfIsTold) {
    ScratchLibrary scratch;
    scratch.library().kit = scratch.folder() / "kit";
    std::filesystem::create_directories(scratch.library().kit);
    std::ofstream(scratch.library().kit / "snake.toml") << "base = \"snake\"\n";
    const auto settings = read_kit_file("snake", scratch.library().kit);
    ASSERT_FALSE(settings);
    EXPECT_NE(all_text(settings.problems()).find("based on itself"), std::string::npos);
}

}  // namespace
}  // namespace understudy
