// The key on the face: the pattern's name, the shadow's edge, the fall-off.
#include <cmath>

#include "face_shapes.h"
#include "meter/face/key_fall_off.h"
#include "meter/face/light_pattern.h"
#include "meter/face/nose_edge.h"
#include "metered.h"

namespace understudy {
namespace {

const std::string kAnyLight = "[[light]]\nmodifier = \"bulb\"\nangle = 0\ndistance = 2\nmeter = 4\n";

// An egg 150 mm wide and 240 high with a nose that stands out 22 mm, and lips.
double egg(double x, double y) {
    const double inside = 1.0 - x * x / (0.075 * 0.075) - (y + 0.056) * (y + 0.056) / (0.120 * 0.120);
    return inside > 0.0 ? 0.085 * std::sqrt(inside) : -0.5;
}
SitterMesh egg_with_nose() {
    PlainMesh plain(kPlainEyeHeight);
    plain.sheet(egg, {-0.0748, -0.15, 0.0}, {0.0748, 0.07, 0.0}, 120, Zone::kCheek);
    const Double3 root(0.0, -0.006, egg(0.0, -0.006));
    const Double3 tip(0.0, -0.036, egg(0.0, -0.036) + 0.022);
    const auto wing = [](double x, double y) { return Double3(x, y, egg(x, y)); };
    for (const double side : {-1.0, 1.0}) {
        const Double3 high = wing(side * 0.013, -0.033);
        const Double3 low = wing(side * 0.013, -0.042);
        const bool left = side < 0.0;
        plain.triangle(root, left ? high : tip, left ? tip : high, Zone::kNose);
        plain.triangle(high, left ? low : tip, left ? tip : low, Zone::kNose);
    }
    plain.triangle(wing(-0.013, -0.042), wing(0.013, -0.042), tip, Zone::kNose);
    plain.sheet([](double x, double y) { return egg(x, y) + 0.0004 + 0.003 * std::sin((y + 0.060) / 0.008 * M_PI); },
                {-0.022, -0.060, 0.0}, {0.022, -0.052, 0.0}, 12, Zone::kLips);
    return plain.mesh();
}

class EggPatterns : public testing::Test {
  protected:
    EggPatterns()
        : studio_(studio_with(egg_with_nose(), {Double3(-0.031, 0.0, 0.045), Double3(0.031, 0.0, 0.045)}, kAnyLight)),
          stage_(studio_, Stage::With::kSitter),
          face_(measure_face(studio_.sitter, *stage_.sitter_mesh())) {}

    Vec3 light(double across_deg, double up_deg) const {
        const double a = radians(across_deg);
        const double e = radians(up_deg);
        return Vec3(face_->frame.origin +
                    1.5 * Double3(std::cos(e) * std::sin(a), std::sin(e), std::cos(e) * std::cos(a)));
    }

