// What each command says and what status it ends with.

#include <algorithm>

#include <nlohmann/json.hpp>

#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

const std::filesystem::path kScenes = std::filesystem::path(UNDERSTUDY_SOURCE_DIR) / "scenes";

TEST(Commands, HelpNamesThemAll) {
    const Workplace place;
    const Outcome help = place.run({"--help"});
    EXPECT_EQ(help.status, 0);
    for (const char* command : {"render", "watch", "meter", "check", "advise", "poses", "compare", "settle", "develop",
                                "kit", "sitters", "pixel", "--threads"}) {
        EXPECT_NE(help.out.find(command), std::string::npos) << command;
    }
    for (const char* command : {"render", "watch", "meter", "check", "advise", "poses", "compare", "settle", "develop",
                                "kit", "sitters", "pixel"}) {
        EXPECT_EQ(place.run({command, "--help"}).status, 0) << command;
    }
    const Outcome version = place.run({"--version"});
    EXPECT_EQ(version.status, 0);
    EXPECT_NE(version.out.find("understudy"), std::string::npos);
}

TEST(Commands, MisuseIsStatusTwo) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    const std::vector<std::vector<std::string>> misuses{{},
                                                        {"paint"},
                                                        {"render"},
                                                        {"check"},
                                                        {"render", scene, "--samples", "0"},
                                                        {"render", scene, "--samples", "many"},
                                                        {"render", scene, "--threads", "0"},
                                                        {"render", scene, "-o", "ball.bmpx"},
                                                        {"render", scene, "-o", "ball"},
                                                        {"meter", scene, "--no-such-option"},
                                                        {"check", "nowhere.toml"},
                                                        {"develop", "nowhere.exr"},
                                                        {"develop", scene}};
    for (const auto& misuse : misuses) {
        const Outcome outcome = place.run(misuse);
        std::string said;
        for (const std::string& word : misuse) said += word + " ";
        EXPECT_EQ(outcome.status, 2) << said << outcome.err;
        EXPECT_FALSE(outcome.err.empty()) << said;
    }
    EXPECT_EQ(place.names(), std::vector<std::string>{"ball.toml"});
}

std::vector<std::string> shipped_scenes() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(kScenes)) {
        if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

class ShippedScene : public testing::TestWithParam<std::string> {};

TEST_P(ShippedScene, PassesItsCheck) {
    const Workplace place;
    const Outcome outcome = place.run({"check", (kScenes / (GetParam() + ".toml")).string()});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("in order"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(All, ShippedScene, testing::ValuesIn(shipped_scenes()));

TEST(Commands, RenderWritesThePictureTheFilmAndTheReport) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    const Outcome outcome = place.run({"render", scene, "-o", "ball.png", "--film", "film.exr", "--json", "ball.json"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const auto report = nlohmann::json::parse(contents(place.path("ball.json")), nullptr, false);
    ASSERT_FALSE(report.is_discarded());
    for (const char* key : {"title", "camera", "exposure", "meter", "ratio", "ambient", "catchlights", "eyes"}) {
        EXPECT_TRUE(report.contains(key)) << key;
    }
    EXPECT_TRUE(report["ratio"].is_null());        // a ball has no cheeks
    EXPECT_TRUE(report["catchlights"].is_null());  // and no eyes
    EXPECT_TRUE(report["eyes"].is_null());
    EXPECT_TRUE(report["ambient"]["stops_from_camera"].is_null());  // no room light is no number of stops
    EXPECT_EQ(report["exposure"]["iso"], 200.0);
    bool front = false;
    for (const auto& reading : report["meter"]) {
        for (const char* key : {"point", "receptor", "facing", "position_m", "normal", "exposure_lxs", "f_number",
                                "stops_from_camera", "by_light"}) {
            EXPECT_TRUE(reading.contains(key)) << key;
        }
        front = front || reading["point"] == "front";
    }
    EXPECT_TRUE(front);
    std::vector<std::string> names = place.names();
    std::sort(names.begin(), names.end());
    EXPECT_EQ(names, (std::vector<std::string>{"ball.json", "ball.png", "ball.toml", "film.exr"}));
}

TEST(Commands, MeterReportsAHead) {
    const Workplace place;
    const std::string scene = (kScenes / "side-strip.toml").string();
    const Outcome outcome = place.run({"meter", scene, "--json", "strip.json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const auto report = nlohmann::json::parse(contents(place.path("strip.json")), nullptr, false);
    ASSERT_FALSE(report.is_discarded());
    for (const char* key : {"key_to_fill", "stops", "lit_cheek"}) EXPECT_TRUE(report["ratio"].contains(key)) << key;
    EXPECT_EQ(report["ratio"]["lit_cheek"], "camera-left");
    ASSERT_EQ(report["eyes"].size(), 2U);
    for (const char* key : {"eye", "exposure_lxs", "stops_from_cheek", "verdict", "cornea_centre_m", "cornea_radius_m",
                            "iris_centre_m", "iris_radius_m", "axis"}) {
        EXPECT_TRUE(report["eyes"][0].contains(key)) << key;
    }
    ASSERT_GE(report["catchlights"].size(), 2U);
    for (const char* key : {"eye", "light", "clock", "clock_deg", "offset_in_iris", "pixel", "width_in_iris",
                            "height_in_iris", "visible", "hidden_by"}) {
        EXPECT_TRUE(report["catchlights"][0].contains(key)) << key;
    }
}

TEST(Commands, ThreadsMakeNoDifference) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    for (const char* threads : {"1", "2"}) {
        const std::string name = std::string("ball") + threads;
        const Outcome outcome = place.run({"render", scene, "--threads", threads, "-o", name + ".png", "--film",
                                           name + "-film.exr", "--json", name + ".json"});
        EXPECT_EQ(outcome.status, 0) << outcome.err;
    }
    EXPECT_EQ(contents(place.path("ball1.png")), contents(place.path("ball2.png")));
    // A film's file also tells when it was written.
    const Seen one = seen(place.path("ball1-film.exr"));
    EXPECT_EQ(one.values, seen(place.path("ball2-film.exr")).values);
    EXPECT_GT(one.mean(), 0.0);
    EXPECT_EQ(contents(place.path("ball1.json")), contents(place.path("ball2.json")));
}

}  // namespace
}  // namespace understudy
