// What stands round the sitter, as rays meet it: discs, walls of their own surface, paint, and what fits into a room.
#include <gtest/gtest.h>

#include "scatter/light4.h"
#include "stage/mottled_paint.h"
#include "stage/stage.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

const std::string kNobody = "[sitter]\nhead = \"none\"\n";
const std::string kBulb = "[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.05 }\nmeter = 4\nangle = 0\n";

const MattSurface& matt(const Hit& hit) { return std::get<MattSurface>(*hit.surface); }

TEST(Surroundings, ADiscIsMetWithinItsRadius) {
    const Studio studio = studio_from(kNobody + kBulb +
                                      "height = 2\ndistance = 2\n[[panel]]\nshape = \"disc\"\ndiameter = 0.8\n"
                                      "position = [0, 1, 0]\naim = [0, 1, 1]\n");
    const Stage stage(studio, Stage::With::kNobody);
    for (const float angle : {0.0F, 0.8F, 2.5F, 4.0F}) {
        for (const float radius : {0.1F, 0.399F, 0.401F}) {
            const Ray ray{
                {radius * std::cos(angle), 1.0F + radius * std::sin(angle), 1.0F}, {0.0F, 0.0F, -1.0F}, 0.0F, 1.2F};
            const auto hit = stage.intersect(ray);
            EXPECT_EQ(hit && hit->thing == Thing::kPanel, radius < 0.4F) << angle << ' ' << radius;
            EXPECT_EQ(stage.blocks(ray), radius < 0.4F);
        }
    }
    EXPECT_NEAR(stage.panels()[0].area(), kPi * 0.16F, 1e-5F);
}

TEST(Surroundings, WallsCeilingAndFloorHaveTheirOwnSurfaces) {
    const Studio studio =
        studio_from(kNobody + kBulb +
                    "height = 2\ndistance = 0.9\n[backdrop]\nsurface = \"none\"\n[room]\nsize = [4, 5, "
                    "3]\nwalls = 0.5\nceiling = 0.7\nfloor = 0.2\n");
    const Stage stage(studio, Stage::With::kNobody);
    const auto reflectance = [&](const Vec3& direction) {
        const auto hit = stage.intersect({{0.3F, 1.1F, -0.4F}, direction});
        return hit && hit->thing == Thing::kWall ? matt(*hit).albedo.at(550.0F) : -1.0F;
    };
    EXPECT_FLOAT_EQ(reflectance({0.0F, 1.0F, 0.0F}), 0.7F);
    EXPECT_FLOAT_EQ(reflectance({0.0F, -1.0F, 0.0F}), 0.2F);
    for (const Vec3& level : {Vec3(1, 0, 0), Vec3(-1, 0, 0), Vec3(0, 0, 1), Vec3(0, 0, -1)}) {
        EXPECT_FLOAT_EQ(reflectance(level), 0.5F);
    }
}

Mottled two_greys() {
    Mottled paint;
    paint.first = Spectrum(0.1F);
    paint.second = Spectrum(0.5F);
    paint.scale_m = 0.5;
    return paint;
}

// Gradient noise is as often over as under its mean: half of the wall is the one tone and half the other, so the mean
// reflectance is the mean of the two.
TEST(MottledPaint, IsOnAverageTheMeanOfItsTones) {
    const MottledPaint paint(two_greys());
    double sum = 0.0;
    double squares = 0.0;
    constexpr int kPlaces = 40000;
    for (int i = 0; i < kPlaces; ++i) {
        // A lattice of 200 by 200 places 1.37 m apart: far enough for neighbours to be strangers.
        const int row = i / 200;
        const Vec3 place(1.37F * static_cast<float>(i % 200), 1.37F * static_cast<float>(row), -1.5F);
        const auto value = static_cast<double>(std::get<MattSurface>(paint.surface_at(place)).albedo.at(550.0F));
        sum += value / kPlaces;
        squares += value * value / kPlaces;
    }
    const double spread = std::sqrt(squares - sum * sum);
    EXPECT_NEAR(sum, 0.3, 3.0 * spread / std::sqrt(kPlaces));
    EXPECT_GT(spread, 0.05);  // it is mottled
}

TEST(MottledPaint, HasNoHardEdges) {
    const MottledPaint paint(two_greys());
    for (int i = 0; i < 20000; ++i) {
        const Vec3 place(0.001F * static_cast<float>(i), 1.2F, -1.5F);
        // The first octave's share rises by at most 1.1 · ½ · 1.5 · 2 (noise a cell) / 500 (mm a cell) = 0.0033 a
        // millimetre, the four together, each as steep as the first, by four times that.
        EXPECT_LT(std::abs(paint.share_at(place + Vec3(0.001F, 0.0F, 0.0F)) - paint.share_at(place)), 0.0135F) << i;
    }
}

