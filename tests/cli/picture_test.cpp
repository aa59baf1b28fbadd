// The picture files themselves.

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

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

// sRGB (IEC 61966-2-1) undone.
float linear_of_code(float code) {
    const float share = code / 255.0F;
    return share <= 0.04045F ? share / 12.92F : std::pow((share + 0.055F) / 1.055F, 2.4F);
}

// A bright spot round a place, in pixels, as its own light over what surrounds it weighs.
struct Spot {
    double x = 0.0, y = 0.0;
    double diameter = 0.0;  // of a disc as bright as its middle that sends as much
};

Spot spot_near(const Seen& picture, double x, double y, bool codes) {
    constexpr int kReach = 14;
    std::vector<std::array<double, 3>> pixels;  // place and light
    std::vector<double> lights;
    for (int j = static_cast<int>(y) - kReach; j <= static_cast<int>(y) + kReach; ++j) {
        for (int i = static_cast<int>(x) - kReach; i <= static_cast<int>(x) + kReach; ++i) {
            if (i < 0 || j < 0 || i >= picture.width || j >= picture.height) continue;
            const float value = picture.at(i, j, 1);
            lights.push_back(static_cast<double>(codes ? linear_of_code(value) : value));
            pixels.push_back({i + 0.5, j + 0.5, lights.back()});
        }
    }
    std::sort(lights.begin(), lights.end());
    const double around = lights[lights.size() * 3 / 10];
    const double middle = lights[lights.size() * 99 / 100];
    Spot spot;
    double weight = 0.0;
    for (const auto& [at_x, at_y, light] : pixels) {
        const double share = std::min(1.0, (light - around) / (middle - around));
        if (share < 0.25) continue;  // the iris's own structure
        weight += share;
        spot.x += share * at_x;
        spot.y += share * at_y;
    }
    spot.x /= weight;
    spot.y /= weight;
    spot.diameter = std::sqrt(4.0 / 3.14159265358979 * weight);
    return spot;
}

// The catchlight that the report computes is where the picture shows it, traced and cleaned of noise, to 0.3 pixels;
// and cleaning leaves it as large as it was traced.
TEST(Picture, ACatchlightIsWhereTheReportSays) {
    const Workplace place;
    const std::string scene =
        "[picture]\nwidth = 400\nheight = 320\nsamples = 8\n[camera]\nfocal_length = \"600 mm\"\naperture = 32\n"
        "[sitter]\nhead = \"aspen\"\n"
        "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.4 }\nangle = -35\nelevation = 15\n"
        "distance = 1.5\nmeter = 16\n";
    for (const char* out : {"eyes.exr", "eyes.png"}) ASSERT_EQ(render(place, scene, out).status, 0) << out;
    const Seen traced = seen(place.path("eyes.exr"));
    const Seen cleaned = seen(place.path("eyes.png"));
    const auto report = nlohmann::json::parse(contents(place.path("scene.json")));
    int compared = 0;
    for (const auto& catchlight : report["catchlights"]) {
        const double visible = catchlight["visible"];
        if (visible < 0.99) continue;
        ++compared;
        const double x = catchlight["pixel"][0];
        const double y = catchlight["pixel"][1];
        const Spot as_traced = spot_near(traced, x, y, false);
        const Spot as_cleaned = spot_near(cleaned, x, y, true);
        for (const Spot& spot : {as_traced, as_cleaned}) {
            EXPECT_NEAR(spot.x, x, 0.3) << catchlight["eye"];
            EXPECT_NEAR(spot.y, y, 0.3) << catchlight["eye"];
        }
        EXPECT_NEAR(as_cleaned.diameter, as_traced.diameter, 0.3) << catchlight["eye"];
    }
    EXPECT_EQ(compared, 2);
}

}  // namespace
}  // namespace understudy
