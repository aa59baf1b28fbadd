// Pictures side by side: what is equal between them and what shows.
#include <cmath>

#include <nlohmann/json.hpp>

#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

// A matt ball that a small far light meets squarely, nothing round it to send light back.
const std::string kSquarely =
    "title = \"Ball\"\n[picture]\nwidth = 48\nheight = 60\nsamples = 64\n[camera]\ndistance = \"6 m\"\n"
    "focal_length = \"600 mm\"\n[sitter]\nhead = \"ball\"\n[backdrop]\nsurface = \"none\"\n"
    "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = \"5 cm\" }\nangle = 0\nelevation = 10\n"
    "distance = \"2 m\"\nlumens = \"20000 lm\"\n";

class Compare : public testing::Test {
  protected:
    Outcome compare(std::vector<std::string> arguments) const {
        const std::string scene = place_.write("ball.toml", kSquarely).string();
        arguments.insert(arguments.begin(), {"compare", scene});
        return place_.run(arguments);
    }
    nlohmann::json json() const { return nlohmann::json::parse(contents(place_.path("sheet.json")), nullptr, false); }

    Workplace place_;
};

// The mean linear light of a patch in the middle of each picture, from the left. Pictures on the sheet stand out of the
// surround as columns that are not its grey.
std::vector<double> patches(const Seen& sheet, int width, int height, std::size_t count) {
    // All cells' pictures stand in one row, black round the ball: find that row's first black pixels.
    std::vector<double> means;
    for (int y = 0; y + height < sheet.height && means.empty(); ++y) {
        for (int x = 0; x + width < sheet.width; ++x) {
            bool corner = true;
            for (int i = 0; i < width && corner; ++i) corner = sheet.at(x + i, y, 0) < 3.0F;
            if (!corner || sheet.at(x + width, y, 0) < 100.0F) continue;
            double sum = 0.0;
            for (int v = 0; v < 4; ++v) {
                for (int u = 0; u < 4; ++u) {
                    const double code =
                        static_cast<double>(sheet.at(x + width / 2 - 2 + u, y + height / 2 - 2 + v, 1)) / 255.0;
                    sum += std::pow((code + 0.055) / 1.055, 2.4);
                }
            }
            means.push_back(sum / 16.0);
            x += width;
        }
        if (means.size() != count) means.clear();
    }
    return means;
}

