// modifier = { photometric = … } in a scene file: what it becomes, and what is told of a file that cannot be used.

#include <fstream>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "setup/photometric_file.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

class PhotometricModifiers : public testing::Test {
  protected:
    PhotometricModifiers() {
        std::ofstream(scratch_.folder() / "lamp.ies") << kQuadrants;
        std::ofstream(scratch_.folder() / "broken.ies") << kQuadrants.substr(0, kQuadrants.size() - 4);
        std::ofstream(scratch_.folder() / "picture.ies") << "\x89PNG\r\n\x1a\n";
        std::filesystem::create_directory(scratch_.folder() / "folder.ies");
    }
    Expected<understudy::Setup> parse(const std::string& modifier, const std::string& power = "meter = 4") const {
        return scratch_.parse("[[light]]\nmodifier = " + modifier + "\n" + power + "\n");
    }
    void expect_told(const Expected<understudy::Setup>& setup, const std::string& at, const std::string& words) const {
        ASSERT_FALSE(setup);
        EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
        const std::string& told = setup.problems()[0].text;
        EXPECT_EQ(told.find((scratch_.folder() / at).string() + ": "), 0U) << told << "\nnot at " << at;
        EXPECT_NE(told.find("; expected "), std::string::npos) << told;
        EXPECT_NE(told.find(words), std::string::npos) << told;
    }

    ScratchLibrary scratch_;
};

TEST_F(PhotometricModifiers, APointOrAFront) {
    const auto point = parse("{ photometric = \"lamp.ies\" }");
    ASSERT_TRUE(point) << all_text(point.problems());
    EXPECT_TRUE(std::holds_alternative<PointShape>(point->lights[0].modifier.shape));
    EXPECT_EQ(point->lights[0].modifier.name, "lamp.ies");
    EXPECT_EQ(point->lights[0].modifier.efficiency, 1.0);
    ASSERT_TRUE(point->lights[0].modifier.photometric);
    EXPECT_EQ(point->lights[0].modifier.photometric->candela[0][0], 600.0);
    const auto front = parse(R"({ photometric = "lamp.ies", shape = "disc", diameter = "10 cm", efficiency = 0.6 })",
                             "lumens = \"as file\"");
    ASSERT_TRUE(front) << all_text(front.problems());
    EXPECT_TRUE(std::holds_alternative<DiscShape>(front->lights[0].modifier.shape));
    EXPECT_EQ(front->lights[0].modifier.efficiency, 0.6);
    EXPECT_TRUE(std::holds_alternative<PowerOfFile>(front->lights[0].power));
    EXPECT_EQ(front->lights[0].source, SourceKind::kContinuous);
    const std::string absolute = (scratch_.folder() / "lamp.ies").string();
    EXPECT_TRUE(parse("{ photometric = \"" + absolute + "\" }"));
}

TEST_F(PhotometricModifiers, FilesThatCannotBeUsed) {
    expect_told(parse("{ photometric = \"none.ies\" }"), "scene.toml:2:28", "no such file");
    expect_told(parse("{ photometric = \"folder.ies\" }"), "scene.toml:2:28", "which is no file");
    expect_told(parse("{ photometric = \"\" }"), "scene.toml:2:28", "which is no file");
    expect_told(parse("{ photometric = 3 }"), "scene.toml:2:28", "a string");
    expect_told(parse("{ photometric = \"scene.toml\" }"), "scene.toml:2:28", "no such file");
    expect_told(parse("{ photometric = \"picture.ies\" }"), "picture.ies:2:1", "no line with TILT");
    expect_told(parse("{ photometric = \"broken.ies\" }"), "broken.ies:14:7", "the file ends too early");
}

TEST_F(PhotometricModifiers, ContradictionsAreTold) {
    expect_told(parse(R"({ photometric = "lamp.ies", shape = "sphere", diameter = 0.1 })"), "scene.toml:2:48",
                "not flat");
    expect_told(parse(R"({ photometric = "lamp.ies", shape = "dome", diameter = 1, depth = 0.2 })"), "scene.toml:2:48",
                "not flat");
    expect_told(parse("{ photometric = \"lamp.ies\", diameter = 0.1 }"), "scene.toml:2:40", "unknown key \"diameter\"");
    expect_told(parse(R"({ photometric = "lamp.ies", shape = "disc" })"), "scene.toml:2:12", "no diameter");
    expect_told(parse("\"bulb\"", "lumens = \"as file\""), "scene.toml:3:10", "no photometric file is named");
    expect_told(parse("{ photometric = \"lamp.ies\" }", "lumens = \"as flie\""), "scene.toml:3:10", "as flie");
    expect_told(parse("{ photometric = \"lamp.ies\" }", "lumens = \"as file\"\nmeter = 4"), "scene.toml:3:1", "twice");
}

}  // namespace
}  // namespace understudy
