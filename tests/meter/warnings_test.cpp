// Each warning with a setup that calls for it and one that only just does not; the numbers are worked out by hand.

#include <cmath>

#include "meter/warnings.h"
#include "metered.h"

namespace understudy {
namespace {

// Of one kind; what geometry alone tells is found without metering any light.
std::optional<Warning> warning(const std::string& scene, WarningKind kind, const std::string& thing) {
    const Studio studio = studio_from(scene);
    const Stage stage(studio, Stage::With::kSitter);
    std::vector<Warning> all;
    if (kind <= WarningKind::kBehindBackdrop) {
        all = warn_of_stands(studio, stage);
    } else {
        const Stage nobody(studio, Stage::With::kNobody);
        all = find_warnings(studio, stage, nobody, value_of(set_powers(studio, nobody)));
    }
    for (const Warning& one : all) {
        if (one.kind == kind && one.thing == thing) return one;
    }
    return std::nullopt;
}

// The number, or not a number without such a warning.
double number(const std::string& scene, WarningKind kind, const std::string& thing) {
    const auto found = warning(scene, kind, thing);
    return found ? found->number : std::nan("");
}

bool warns(const std::string& scene, WarningKind kind, const std::string& thing) {
    return warning(scene, kind, thing).has_value();
}

const std::string kBall = "[sitter]\nhead = \"ball\"\neye_height = 1.25\n";
// Where light is metered, nothing sends any back.
const std::string kBare = "[sitter]\nhead = \"ball\"\neye_height = 1.25\n[backdrop]\nsurface = \"none\"\n";
const std::string kKey =
    "[[light]]\nname = \"key\"\nmodifier = \"softbox-60x90\"\nangle = -45\nheight = 1.7\ndistance = 1.5\nmeter = 4\n";
// 85 mm from 2 m, sharp at 2 m: 88.773 mm behind the lens, 0.0375 mm a pixel, so 2367.3 pixels / distance a metre.
const std::string kCamera = "[camera]\nposition = [0, 1.25, 2]\nfocus = 2.0\n";

std::string panel(const std::string& size, const std::string& position, const std::string& aim) {
    return "[[panel]]\nname = \"board\"\nsize = " + size + "\nposition = " + position + "\naim = " + aim + "\n";
}

TEST(Warnings, AnOrdinarySetupHasNone) {
    const MeterReport report = metered(kBall + kKey);
    EXPECT_TRUE(report.warnings.empty()) << static_cast<int>(report.warnings.front().kind);
}

// The ball reaches from −0.1 to 0.1 m and up to 1.35 m.
TEST(Warnings, OfWhatHangsOverTheSitter) {
    const auto board = [](const char* x) {
        return kBall + kKey +
               panel("[0.6, 0.6]", std::string("[") + x + ", 1.95, 0]", std::string("[") + x + ", 0, 0]");
    };
    EXPECT_NEAR(number(board("0"), WarningKind::kOverhead, "board"), 60.0, 0.01);
    EXPECT_NEAR(number(board("0.35"), WarningKind::kOverhead, "board"), 60.0, 0.01);
    EXPECT_FALSE(warns(board("0.41"), WarningKind::kOverhead, "board"));
    EXPECT_FALSE(
        warns(kEmpty + kKey + panel("[0.6, 0.6]", "[0, 1.95, 0]", "[0, 0, 0]"), WarningKind::kOverhead, "board"));
    const std::string boom =
        "[[light]]\nname = \"boom\"\nmodifier = \"bulb\"\nposition = [0, 2.35, 0]\nfrom_key = -1\n";
    // The kit's bulb is 10 cm across: its lower pole 95 cm over the ball.
    EXPECT_NEAR(number(kBall + kKey + boom, WarningKind::kOverhead, "boom"), 95.0, 0.2);
}

// A board of 1.5 m with its middle at 0.7 m ends 5 cm under the floor.
TEST(Warnings, OfWhatReachesBelowTheFloor) {
    const auto board = [](const char* y) {
        return kBall + kKey + panel("[1.0, 1.5]", std::string("[1.2, ") + y + ", 0]", std::string("[0, ") + y + ", 0]");
    };
    EXPECT_NEAR(number(board("0.70"), WarningKind::kBelowFloor, "board"), 5.0, 0.01);
    EXPECT_FALSE(warns(board("0.75"), WarningKind::kBelowFloor, "board"));
}

// An upright strip of 1.2 m with its middle at 2 m ends at 2.6 m.
TEST(Warnings, OfACeilingTooLow) {
    const auto strip = [](const std::string& y, const char* ceiling) {
        return kBare +
               "[[light]]\nname = \"key\"\nmodifier = { shape = \"rectangle\", width = 0.3, height = 1.2 }\nposition = "
               "[-1.2, " +
               y + ", 0.8]\naim = [0, " + y + ", 0]\nmeter = 4\n[room]\nsize = [6, 8, " + ceiling + "]\n";
    };
    EXPECT_NEAR(number(strip("2.0", "2.5"), WarningKind::kCeiling, "key"), -10.0, 0.01);
    EXPECT_FALSE(warns(strip("1.9", "2.5"), WarningKind::kCeiling, "key"));
    EXPECT_FALSE(warns(strip("2.0", "2.61"), WarningKind::kCeiling, "key"));
}

TEST(Warnings, OfWhatStandsBeyondAWall) {
    const auto board = [](const std::string& x) {
        return kBall + kKey + "[room]\nsize = [3, 8, 2.7]\n" +
               panel("[1.0, 1.5]", "[" + x + ", 1.25, -0.5]", "[" + x + ", 1.25, 3]");
    };
    EXPECT_NEAR(number(board("1.2"), WarningKind::kOutsideRoom, "board"), 20.0, 0.01);
    EXPECT_FALSE(warns(board("1.0"), WarningKind::kOutsideRoom, "board"));
    EXPECT_NEAR(number(kBall + kKey + kCamera + "[room]\nsize = [4, 3.9, 2.7]\n", WarningKind::kOutsideRoom, "camera"),
                5.0, 0.01);
    EXPECT_FALSE(warns(kBall + kKey + kCamera + "[room]\nsize = [4, 4, 2.7]\n", WarningKind::kOutsideRoom, "camera"));
}

// The backdrop of the scene file stands 1.5 m behind the mark and is 2.72 m wide.
TEST(Warnings, OfWhatReachesBehindTheBackdrop) {
    const auto board = [](const std::string& x, const std::string& z) {
        return kBall + kKey + panel("[0.5, 1.5]", "[" + x + ", 1.25, " + z + "]", "[" + x + ", 1.25, 9]");
    };
    EXPECT_NEAR(number(board("1", "-1.62"), WarningKind::kBehindBackdrop, "board"), 12.0, 0.01);
    EXPECT_FALSE(warns(board("1", "-1.48"), WarningKind::kBehindBackdrop, "board"));
    EXPECT_FALSE(warns(board("1.7", "-1.62"), WarningKind::kBehindBackdrop, "board"));
}

// Halfway to the face a board hides twice its own width there: from x = 0 on half of the disc of 10 cm, and from
// −6 cm, which is −12 cm at the face, nothing.
TEST(Warnings, OfWhatStandsBetweenLensAndFace) {
    const auto board = [](const char* x) {
        return kBare + kKey + kCamera +
               panel("[1.0, 1.0]", std::string("[") + x + ", 1.25, 1]", std::string("[") + x + ", 1.25, 5]");
    };
    EXPECT_NEAR(number(board("-0.5"), WarningKind::kLensBlocked, "board"), 50.0, 1.0);
    EXPECT_FALSE(warns(board("-0.56"), WarningKind::kLensBlocked, "board"));
}

// A disc of 10 cm in the plane of the face: 1183.64 pixels a metre, so 118.36 pixels across; its middle 0.1 m aside and
// 0.1 m up is at 320 + 118.36 and 400 − 118.36; π · 59.18² pixels of 512 000.
TEST(Warnings, OfALightInThePicture) {
    const auto disc = [](const std::string& x) {
        return kEmpty + kCamera +
               "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.1 }\nposition = [" + x +
               ", 1.35, 0]\naim = [" + x + ", 1.35, -5]\nlumens = 1000\n";
    };
    const auto found = warning(disc("0.1"), WarningKind::kInPicture, "key");
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->number, 100.0 * kPiDouble * 59.18 * 59.18 / 512000.0, 0.01);
    ASSERT_TRUE(found->box);
    EXPECT_NEAR(found->box->left, 379.18, 1.0);
    EXPECT_NEAR(found->box->right, 497.55, 1.0);
    EXPECT_NEAR(found->box->top, 222.45, 1.0);
    EXPECT_NEAR(found->box->bottom, 340.82, 1.0);
    // The frame's edge is 320 / 1183.64 = 0.27036 m aside.
    EXPECT_TRUE(warns(disc("0.319"), WarningKind::kInPicture, "key"));
    EXPECT_FALSE(warns(disc("0.321"), WarningKind::kInPicture, "key"));
}

// Behind the ball nothing shows: it hides 0.1 · 3/2 = 0.15 m round the middle, 1 m behind.
TEST(Warnings, NotOfALightBehindTheSitter) {
    const auto rim = [](const char* x) {
        return kBall + kCamera + kKey +
               "[[light]]\nname = \"rim\"\nmodifier = { shape = \"disc\", diameter = 0.1 }\nposition = [" + x +
               ", 1.25, -1]\nfrom_key = -1\n[backdrop]\nsurface = \"none\"\n";
    };
    EXPECT_FALSE(warns(rim("0"), WarningKind::kInPicture, "rim"));
    EXPECT_FALSE(warns(rim("0"), WarningKind::kIntoLens, "rim"));
    EXPECT_TRUE(warns(rim("0.12"), WarningKind::kInPicture, "rim"));
    EXPECT_TRUE(warns(rim("0.12"), WarningKind::kIntoLens, "rim"));
}

// A diffuse front is half as strong 60° off its axis. On the lens, 3 m away and square to it, it gives (1/3)² of what
// it gives the face 1 m away: log2(1/9) = −3.17 stops.
TEST(Warnings, OfALightThatShinesIntoTheLens) {
    const auto turned = [](double degrees_off) {
        const double x = 3.0 * std::sin(radians(degrees_off));
        const double z = -1.0 + 3.0 * std::cos(radians(degrees_off));
        return kEmpty + kCamera +
               "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.04 }\nposition = [0, 1.25, "
               "-1]\n" +
               "aim = [" + std::to_string(x) + ", 1.25, " + std::to_string(z) + "]\nlumens = 1000\n";
    };
    const auto straight = warning(turned(0.0), WarningKind::kIntoLens, "key");
    ASSERT_TRUE(straight);
    EXPECT_NEAR(straight->number, 0.0, 0.05);
    EXPECT_NEAR(straight->also.value(), -3.17, 0.02);
    EXPECT_NEAR(number(turned(59.0), WarningKind::kIntoLens, "key"), 59.0, 0.05);
    EXPECT_FALSE(warns(turned(61.0), WarningKind::kIntoLens, "key"));
    // Beside the camera, in the lens's own plane or behind it, nothing reaches the glass.
    const std::string behind =
        "[[light]]\nname = \"key\"\nmodifier = \"bulb\"\nposition = [0.5, 1.25, 2.1]\nlumens = 1000\n";
    EXPECT_FALSE(warns(kEmpty + kCamera + behind, WarningKind::kIntoLens, "key"));
}

// From the face a board halfway hides what lies behind it at twice the width: its edge at 0 takes half of a front of
// 1 m, its edge at −0.26 m, −0.52 m at the front, nothing.
TEST(Warnings, OfABoardThatCutsTheKey) {
    const std::string key =
        "[[light]]\nname = \"key\"\nmodifier = { shape = \"rectangle\", width = 1, height = 1 }\nposition = [0, 1.25, "
        "2]\nlumens = 1000\n";
    const auto board = [](const char* x) {
        return panel("[1.0, 1.5]", std::string("[") + x + ", 1.25, 1]", std::string("[") + x + ", 1.25, 5]");
    };
    const auto half = warning(kEmpty + key + board("-0.5"), WarningKind::kKeyCut, "key");
    ASSERT_TRUE(half);
    EXPECT_NEAR(half->number, 50.0, 0.01);
    EXPECT_EQ(half->by, "board");
    EXPECT_FALSE(warns(kEmpty + key + board("-0.76"), WarningKind::kKeyCut, "key"));
    // A cloth that the light goes through does not cut it.
    const std::string cloth = "surface = { reflects = 0.4, transmits = 0.5 }\n";
    EXPECT_FALSE(warns(kEmpty + key + board("-0.5") + cloth, WarningKind::kKeyCut, "key"));
    // A light turned to the backdrop may be flagged from the face.
    const std::string away =
        "[[light]]\nname = \"key\"\nmodifier = \"bulb\"\nposition = [0, 1.25, 2]\naim = [0, 1.25, -1.5]\nlumens = "
        "1000\n";
    EXPECT_FALSE(warns(kEmpty + away + board("-0.5"), WarningKind::kKeyCut, "key"));
}

// Of another light than the key only a loss of half and more is told: 60 % with the edge at 5 cm, 40 % with it at −5
// cm.
TEST(Warnings, OfALightThatReachesTheFaceByLessThanHalf) {
    const auto scene = [](const char* x) {
        return kEmpty + "[[light]]\nname = \"key\"\nmodifier = \"bulb\"\nposition = [2, 1.25, 0]\nlumens = 1000\n" +
               "[[light]]\nname = \"fill\"\nmodifier = { shape = \"rectangle\", width = 1, height = 1 }\nposition = "
               "[0, 1.25, 2]\nlumens = 1000\n" +
               panel("[1.0, 1.5]", std::string("[") + x + ", 1.25, 1]", std::string("[") + x + ", 1.25, 5]");
    };
    EXPECT_NEAR(number(scene("-0.45"), WarningKind::kLightCut, "fill"), 60.0, 3.0);
    EXPECT_FALSE(warns(scene("-0.55"), WarningKind::kLightCut, "fill"));
}

// The light's middle, the ball's and the backdrop: 30° round, the shadow falls 0.5 · tan 30° = 0.289 m aside on a
// backdrop 0.5 m behind; there the frame is 320 · 2.5 / 2367.3 = 0.338 m to its edge, and the ball itself hides 0.125
// m. In pixels its middle is at 320 + 0.289 · 2367.3 / 2.5 = 593. At 1.5 m it falls 0.866 m aside, out of the frame.
TEST(Warnings, OfTheSittersShadowOnTheBackdrop) {
    const auto scene = [](const char* distance) {
        return kBall + kCamera +
               "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.1 }\nangle = -30\nheight = "
               "1.25\n" +
               "distance = 3\nmeter = 4\n[backdrop]\nfloor = false\ndistance = " + distance + "\n";
    };
    const auto found = warning(scene("0.5"), WarningKind::kShadow, "key");
    ASSERT_TRUE(found);
    EXPECT_GT(found->number, 90.0);  // nothing else lights it but the ball
    EXPECT_LE(found->number, 100.0);
    ASSERT_TRUE(found->box);
    EXPECT_LT(found->box->left, 593.0);
    EXPECT_GT(found->box->right, 593.0);
    EXPECT_GT(found->box->left, 320.0 + 0.125 * 2367.3 / 2.5);
    EXPECT_FALSE(warns(scene("1.5"), WarningKind::kShadow, "key"));
}

// f/4 at ISO 200 asks for 20 lx·s; five stops under it, at 1/200 s, are 125 lx, which add log2(1 + 2^-5) = 0.044 stop.
TEST(Warnings, OfTheRoomsOwnLight) {
    const auto found = warning(kBare + kKey + "[room]\nambient = 126\n", WarningKind::kAmbient, "ambient");
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->number, std::log2(126.0 / 4000.0), 1e-9);
    EXPECT_NEAR(found->also.value(), 0.044, 0.001);
    EXPECT_FALSE(warns(kBare + kKey + "[room]\nambient = 124\n", WarningKind::kAmbient, "ambient"));
    EXPECT_FALSE(warns(kBare + kKey, WarningKind::kAmbient, "ambient"));
}