// A light's power alone: the same film thrice, and locked exposure shows every stop of it.
TEST_F(Compare, TracesOnceWhatOnlyChangesInPower) {
    const Outcome outcome = compare({"--vary", "light.key.lumens=5000 lm,10000 lm,20000 lm", "--exposure", "locked",
                                     "-o", "sheet.png", "--json", "sheet.json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("3 pictures from 1 traced film\n"), std::string::npos) << outcome.out;
    EXPECT_EQ(json()["films"], 1);
    const auto lit = patches(seen(place_.path("sheet.png")), 48, 60, 3);
    ASSERT_EQ(lit.size(), 3U);
    // 8-bit codes of about 60 and more are half a code in a hundred: 0.02 stop.
    EXPECT_NEAR(std::log2(lit[1] / lit[0]), 1.0, 0.03);
    EXPECT_NEAR(std::log2(lit[2] / lit[1]), 1.0, 0.03);
}

TEST_F(Compare, EqualExposureMakesTheBallEquallyBright) {
    const Outcome outcome = compare(
        {"--vary", "light.key.distance=1 m,2 m,4 m", "-o", "sheet.png", "--json", "sheet.json", "--samples", "256"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("3 pictures from 3 traced films"), std::string::npos) << outcome.out;
    const auto lit = patches(seen(place_.path("sheet.png")), 48, 60, 3);
    ASSERT_EQ(lit.size(), 3U);
    // The meter stands in the ball's middle, the ball's front 10 cm before it: cosine over the distance's square at the
    // front, over the same at the meter, which faces the light. Half a code of the 8-bit file is 0.013 stop.
    const double up = 10.0 * 3.14159265358979 / 180.0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double distance = std::exp2(static_cast<double>(i));
        const double high = distance * std::sin(up);
        const double ahead = distance * std::cos(up) - 0.1;
        const double front = ahead / std::pow(std::hypot(high, ahead), 3.0);
        EXPECT_NEAR(std::log2(lit[i] / 0.18), std::log2(front * distance * distance), 0.02) << distance;
    }
}

// Three powers, each exposed by its own reading: the same picture three times.
TEST_F(Compare, EqualExposureTakesOutPower) {
    const Outcome outcome =
        compare({"--vary", "light.key.lumens=10000 lm..40000 lm*3", "-o", "sheet.png", "--samples", "16"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const auto lit = patches(seen(place_.path("sheet.png")), 48, 60, 3);
    ASSERT_EQ(lit.size(), 3U);
    EXPECT_NEAR(std::log2(lit[1] / lit[0]), 0.0, 0.02);
    EXPECT_NEAR(std::log2(lit[2] / lit[0]), 0.0, 0.02);
}

// Illuminance goes with the inverse square of the distance: two stops for each doubling.
TEST_F(Compare, LockedExposureShowsTheInverseSquare) {
    const Outcome outcome = compare({"--vary", "light.key.distance=1 m..4 m*3", "--exposure", "locked", "--samples",
                                     "4", "-o", "sheet.png", "--json", "sheet.json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const auto cells = json()["cells"];
    ASSERT_EQ(cells.size(), 3U);
    std::vector<double> stops;
    for (const auto& cell : cells) {
        EXPECT_EQ(cell["developed_f_number"], cell["report"]["exposure"]["aperture"]);
        for (const auto& reading : cell["report"]["meter"]) {
            if (reading["point"] == "face" && reading["receptor"] == "flat" && reading["facing"] == "key") {
                stops.push_back(reading["stops_from_camera"]);
            }
        }
    }
    ASSERT_EQ(stops.size(), 3U);
    EXPECT_NEAR(stops[0] - stops[1], 2.0, 0.02);
    EXPECT_NEAR(stops[1] - stops[2], 2.0, 0.02);
}

TEST_F(Compare, TwoMakeAGridWithItsTableAndItsNumbers) {
    const Outcome outcome = compare({"--vary", "light.key.angle=-60,0", "--vary", "camera.iso=100,200,400", "--samples",
                                     "1", "-o", "sheet.png", "--json", "sheet.json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("6 pictures from 2 traced films"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("key angle -60, camera iso 400"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("meter at the face"), std::string::npos) << outcome.out;
    EXPECT_EQ(outcome.out.find("catchlight"), std::string::npos) << "a ball has no eyes";
    const auto all = json();
    EXPECT_EQ(all["columns"], 3);
    EXPECT_EQ(all["exposure"], "equal");
    EXPECT_EQ(all["cells"][5]["values"]["camera.iso"], "400");
    EXPECT_EQ(all["cells"][5]["report"]["exposure"]["iso"], 400.0);
    const Seen sheet = seen(place_.path("sheet.png"));
    EXPECT_GT(sheet.width, 3 * 300);
    EXPECT_EQ(sheet.spec.get_string_attribute("oiio:ColorSpace"), "sRGB");
    EXPECT_EQ(sheet.spec.get_string_attribute("ImageDescription"), "Ball");
}

TEST_F(Compare, ThreadsMakeNoDifference) {
    for (const char* threads : {"1", "2"}) {
        const Outcome outcome = compare({"--vary", "light.key.angle=-60,0", "--samples", "4", "--threads", threads,
                                         "-o", std::string("sheet") + threads + ".png"});
        ASSERT_EQ(outcome.status, 0) << outcome.err;
    }
    EXPECT_EQ(contents(place_.path("sheet1.png")), contents(place_.path("sheet2.png")));
}

TEST_F(Compare, MisuseWritesNothing) {
    const std::vector<std::pair<std::vector<std::string>, std::string>> misuses{
        {{}, "--vary"},
        {{"--vary", "light.kye.meter=4"}, "did you mean \"key\"?"},
        {{"--vary", "light.key.modifier=octa-120,octa-121"}, "--vary light.key.modifier=octa-121: "},
        {{"--vary", "camera.iso=1..9/9", "--vary", "camera.aperture=1..9/9"}, "81 pictures"},
        {{"--vary", "camera.iso=100", "--vary", "camera.aperture=4", "--vary", "sitter.turn=1"}, "given 3 times"},
        {{"--vary", "camera.iso=100", "-o", "sheet.exr"}, ".png or .jpg"},
        {{"--vary", "camera.iso=100", "-o", "no/such/sheet.png"}, "no folder"},
        {{"--vary", "camera.iso=100", "--exposure", "even"}, "equal"},
        {{"--vary", "camera.iso=100", "--samples", "0"}, "samples"}};
    for (const auto& [arguments, words] : misuses) {
        const Outcome outcome = compare(arguments);
        EXPECT_EQ(outcome.status, 2) << words << outcome.err;
        EXPECT_NE(outcome.err.find(words), std::string::npos) << words << '\n' << outcome.err;
    }
    EXPECT_EQ(place_.names(), std::vector<std::string>{"ball.toml"});
}

// What only the studio shows is told before anything is traced, and with what was varied.
TEST_F(Compare, AStandThatCannotBeIsToldBeforeTracing) {
    const Outcome outcome = compare({"--vary", "light.key.distance=2 m,9 cm", "--samples", "65536"});
    EXPECT_EQ(outcome.status, 2) << outcome.err;
    EXPECT_NE(outcome.err.find("--vary light.key.distance=9 cm: "), std::string::npos) << outcome.err;
    EXPECT_EQ(place_.names(), std::vector<std::string>{"ball.toml"});
}

TEST_F(Compare, AnInterruptionLeavesNothing) {
    const std::string scene = place_.write("ball.toml", kSquarely).string();
    const pid_t child = place_.start({"compare", scene, "--vary", "light.key.angle=-60,0", "--samples", "65536"});
    usleep(1500000);
    kill(child, SIGINT);
    const Outcome outcome = place_.finish(child);
    EXPECT_EQ(outcome.status, 130) << outcome.err;
    EXPECT_NE(outcome.err.find("interrupted"), std::string::npos) << outcome.err;
    EXPECT_EQ(place_.names(), std::vector<std::string>{"ball.toml"});
}

}  // namespace
}  // namespace understudy
