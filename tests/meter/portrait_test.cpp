// Eyes and catchlights of the library's heads.

#include <cmath>

#include "meter/eyes.h"
#include "metered.h"
#include "sitter/eye.h"

namespace understudy {
namespace {

std::string head(const std::string& name, const std::string& sitter, const std::string& light) {
    return "[sitter]\nhead = \"" + name + "\"\n" + sitter + "[[light]]\nname = \"key\"\nmeter = 4\n" + light;
}

const Catchlight& catchlight(const MeterReport& report, const std::string& eye, const std::string& light) {
    for (const Catchlight& image : *report.catchlights) {
        if (image.eye == eye && image.light == light) return image;
    }
    throw std::runtime_error("no catchlight of " + light);
}

double width_mm(const Catchlight& image) { return image.width_in_iris * kIrisRadius * 1000.0; }

// The paraxial size f/(d + f) · width: 0.9 m at 1.5 m 2.334 mm, a dish of 0.42 m at 1.2 m 1.361 mm. The exact image of
// a wide front is smaller, 2 r sin(θ/2) of its half angle: 2.265 mm.
TEST(Catchlights, AreAsLargeAsTheMirrorImage) {
    const MeterReport box = metered(head(
        "aspen", "",
        "modifier = { shape = \"rectangle\", width = 0.9, height = 0.9 }\nangle = 0\nelevation = 0\ndistance = 1.5\n"));
    const MeterReport dish = metered(head(
        "aspen", "", "modifier = { shape = \"disc\", diameter = 0.42 }\nangle = 0\nelevation = 0\ndistance = 1.2\n"));
    for (const char* eye : {"camera-left", "camera-right"}) {
        EXPECT_NEAR(width_mm(catchlight(box, eye, "key")), 2.334, 0.03 * 2.334) << eye;
        EXPECT_NEAR(width_mm(catchlight(dish, eye, "key")), 1.361, 0.01 * 1.361) << eye;
    }
}

// A key at 45° and 45° is near one o'clock and not two: 1.17 h, 35.1° (the eyes' parallax is some 2° each way); one at
// 60° and 30° is at 1.88 h.
TEST(Catchlights, ClockOfTheClassicalKey) {
    const MeterReport classical =
        metered(head("aspen", "", "modifier = \"dish-55\"\nangle = 45\nelevation = 45\ndistance = 2\n"));
    const MeterReport left =
        metered(head("aspen", "", "modifier = \"dish-55\"\nangle = -60\nelevation = 30\ndistance = 2\n"));
    double sum = 0.0, sum_left = 0.0;
    for (const char* eye : {"camera-left", "camera-right"}) {
        sum += catchlight(classical, eye, "key").clock_deg / 2.0;
        sum_left += catchlight(left, eye, "key").clock_deg / 2.0;
        for (const Catchlight& image : *classical.catchlights) {
            EXPECT_GE(image.visible, 0.0);
            EXPECT_LE(image.visible, 1.0);
        }
    }
    EXPECT_NEAR(sum, 35.1, 2.0);
    EXPECT_NEAR(sum_left, 360.0 - 56.4, 2.0);
    EXPECT_GT(catchlight(left, "camera-left", "key").offset_in_iris.y, 0.0F);
    EXPECT_LT(catchlight(left, "camera-left", "key").offset_in_iris.x, 0.0F);
}

// From straight overhead no light reaches a cornea past lid and brow (common practice, no source).
TEST(Catchlights, AreCutOffByTheLidUnderAHighLight) {
    const MeterReport report =
        metered(head("aspen", "", "modifier = \"dish-55\"\nangle = 0\nelevation = 80\ndistance = 1.5\n"));
    for (const Catchlight& image : *report.catchlights) {
        EXPECT_EQ(image.visible, 0.0) << image.eye;
        EXPECT_TRUE(image.hidden_by == "upper lid" || image.hidden_by == "brow") << image.hidden_by;
    }
}

// r · sin(θ/2) off the cornea's middle, over the iris's radius, for a light θ above the lens: 10° 0.680, 20° 1.354, 30°
// 2.019, 40° 2.668 mm for a radius of 7.8 mm, light and camera far away. The natural lid leaves all of these to be
// seen, for it loses a light only beyond 53° (3.5 mm over the pupil) to 70° (4.5 mm).
TEST(Catchlights, StandWhereTheTableSaysWithTheLidsOn) {
    for (const auto& [elevation, offset_mm] : {std::pair{10, 0.680}, {20, 1.354}, {30, 2.019}, {40, 2.668}}) {
        const MeterReport report =
            metered(head("aspen", "",
                         "modifier = { shape = \"disc\", diameter = 0.2 }\nangle = 0\ndistance = 8\nelevation = " +
                             std::to_string(elevation) + "\n"));
        for (const Catchlight& image : *report.catchlights) {
            EXPECT_NEAR(static_cast<double>(image.offset_in_iris.y) * kIrisRadius * 1000.0, offset_mm, 0.02 * offset_mm)
                << elevation;
            // Only lashes may lie across it, and one is as wide as this small image.
            for (const Taken& taken : image.hidden) {
                EXPECT_TRUE(taken.by == "lashes" || taken.share < 0.01) << elevation << " " << taken.by;
            }
        }
    }
}

// The same light over eyes half shut lies behind the lid, and shut ones show nothing at all.
TEST(Catchlights, GoUnderADroopingLid) {
    const std::string light =
        "modifier = { shape = \"disc\", diameter = 0.2 }\nangle = 0\ndistance = 8\nelevation = 40\n";
    const MeterReport half = metered(head("aspen", "lids = 0.5\n", light));
    for (const Catchlight& image : *half.catchlights) {
        EXPECT_EQ(image.visible, 0.0);
        EXPECT_EQ(image.hidden_by, "upper lid");
    }
    const MeterReport shut = metered(head("aspen", "lids = 0\n", light));
    for (const Catchlight& image : *shut.catchlights) EXPECT_EQ(image.visible, 0.0);
    for (const EyeReading& eye : *shut.eyes) {
        // Of the 20 lx·s of f/4.
        EXPECT_LT(eye.exposure_lxs, 20.0 * 1e-4);
        EXPECT_EQ(eye.verdict, EyeVerdict::kDark);
    }
}

// Against black cheeks any eye would be lit; against the face as a whole it is not.
TEST(EyeVerdicts, AreNotLitByComparisonWithTheDark) {
    EXPECT_EQ(eye_verdict(60.0, 100.0, 100.0), EyeVerdict::kLit);
    EXPECT_EQ(eye_verdict(20.0, 100.0, 100.0), EyeVerdict::kDim);
    EXPECT_EQ(eye_verdict(10.0, 100.0, 100.0), EyeVerdict::kDark);
    EXPECT_EQ(eye_verdict(0.01, 0.01, 100.0), EyeVerdict::kDark);
    EXPECT_EQ(eye_verdict(5.0, 1.0, 100.0), EyeVerdict::kDim);
    EXPECT_EQ(eye_verdict(0.0, 0.0, 0.0), EyeVerdict::kDark);
}

// A white card under the face gives a second catchlight, low in the eye; a black one does not (US Army Subcourse
// SS0510, 1994: a fill adds a second, lower catchlight).
TEST(Catchlights, AWhiteCardUnderTheFaceShowsAndABlackOneDoesNot) {
    const auto with_card = [](const std::string& surface) {
        return metered(head("aspen", "",
                            "modifier = \"softbox-60x90\"\nangle = 0\nheight = 1.9\ndistance = 1.2\n"
                            "[[panel]]\nname = \"card\"\nsize = [0.6, 0.4]\nangle = 0\nheight = 0.95\ndistance = 0.5\n"
                            "aim = [0, 2, 0.3]\nsurface = \"" +
                                surface + "\"\n"));
    };
    const MeterReport white = with_card("white");
    for (const char* eye : {"camera-left", "camera-right"}) {
        const Catchlight& card = catchlight(white, eye, "card");
        EXPECT_TRUE(card.is_panel);
        EXPECT_GT(card.visible, 0.5);
        EXPECT_NEAR(card.clock_deg, 180.0, 10.0);
        EXPECT_LT(card.offset_in_iris.y, 0.0F);
        EXPECT_GT(catchlight(white, eye, "key").offset_in_iris.y, 0.0F);
    }
    const MeterReport black = with_card("black");
    for (const Catchlight& image : *black.catchlights) EXPECT_FALSE(image.is_panel);
}

class Eyes : public testing::TestWithParam<const char*> {};

EyeVerdict verdict(const MeterReport& report, std::size_t eye) { return report.eyes->at(eye).verdict; }

// One strip box square to the side leaves the far eye in the dark; the head turned toward it brings the light back
// (common practice, no source).
TEST_P(Eyes, FarFromASideStripAreDarkUntilTheHeadTurns) {
    const std::string strip = "modifier = \"strip-30x120\"\nangle = -90\nheight = 1.25\ndistance = 1.3\n";
    const MeterReport straight = metered(head(GetParam(), "", strip));
    EXPECT_EQ(verdict(straight, 1), EyeVerdict::kDark);
    EXPECT_EQ(straight.ratio->lit_cheek, "camera-left");
    const MeterReport turned = metered(head(GetParam(), "turn = -50\ngaze = [-10, 0]\n", strip));
    EXPECT_EQ(verdict(turned, 0), EyeVerdict::kLit);
    EXPECT_EQ(verdict(turned, 1), EyeVerdict::kLit);
    EXPECT_GT(catchlight(turned, "camera-right", "key").visible, 0.5);
}

// A large light high overhead leaves both eyes dark until the chin comes up (common practice, no source).
TEST_P(Eyes, UnderAnOverheadLightAreDarkUntilTheChinComesUp) {
    const std::string overhead = "modifier = \"octa-120\"\nangle = 0\nelevation = 80\ndistance = 1.3\n";
    const MeterReport straight = metered(head(GetParam(), "", overhead));
    const MeterReport raised = metered(head(GetParam(), "chin = 45\ngaze = [0, 0]\n", overhead));
    for (const std::size_t eye : {std::size_t{0}, std::size_t{1}}) {
        EXPECT_EQ(verdict(straight, eye), EyeVerdict::kDark);
        EXPECT_NE(verdict(raised, eye), EyeVerdict::kDark);
        // Birch's are deep-set under a heavy brow: half of what the cheek gets is more than they see of such a light.
        if (GetParam() == std::string("aspen")) {
            EXPECT_EQ(verdict(raised, eye), EyeVerdict::kLit);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Heads, Eyes, testing::Values("aspen", "birch"));

// Readings on the skin and in the eyes: their parts add up, and the bright ones are known to 0.6 %.
TEST(Readings, OnTheSkinAddUpAndAreKnownWell) {
    const MeterReport report =
        metered(head("juniper", "", "modifier = \"softbox-60x90\"\nangle = -30\nelevation = 15\ndistance = 1.3\n") +
                "[[light]]\nmodifier = \"octa-120\"\nangle = 30\ndistance = 2\nheight = 1.6\nfrom_key = -1\n");
    for (const Reading& reading : report.readings) {
        double sum = 0.0;
        for (const LightReading& light : reading.by_light) sum += light.exposure_lxs;
        EXPECT_NEAR(sum, reading.exposure_lxs, 1e-9 * (sum + 1.0)) << reading.point;
        if (reading.stops_from_camera > -3.0) {
            EXPECT_LE(reading.standard_error_lxs / reading.exposure_lxs, 0.006) << reading.point;
        }
    }
}

}  // namespace
}  // namespace understudy
