// Bad input, end to end: status 2, a message that says where, and no file written.

#include <algorithm>

#include "program.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

struct Bad {
    const char* what;
    std::string scene;
    const char* place;  // that the message begins with, after the file's name
    const char* words;  // that it contains
};

class BadScene : public testing::TestWithParam<Bad> {};

TEST_P(BadScene, IsRefusedWithItsPlace) {
    const Workplace place;
    const std::string scene = place.write("bad.toml", GetParam().scene).string();
    const Outcome outcome = place.run({"render", scene, "-o", "out.png"});
    EXPECT_EQ(outcome.status, 2) << outcome.err;
    EXPECT_NE(outcome.err.find("bad.toml" + std::string(GetParam().place)), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find(GetParam().words), std::string::npos) << outcome.err;
    EXPECT_EQ(place.names(), std::vector<std::string>{"bad.toml"});
}

INSTANTIATE_TEST_SUITE_P(
    Table, BadScene,
    testing::Values(
        Bad{"Empty", "", ":1:1", "light"}, Bad{"NotToml", "this is no scene\n", ":1:", ""},
        Bad{"Binary", std::string("\0\1\2\377", 4), ":1:", ""},
        Bad{"NearMiss", kLight + "angel = 3\n", ":4:1", "\"angle\""},
        Bad{"NearName", "[[light]]\nmodifier = \"strip-30x12\"\nmeter = 4\n", ":2:", "strip-30x120"},
        Bad{"WrongUnit", kLight + "distance = \"3 kg\"\n", ":4:", "kg"},
        Bad{"NoNumber", kLight + "distance = nan\n", ":4:", "distance"},
        Bad{"Infinite", kLight + "distance = inf\n", ":4:", "distance"},
        Bad{"TwoPowers", kLight + "energy = 100\n", ":4:", "exactly one"},
        Bad{"NoPower", "[[light]]\nmodifier = \"bulb\"\n", ":1:", "power"},
        Bad{"OutOfReach", kLight + "height = \"3 m\"\ndistance = \"1 m\"\n", ":4:", "1.75 m"},
        Bad{"TwoMistakes", kLight + "angel = 3\n[camera]\naperture = \"wide\"\n", ":6:", "aperture"},
        Bad{"LightInHead", "[[light]]\nmodifier = \"bulb\"\nmeter = 4\nposition = [0, 1.27, 0]\naim = [0, 2, 2]\n", ":",
            "inside"},
        Bad{"LightInBall",
            "[sitter]\nhead = \"ball\"\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.05 }\nmeter = 4\n"
            "position = [0, 1.25, 0.02]\naim = [0, 2, 2]\n",
            ":", "inside"},
        Bad{"CameraInHead", "[camera]\nposition = [0, 1.27, 0]\nfocus = \"2 m\"\naim = [0, 1.27, 3]\n" + kLight, ":",
            "inside"},
        Bad{"NoMesh", "[sitter]\nhead = \"nowhere.obj\"\n" + kLight, ":2:", "nowhere.obj"}),
    [](const testing::TestParamInfo<Bad>& row) { return row.param.what; });

// An .obj of one's own that cannot be used: the message names it, with its line where there is one.
struct BadObj {
    const char* what;
    const char* text;
    const char* place;
};

class BadMesh : public testing::TestWithParam<BadObj> {};

TEST_P(BadMesh, IsRefusedByName) {
    const Workplace place;
    place.write("own.obj", GetParam().text);
    const std::string scene = place.write("bad.toml", "[sitter]\nhead = \"own.obj\"\n" + kLight).string();
    const Outcome outcome = place.run({"render", scene, "-o", "out.png"});
    EXPECT_EQ(outcome.status, 2) << outcome.err;
    EXPECT_NE(outcome.err.find("own.obj" + std::string(GetParam().place)), std::string::npos) << outcome.err;
    EXPECT_FALSE(std::filesystem::exists(place.path("out.png")));
}

INSTANTIATE_TEST_SUITE_P(Table, BadMesh,
                         testing::Values(BadObj{"Empty", "", ""}, BadObj{"Truncated", "v 0 0 0\nv 1 0 0\nv 0 1", ":3"},
                                         BadObj{"FaceOfNothing", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n", ":4"},
                                         BadObj{"NoNumber", "v 0 0 nan\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", ":1"},
                                         BadObj{"Degenerate", "v 0 0 0\nv 0 0 0\nv 0 0 0\nf 1 2 3\n", ""},
                                         BadObj{"NoFaces", "v 0 0 0\nv 1 0 0\nv 0 1 0\n", ""}),
                         [](const testing::TestParamInfo<BadObj>& row) { return row.param.what; });

TEST(BadPath, AFolderIsNoScene) {
    const Workplace place;
    std::filesystem::create_directory(place.path("folder.toml"));
    const Outcome outcome = place.run({"check", "folder.toml"});
    EXPECT_NE(outcome.status, 0);
    EXPECT_NE(outcome.err.find("folder.toml"), std::string::npos) << outcome.err;
}

TEST(BadPath, AFolderIsNoMeshAndNoPicture) {
    const Workplace place;
    std::filesystem::create_directory(place.path("own.obj"));
    std::filesystem::create_directory(place.path("out.png"));
    const std::string mesh = place.write("mesh.toml", "[sitter]\nhead = \"own.obj\"\n" + kLight).string();
    EXPECT_EQ(place.run({"check", mesh}).status, 2);
    const std::string ball = place.write("ball.toml", kBall).string();
    const Outcome outcome = place.run({"render", ball, "-o", "out.png"});
    EXPECT_TRUE(outcome.status == 1 || outcome.status == 2) << outcome.status;
    EXPECT_NE(outcome.err.find("out.png"), std::string::npos) << outcome.err;
}

TEST(BadPath, AMessageSaysWhereAndWhatOnOneLineEach) {
    const Workplace place;
    const std::string scene = place.write("bad.toml", "[camera]\naperture = \"wide\"\niso = -3\n" + kLight).string();
    const Outcome outcome = place.run({"check", scene});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 2) << outcome.err;
    EXPECT_NE(outcome.err.find("bad.toml:2:"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("bad.toml:3:"), std::string::npos) << outcome.err;
    EXPECT_TRUE(outcome.out.empty()) << outcome.out;
}

}  // namespace
}  // namespace understudy