    Studio studio_;
    Stage stage_;
    std::optional<FaceMeasures> face_;
};

TEST_F(EggPatterns, FaceIsMeasured) {
    ASSERT_TRUE(face_);
    EXPECT_NEAR(face_->nose_tip, -0.036, 0.002);
    EXPECT_NEAR(face_->nose_base, -0.042, 0.002);
    EXPECT_NEAR(face_->nose_half_width, 0.014, 0.004);
    EXPECT_NEAR(face_->lip_top, -0.052, 0.002);
}

// Where the classes lie follows from the shapes. The egg's cheeks are turned 20 to 60 degrees aside, so from 75 degrees
// on the far one is dark, and past 140 the near one too. A nose 22 mm out and 13 mm to its wing shades the cheek beside
// it only past atan(13 / 22) = 31 degrees; a light nearer to the front and level throws no shadow off the nose. From
// above and the front it falls straight down. From 36 to 42 degrees aside its tip's shadow falls 22 tan a = 16 to 20 mm
// from the middle, well short of where the cheek turns dark, 50 mm out. From 58 degrees on it is 35 mm out and more and
// the cheek curves away to meet it: they close.
struct Named {
    LightPattern pattern;
    double across;
    double up;
};
std::vector<Named> lights_that_follow_from_geometry() {
    std::vector<Named> lights;
    for (const double side : {-1.0, 1.0}) {
        for (const double up : {-5.0, 0.0, 5.0}) lights.push_back({LightPattern::kFlat, side * 4.0, up});
        for (const double across : {2.0, 5.0}) {
            for (const double up : {45.0, 52.0, 60.0}) lights.push_back({LightPattern::kButterfly, side * across, up});
        }
        for (const double across : {36.0, 39.0, 42.0}) {
            for (const double up : {15.0, 25.0, 35.0}) lights.push_back({LightPattern::kLoop, side * across, up});
        }
        for (const double across : {58.0, 61.0}) {
            for (const double up : {30.0, 40.0}) lights.push_back({LightPattern::kRembrandt, side * across, up});
        }
        for (const double across : {80.0, 90.0, 100.0}) {
            for (const double up : {0.0, 15.0, 30.0}) lights.push_back({LightPattern::kSplit, side * across, up});
        }
        for (const double across : {145.0, 160.0, 175.0}) {
            for (const double up : {0.0, 20.0, 40.0}) lights.push_back({LightPattern::kRim, side * across, up});
        }
    }
    return lights;
}

TEST_F(EggPatterns, SixtyLightsAreNamedAsGeometryHasThem) {
    ASSERT_TRUE(face_);
    const FaceView view(stage_, *face_, studio_.camera.centre, 0.002);
    const auto lights = lights_that_follow_from_geometry();
    ASSERT_GE(lights.size(), 60U);
    for (const Named& expected : lights) {
        const auto reading = read_pattern(stage_, view, light(expected.across, expected.up));
        ASSERT_TRUE(reading) << expected.across << " " << expected.up;
        EXPECT_EQ(static_cast<int>(reading->pattern), static_cast<int>(expected.pattern))
            << expected.across << " across, " << expected.up << " up; far cheek " << reading->far_cheek_lit;
    }
}

// A point of the nose's ridge h over a flat cheek throws the edges of its shadow where the lines from the front's two
// sides through it meet the cheek: similar triangles, no more. Within 3 %: the steps along the skin are a fiftieth.
TEST(NoseEdge, IsWhatSimilarTrianglesSay) {
    constexpr double kRidge = 0.020;
    PlainMesh plain(kPlainEyeHeight);
    plain.sheet([](double, double) { return 0.0; }, {-0.09, -0.13, 0.0}, {0.09, 0.08, 0.0}, 4, Zone::kCheek);
    plain.quad({-0.0005, -0.06, 0.0}, {-0.0005, -0.06, kRidge}, {-0.0005, 0.03, kRidge}, {-0.0005, 0.03, 0.0},
               Zone::kNose);
    plain.quad({0.0005, -0.06, kRidge}, {0.0005, -0.06, 0.0}, {0.0005, 0.03, 0.0}, {0.0005, 0.03, kRidge}, Zone::kNose);
    const std::array<Double3, 2> eyes{Double3(-0.031, 0.0, -0.02), Double3(0.031, 0.0, -0.02)};
    for (const auto& [width, distance] : {std::pair(0.18, 1.0), std::pair(0.42, 1.0), std::pair(0.60, 2.0)}) {
        const double side = distance * std::sin(radians(45.0));
        const std::string light = "[[light]]\nmodifier = { shape = \"rectangle\", width = " + std::to_string(width) +
                                  ", height = 0.05 }\nposition = [" + std::to_string(-side) + ", 1.24, " +
                                  std::to_string(side) + "]\naim = [0, 1.24, 0]\nmeter = 4\n";
        const Studio studio = studio_with(plain.mesh(), eyes, light);
        const Stage stage(studio, Stage::With::kSitter);
        FaceMeasures face;
        face.frame.origin = {0.0, kPlainEyeHeight, 0.0};
        face.nose_base = -0.060;
        face.nose_half_width = 0.009;
        const FaceView view(stage, face, {0.0, kPlainEyeHeight, 2.0}, 0.002);
        const Emitter& key = stage.emitters().front();
        const auto edge = nose_edge(stage, view, face_shades(stage, view, key.centre()), key);
        ASSERT_TRUE(edge);
        const double half = 0.5 * width * std::sin(radians(45.0));
        const auto falls = [&](double x, double z) { return kRidge * -x / (z - kRidge); };
        const double expected = falls(-side - half, side - half) - falls(-side + half, side + half);
        EXPECT_NEAR(*edge, expected, 0.03 * expected) << width << " m at " << distance << " m";
    }
}

// Practice's table of depth and movement, a point light by the inverse square: 14 cm over the face at 1 m is 0.38 stop,
// a third of a stop is 11 cm nearer and 12 cm farther; and so on from 0.6 to 3 m. d (1 - 2^(-1/6)) and d (2^(1/6) - 1).
TEST(KeyFallOff, OfASmallLightIsTheInverseSquares) {
    struct Row {
        double distance, across, nearer, farther;
    };
    for (const Row& row : {Row{0.6, 0.605, 0.065, 0.073}, Row{1.0, 0.38, 0.109, 0.122}, Row{1.5, 0.26, 0.164, 0.184},
                           Row{2.0, 0.20, 0.218, 0.245}, Row{3.0, 0.13, 0.327, 0.367}}) {
        const Studio studio = studio_from(kEmpty +
                                          "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.02 }\nangle = 0\n"
                                          "distance = " +
                                          std::to_string(row.distance) + "\nmeter = 4\n");
        const Stage nobody(studio, Stage::With::kNobody);
        const KeyFallOff fall_off = key_fall_off(studio, nobody, value_of(set_powers(studio, nobody)));
        EXPECT_NEAR(fall_off.across_face_stops, row.across, 0.02);
        EXPECT_NEAR(fall_off.nearer_m, row.nearer, 0.003);
        EXPECT_NEAR(fall_off.farther_m, row.farther, 0.003);
    }
}

}  // namespace
}  // namespace understudy