// Eyes reach some 45° ± 7° aside (Lee and others, Eye 33, 2019, 1145): the head turned beyond that, they do not come
// round to the camera. At 46° they do, at 54° no longer.
TEST(Warnings, OfEyesThatCannotTurnSoFar) {
    const auto found = warning("[sitter]\nturn = 54\n" + kKey, WarningKind::kGaze, "gaze");
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->number, 54.0, 3.0);
    EXPECT_FALSE(warns("[sitter]\nturn = 46\n" + kKey, WarningKind::kGaze, "gaze"));
    EXPECT_FALSE(warns("[sitter]\nturn = 54\ngaze = [0, 0]\n" + kKey, WarningKind::kGaze, "gaze"));
}

TEST(Warnings, TheMostImportantComesFirst) {
    const MeterReport report =
        metered(kBall + kKey + kCamera + "[room]\nambient = 500\n" + panel("[0.6, 0.6]", "[0, 1.95, 0]", "[0, 0, 0]") +
                "[[panel]]\nname = \"post\"\nsize = [0.05, 0.5]\nposition = [0.1, 1.25, 0.5]\naim = [0.1, 1.25, 5]\n");
    ASSERT_GE(report.warnings.size(), 3U);
    EXPECT_EQ(report.warnings.front().kind, WarningKind::kOverhead);
    EXPECT_EQ(report.warnings.back().kind, WarningKind::kAmbient);
    for (std::size_t i = 1; i < report.warnings.size(); ++i) {
        EXPECT_LE(report.warnings[i - 1].kind, report.warnings[i].kind);
    }
    for (const Warning& one : report.warnings) EXPECT_TRUE(std::isfinite(one.number)) << one.thing;
}

}  // namespace
}  // namespace understudy
