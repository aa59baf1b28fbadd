// The picture files themselves.

#include <cmath>

#include <nlohmann/json.hpp>

#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

Outcome render(const Workplace& place, const std::string& scene, const std::string& out) {
    place.write("scene.toml", scene);
    return place.run({"render", "scene.toml", "-o", out, "--json", "scene.json"});
}

TEST(Picture, HasTheSizeAskedForInEveryKind) {
    const Workplace place;
    for (const char* out : {"ball.png", "ball.jpg", "ball.exr"}) {
        ASSERT_EQ(render(place, kBall, out).status, 0) << out;
        const Seen picture = seen(place.path(out));
        EXPECT_EQ(picture.width, 32) << out;
        EXPECT_EQ(picture.height, 40) << out;
    }
}

// ISO 12232: the exposure that the meter asks for puts an 18 % card at 118 of 255 (sRGB of 0.18 is 117.65).
TEST(Picture, AnEighteenPerCentCardIsOneHundredAndEighteen) {
    const Workplace place;
    const std::string scene =
        "[picture]\nwidth = 32\nheight = 40\nsamples = 64\n[camera]\naperture = 4.0\nfocus = \"face\"\n"
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n"
        "[[light]]\nmodifier = \"bulb\"\nangle = 0\nheight = 1.25\ndistance = 20\nmeter = 4\n"
        "[[panel]]\nname = \"card\"\nsurface = 0.18\nsize = [3, 3]\nposition = [0, 1.25, 0]\naim = [0, 1.25, 5]\n";
    for (const char* out : {"card.png", "card.jpg"}) {
        const Outcome outcome = render(place, scene, out);
        ASSERT_EQ(outcome.status, 0) << outcome.err;
        const Seen card = seen(place.path(out));
        for (int channel = 0; channel < 3; ++channel) EXPECT_NEAR(card.at(16, 20, channel), 118.0F, 1.01F) << out;
    }
    ASSERT_EQ(render(place, scene, "card.exr").status, 0);
    const Seen card = seen(place.path("card.exr"));
    for (int channel = 0; channel < 3; ++channel) EXPECT_NEAR(card.at(16, 20, channel), 0.18F, 0.18F * 0.01F);
}

TEST(Picture, AJpegTellsItsExposure) {
    const Workplace place;
    ASSERT_EQ(render(place, kBall + "[camera]\naperture = 4.0\nshutter = \"1/200\"\niso = 200\n", "ball.jpg").status,
              0);
    const OIIO::ImageSpec spec = seen(place.path("ball.jpg")).spec;
    EXPECT_NEAR(spec.get_float_attribute("FNumber"), 4.0F, 1e-3F);
    EXPECT_NEAR(spec.get_float_attribute("ExposureTime"), 0.005F, 1e-5F);
    EXPECT_NEAR(spec.get_float_attribute("Exif:FocalLength"), 85.0F, 1e-2F);
    EXPECT_EQ(spec.get_int_attribute("Exif:PhotographicSensitivity", spec.get_int_attribute("Exif:ISOSpeedRatings")),
              200);
}

// The catchlight that the report computes is where the picture shows it.
TEST(Picture, ACatchlightIsWhereTheReportSays) {
    const Workplace place;
    const std::string scene =
        "[picture]\nwidth = 400\nheight = 320\nsamples = 16\n[camera]\nfocal_length = \"600 mm\"\naperture = 32\n"
        "[sitter]\nhead = \"aspen\"\n"
        "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.4 }\nangle = -35\nelevation = 15\n"
        "distance = 1.5\nmeter = 16\n";
    const Outcome outcome = render(place, scene, "eyes.exr");
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const Seen picture = seen(place.path("eyes.exr"));
    const auto report = nlohmann::json::parse(contents(place.path("scene.json")));
    int compared = 0;
    for (const auto& catchlight : report["catchlights"]) {
        const double visible = catchlight["visible"];
        if (visible < 0.99) continue;
        ++compared;
        const double x = catchlight["pixel"][0];
        const double y = catchlight["pixel"][1];
        constexpr int kReach = 14;
        float brightest = 0.0F;
        const auto each = [&](auto visit) {
            for (int j = static_cast<int>(y) - kReach; j <= static_cast<int>(y) + kReach; ++j) {
                for (int i = static_cast<int>(x) - kReach; i <= static_cast<int>(x) + kReach; ++i) {
                    if (i >= 0 && j >= 0 && i < picture.width && j < picture.height) visit(i, j, picture.at(i, j, 1));
                }
            }
        };
        each([&](int, int, float value) { brightest = std::max(brightest, value); });
        double weight = 0.0, sum_x = 0.0, sum_y = 0.0;
        each([&](int i, int j, float value) {
            if (value < 0.5F * brightest) return;
            weight += 1.0;
            sum_x += i + 0.5;
            sum_y += j + 0.5;
        });
        EXPECT_NEAR(sum_x / weight, x, 2.0) << catchlight["eye"];
        EXPECT_NEAR(sum_y / weight, y, 2.0) << catchlight["eye"];
        RecordProperty(catchlight["eye"],
                       std::to_string(sum_x / weight - x) + " " + std::to_string(sum_y / weight - y));
    }
    EXPECT_GE(compared, 1);
}

}  // namespace
}  // namespace understudy