// Noise on a table of 256 entries repeats after 256 cells; shifted by any multiple of the cell it must be a stranger to
// itself.
TEST(MottledPaint, DoesNotRepeat) {
    const MottledPaint paint(two_greys());
    for (const float shift : {8.0F, 32.0F, 64.0F, 128.0F}) {
        double product = 0.0;
        double square = 0.0;
        for (int i = 0; i < 10000; ++i) {
            const int row = i / 100;
            const Vec3 place(1.37F * static_cast<float>(i % 100), 1.37F * static_cast<float>(row), -1.5F);
            const double one = static_cast<double>(paint.share_at(place)) - 0.5;
            product += one * (static_cast<double>(paint.share_at(place + Vec3(shift, 0.0F, 0.0F))) - 0.5);
            square += one * one;
        }
        EXPECT_LT(std::abs(product / square), 4.0 / 100.0) << shift;  // four standard errors, 1 / √n each
    }
}

TEST(MottledPaint, IsTheSameEveryTimeAndAnotherForAnotherSeed) {
    Mottled other = two_greys();
    other.seed = 1;
    const MottledPaint paint(two_greys());
    const MottledPaint again(two_greys());
    const MottledPaint seeded(other);
    int different = 0;
    for (int i = 0; i < 100; ++i) {
        const Vec3 place(0.1F * static_cast<float>(i), 1.0F, -1.5F);
        EXPECT_EQ(paint.share_at(place), again.share_at(place));
        different += paint.share_at(place) != seeded.share_at(place) ? 1 : 0;
    }
    EXPECT_GT(different, 90);
}

// Wall, sweep and floor are one sheet: the paint runs on over it.
TEST(MottledPaint, IsOnTheBackdrop) {
    const Studio studio = studio_from(kNobody + kBulb + "[backdrop]\nsurface = { mottled = [0.1, 0.5] }\n");
    const Stage stage(studio, Stage::With::kNobody);
    float least = 1.0F;
    float most = 0.0F;
    for (int i = 0; i < 400; ++i) {
        const Vec3 from(-1.2F + 0.006F * static_cast<float>(i), 1.0F, 0.0F);
        const auto hit = stage.intersect({from, {0.0F, 0.0F, -1.0F}});
        ASSERT_TRUE(hit && hit->thing == Thing::kBackdrop);
        least = std::min(least, matt(*hit).albedo.at(550.0F));
        most = std::max(most, matt(*hit).albedo.at(550.0F));
    }
    EXPECT_GT(most - least, 0.1F);
    EXPECT_GE(least, 0.1F - 1e-6F);
    EXPECT_LE(most, 0.5F + 1e-6F);
}

std::string outside(const std::string& scene) {
    const Studio studio = studio_from(kNobody + "[backdrop]\nsurface = \"none\"\n" + scene);
    const Problems problems = Stage(studio, Stage::With::kNobody).problems_with(studio);
    return problems.size() == 1 ? problems[0].text : "problems: " + std::to_string(problems.size());
}

TEST(Surroundings, WhatDoesNotGoIntoTheRoomIsTold) {
    const std::string room = "[room]\nsize = [4, 5, 2.4]\n";
    const std::string camera = "[camera]\ndistance = 2\n";
    const std::string bulb = "[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.1 }\nmeter = 4\n";
    // An edge that the ceiling would cut off is a warning of the report.
    EXPECT_EQ(outside(room + camera + bulb + "height = 2.39\n"), "problems: 0");
    struct Case {
        std::string scene;
        std::vector<std::string> words;
    };
    const std::vector<Case> cases = {
        {room + camera + bulb + "height = 2.5\ndistance = 1.5\n",
         {"test.toml:12:10: height: the light \"key\" stands 0.10 m beyond the ceiling", "2.4]"}},
        {room + camera + bulb + "angle = -90\ndistance = 2.5\n", {"distance: the light", "the camera-left wall"}},
        {room + camera + bulb + "angle = 90\ndistance = 2.5\n", {"the camera-right wall"}},
        {room + camera + bulb + "angle = 180\ndistance = 3\n", {"the back wall"}},
        {room + camera + bulb + "position = [0, 1, 2.6]\naim = \"face\"\n",
         {"position: the light", "behind the camera"}},
        {room + camera + bulb + "[[panel]]\nname = \"flag\"\nsize = [1, 1]\nposition = [0, -0.1, 1]\n",
         {"position: the panel \"flag\"", "the floor"}},
        {room + "[camera]\ndistance = 3\n" + bulb, {"distance: the camera", "the wall behind the camera"}},
    };
    for (const Case& one : cases) {
        const std::string text = outside(one.scene);
        for (const std::string& word : one.words) EXPECT_NE(text.find(word), std::string::npos) << text << "\n" << word;
        EXPECT_NE(text.find("; expected "), std::string::npos) << text;
    }
}

}  // namespace
}  // namespace understudy
