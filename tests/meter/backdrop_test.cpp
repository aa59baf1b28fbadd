// The backdrop in the frame and what it and the room send back, against pinhole arithmetic and closed forms.

#include <cmath>

#include "metered.h"

namespace understudy {
namespace {

// Nobody; the face point at (0, 1, 0).
const std::string kNobody = "[sitter]\nhead = \"none\"\neye_height = 1.0\n";
// A disc far before the backdrop, so weak that it lights nothing that counts.
const std::string kSpark =
    "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.1 }\nposition = [0, 1, 40]\nlumens = 0.01\n";
// Even light of 1/200 s; 4000 lx make 20 lx·s, what f/4 at ISO 200 asks for with C = 250 lx·s: N² C / S.
std::string even_light(int lux) {
    return "[room]\nambient = " + std::to_string(lux) + "\nambient_temperature = 5500\n";
}

const BackdropPlace& place(const MeterReport& report, const std::string& name) {
    for (const BackdropPlace& one : *report.backdrop) {
        if (one.place == name) return one;
    }
    throw std::runtime_error("no such place: " + name);
}

// 85 mm focused at 2 m: the film stands f·d/(d − f) = 88.773 mm behind the lens. 640 × 800 pixels on 36 × 24 mm turned
// upright: 24/640 = 0.0375 mm a pixel. At 3.5 m a corner pixel's middle, 319.5 across and 399.5 up from the middle,
// lies 3.5 · 319.5 · 0.0375 / 88.773 = 0.47237 m aside and 0.59065 m up or down.
TEST(Backdrop, CornersLieWhereAPinholePutsThem) {
    const MeterReport report = metered(kNobody + kSpark + even_light(4000) +
                                       "[camera]\nposition = [0, 1, 2]\nfocus = 2.0\n"
                                       "[backdrop]\ndistance = 1.5\nwidth = 4\nfloor = false\n");
    ASSERT_TRUE(report.backdrop);
    ASSERT_EQ(report.backdrop->size(), 5U);
    struct Row {
        const char* name;
        double x, y;
    };
    for (const Row& row :
         {Row{"centre", 0.0, 1.0}, Row{"top-left", -0.47237, 1.59065}, Row{"top-right", 0.47237, 1.59065},
          Row{"bottom-left", -0.47237, 0.40935}, Row{"bottom-right", 0.47237, 0.40935}}) {
        const BackdropPlace& spot = place(report, row.name);
        EXPECT_EQ(spot.meets, "backdrop") << row.name;
        EXPECT_EQ(spot.hidden_by, "") << row.name;
        ASSERT_TRUE(spot.tone) << row.name;
        EXPECT_NEAR(spot.tone->position_m.x, row.x, 2e-5) << row.name;
        EXPECT_NEAR(spot.tone->position_m.y, row.y, 2e-5) << row.name;
        EXPECT_NEAR(spot.tone->position_m.z, -1.5, 1e-5) << row.name;
    }
    EXPECT_NEAR(static_cast<double>(place(report, "bottom-right").pixel.x), 639.5, 1e-4);
    EXPECT_NEAR(static_cast<double>(place(report, "bottom-right").pixel.y), 799.5, 1e-4);
}

// Under even light E a matt board shows L = ρ E / π everywhere, whatever the angle: in linear light ρ · E / E(f/4).
TEST(Backdrop, AnEvenlyLitBoardHasOneTone) {
    struct Row {
        const char* reflectance;
        int lux;
        double linear;
        bool clipped;
    };
    for (const Row& row :
         {Row{"0.36", 4000, 0.36, false}, Row{"0.18", 4000, 0.18, false}, Row{"0.18", 500, 0.0225, false},
          Row{"0.9", 4000, 0.9, false}, Row{"0.9", 4600, 1.035, true}}) {
        const MeterReport report = metered(
            kNobody + kSpark + even_light(row.lux) +
            "[camera]\nposition = [0, 1, 2]\n[backdrop]\nwidth = 4\nfloor = false\nsurface = " + row.reflectance +
            "\n");
        for (const BackdropPlace& spot : *report.backdrop) {
            ASSERT_TRUE(spot.tone) << spot.place;
            EXPECT_NEAR(spot.tone->linear, row.linear, 0.006 * row.linear) << spot.place;
            EXPECT_NEAR(spot.tone->stops_from_grey, std::log2(row.linear / 0.18), 0.01) << spot.place;
            EXPECT_EQ(spot.tone->clipped, row.clipped) << spot.place;
            EXPECT_NEAR(spot.tone->exposure_lxs, row.lux / 200.0, 0.006 * row.lux / 200.0) << spot.place;
            EXPECT_NEAR(spot.tone->stops_from_face, 0.0, 0.01) << spot.place;  // the same light is everywhere
        }
    }
}

// A point source over a plane: E = I cos θ / d², with the foot 1 m from it at the centre. At a corner, 0.7563 m off the
// middle, cos³ of atan(0.7563) is 0.5072 of the centre's (checked against cos³ 30° = 0.6495).
TEST(Backdrop, FallsOffWithTheCubeOfTheCosineUnderABareLamp) {
    const MeterReport report = metered(kNobody +
                                       "[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.02 }\n"
                                       "position = [0, 1, -0.5]\nlumens = 20000\n"
                                       "[camera]\nposition = [0, 1, 2]\nfocus = 2.0\n"
                                       "[backdrop]\ndistance = 1.5\nwidth = 4\nfloor = false\n");
    const double off = std::hypot(0.47237, 0.59065);
    const double cosine = 1.0 / std::sqrt(1.0 + off * off);
    // 100 lm·s all around: 7.95775 cd·s.
    const BackdropTone& corner = *place(report, "top-left").tone;
    EXPECT_NEAR(corner.exposure_lxs, 7.95775 * std::pow(cosine, 3.0), 0.01 * 7.95775);
    EXPECT_NEAR(corner.linear, 0.18 * corner.exposure_lxs / 20.0, 0.01 * corner.linear);
    EXPECT_EQ(place(report, "centre").meets, "key");  // the lamp itself
    EXPECT_FALSE(place(report, "centre").tone);
}

TEST(Backdrop, SaysWhatElseIsInTheCorner) {
    const std::string rest = "[camera]\nposition = [0, 1, 2]\nfocus = 2.0\n";
    const MeterReport narrow =
        metered(kNobody + kSpark + rest + "[backdrop]\ndistance = 1.5\nwidth = 0.8\nfloor = false\n");
    EXPECT_EQ(place(narrow, "top-left").meets, "");
    EXPECT_FALSE(place(narrow, "top-left").tone);
    EXPECT_TRUE(place(narrow, "centre").tone);
    const MeterReport board = metered(kNobody + kSpark + rest +
                                      "[[panel]]\nname = \"flag\"\nsize = [0.2, 0.2]\nposition = [-0.4, 1.5, -1]\n"
                                      "aim = [-0.4, 1.5, 5]\n[backdrop]\ndistance = 1.5\nwidth = 4\nfloor = false\n");
    EXPECT_EQ(place(board, "top-left").meets, "flag");
    EXPECT_EQ(place(board, "top-right").meets, "backdrop");
    const MeterReport ball = metered(kSpark + "[sitter]\nhead = \"ball\"\n");
    EXPECT_EQ(place(ball, "centre").meets, "backdrop");
    EXPECT_EQ(place(ball, "centre").hidden_by, "ball");
    EXPECT_TRUE(place(ball, "centre").tone);
    EXPECT_FALSE(metered(kEmpty + kSpark).backdrop);
}

// Howell B-3: a receptor 1 m before the middle of a board of 2 × 2 m has F = 0.55412642 of it. Evenly lit, the board
// sends back ρ F of what falls on it; the rest of even light comes past it.
TEST(Backdrop, SendsBackItsConfigurationFactor) {
    const MeterReport report =
        metered(kNobody + kSpark + even_light(4000) +
                // The receptor toward this camera looks at the board.
                "[camera]\nposition = [0, 1, -0.5]\n"
                "[backdrop]\nsurface = 0.5\ndistance = 1\nwidth = 2\nheight = 2\nfloor = false\n");
    const Reading reading = face_reading(report, Receptor::kFlat, Facing::kCamera);
    const double expected = 0.5 * 0.55412642 * 20.0;
    EXPECT_NEAR(reading.by_backdrop_lxs, expected, std::max(3.0 * reading.by_backdrop_error_lxs, 0.002 * expected));
    // The share is known to a hundredth of the reading.
    EXPECT_LT(reading.by_backdrop_error_lxs, 0.01 * reading.exposure_lxs);
    EXPECT_NEAR(reading.exposure_lxs, (1.0 - 0.55412642) * 20.0 + expected, 0.02 * 20.0);
    // All of it is ambient.
    EXPECT_NEAR(reading.by_room_lxs / reading.exposure_lxs, 1.0, 1e-4);
}

// The same board under a far lamp, which the receptor has at its back: all that it reads comes from the board.
TEST(Backdrop, SendsBackALampsLight) {
    const MeterReport report =
        metered(kNobody +
                "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.1 }\nposition = [0, 1, 40]\nlumens = 20000\n"
                "[camera]\nposition = [0, 1, -0.5]\n"
                "[backdrop]\nsurface = 0.5\ndistance = 1\nwidth = 2\nheight = 2\nfloor = false\n");
    const Reading reading = face_reading(report, Receptor::kFlat, Facing::kCamera);
    // 100 lm·s out of a diffuse front: Φ/π cd·s along its axis, 41 m away.
    const double expected = 0.5 * 0.55412642 * 100.0 / kPiDouble / (41.0 * 41.0);
    EXPECT_NEAR(reading.by_backdrop_lxs, expected, std::max(3.0 * reading.by_backdrop_error_lxs, 0.002 * expected));
    EXPECT_DOUBLE_EQ(reading.by_backdrop_lxs, reading.exposure_lxs);
    EXPECT_EQ(reading.by_room_lxs, 0.0);
    const Reading front = face_reading(report, Receptor::kFlat, Facing::kKey);
    EXPECT_EQ(front.by_backdrop_lxs, 0.0);
}

const std::string kLampInside =
    "[[light]]\nmodifier = \"bulb\"\nangle = 0\nelevation = 0\ndistance = 1\nlumens = 20000\n";

// What the walls add is what a reading between them has more than one in the open.
TEST(Room, ItsShareIsTheDifferenceThatWallsMake) {
    const Reading open = face_reading(metered(kEmpty + kLampInside), Receptor::kFlat, Facing::kCamera);
    EXPECT_EQ(open.by_room_lxs, 0.0);
    const Reading inside = face_reading(metered(kEmpty + kLampInside + "[room]\nsize = [4, 6, 2.7]\nwalls = 0.8\n"),
                                        Receptor::kFlat, Facing::kCamera);
    const double error = std::hypot(open.standard_error_lxs, inside.by_room_error_lxs, inside.standard_error_lxs);
    EXPECT_NEAR(inside.by_room_lxs, inside.exposure_lxs - open.exposure_lxs, 3.0 * error);
    EXPECT_GT(inside.by_room_lxs, 0.1 * inside.exposure_lxs);
    const Reading black = face_reading(metered(kEmpty + kLampInside + "[room]\nsize = [4, 6, 2.7]\nwalls = 0\n"),
                                       Receptor::kFlat, Facing::kCamera);
    EXPECT_EQ(black.by_room_lxs, 0.0);
}

// Even light in a room comes from its walls: the room's share of the lamp's and the even light is then all but the
// lamp's direct light. With nothing else there it is everything.
TEST(Room, AmbientLightIsTheRooms) {
    const Reading alone = face_reading(metered(kEmpty + kSpark + even_light(1000)), Receptor::kDome, Facing::kCamera);
    EXPECT_NEAR(alone.by_room_lxs / alone.exposure_lxs, 1.0, 1e-4);
    const Reading both =
        face_reading(metered(kEmpty + kLampInside + even_light(200)), Receptor::kFlat, Facing::kCamera);
    EXPECT_NEAR(both.by_room_lxs, both.by_light.back().exposure_lxs, 1e-9);
    EXPECT_NEAR(both.by_room_lxs, 1.0, 0.02);  // 200 lx for 1/200 s, less what the bulb hides
}

}  // namespace
}  // namespace understudy
