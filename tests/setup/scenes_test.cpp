#include <set>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "setup/kit_files.h"

namespace understudy {
namespace {

const std::filesystem::path kScenes = std::filesystem::path(UNDERSTUDY_SOURCE_DIR) / "scenes";

TEST(Scenes, EveryOneOfThemIsValidAndExposedAsItsKeyIsMetered) {
    const ScratchLibrary scratch;
    std::set<std::string> heads;
    const std::vector<std::string> names = toml_names_in(kScenes);
    EXPECT_GE(names.size(), 7U);
    for (const std::string& name : names) {
        const auto setup = read_setup(kScenes / (name + ".toml"), scratch.library());
        ASSERT_TRUE(setup) << all_text(setup.problems());
        const PowerFromMeter* power = std::get_if<PowerFromMeter>(&setup->lights.front().power);
        if (power != nullptr) {
            EXPECT_DOUBLE_EQ(power->f_number, setup->camera.exposure.aperture) << name;
        }
        if (const LibraryHead* head = std::get_if<LibraryHead>(&setup->sitter.head)) {
            heads.insert(head->name);
        }
    }
    EXPECT_EQ(heads, (std::set<std::string>{"aspen", "birch", "hazel", "juniper", "rowan", "willow"}));
}

TEST(Kit, EveryModifierHasItsCatalogueSize) {
    const ScratchLibrary scratch;
    const auto shape_of = [&](const std::string& name) {
        const auto setup = scratch.parse("[[light]]\nmodifier = \"" + name + "\"\nmeter = 4\n");
        EXPECT_TRUE(setup) << all_text(setup.problems());
        EXPECT_EQ(setup->lights[0].modifier.name, name);
        return setup->lights[0].modifier;
    };
    for (const std::string& name : toml_names_in(scratch.library().kit)) {
        shape_of(name);
    }
    const RectangleShape strip = std::get<RectangleShape>(shape_of("strip-30x120").shape);
    EXPECT_DOUBLE_EQ(strip.width_m, 0.3);
    EXPECT_DOUBLE_EQ(strip.height_m, 1.2);
    const RectangleShape box = std::get<RectangleShape>(shape_of("softbox-60x90").shape);
    EXPECT_DOUBLE_EQ(box.width_m, 0.6);
    EXPECT_DOUBLE_EQ(box.height_m, 0.9);
    const PolygonShape octa = std::get<PolygonShape>(shape_of("octa-120").shape);
    EXPECT_EQ(octa.sides, 8);
    EXPECT_DOUBLE_EQ(octa.diameter_m, 1.2);
    EXPECT_DOUBLE_EQ(std::get<DiscShape>(shape_of("dish-55").shape).diameter_m, 0.55);
    EXPECT_DOUBLE_EQ(std::get<SphereShape>(shape_of("bulb").shape).diameter_m, 0.1);
    EXPECT_TRUE(shape_of("bulb").construction);
    EXPECT_TRUE(shape_of("octa-120").construction);
}

TEST(Kit, AMistakeInAKitFileIsToldWithItsOwnPlace) {
    ScratchLibrary scratch;
    scratch.library().kit = scratch.folder() / "kit";
    std::filesystem::create_directories(scratch.library().kit);
    std::ofstream(scratch.library().kit / "odd.toml") << "shape = \"disc\"\ndiametre = \"1 m\"\n";
    const auto setup = scratch.parse("[[light]]\nmodifier = \"odd\"\nmeter = 4\n");
    ASSERT_FALSE(setup);
    EXPECT_NE(all_text(setup.problems()).find("odd.toml:2:1: unknown key \"diametre\""), std::string::npos);
    EXPECT_NE(all_text(setup.problems()).find("did you mean \"diameter\"?"), std::string::npos);
}

}  // namespace
}  // namespace understudy
