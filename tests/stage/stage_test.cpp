// A studio's things on the stage: what a ray meets first, what is in the way, and what stands inside the sitter.
#include "stage/stage.h"

#include <gtest/gtest.h>

#include "support/studio_from.h"

namespace understudy {
namespace {

constexpr const char* kKey =
    "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.5 }\nangle = 0\nheight = 1.25\n"
    "distance = 2.0\nmeter = 4.0\n";

Studio with(const std::string& head, const std::string& more) {
    return studio_from("[sitter]\nhead = \"" + head + "\"\n" + more);
}

TEST(Stage, RaysMeetTheNearestThing) {
    const Studio studio =
        with("ball", std::string(kKey) +
                         "[[panel]]\nname = \"flag\"\nsurface = \"black\"\nsize = [0.4, 0.4]\nangle = 0\n"
                         "height = 1.25\ndistance = 1.0\n[backdrop]\nsurface = \"grey\"\n");
    const Stage stage(studio, Stage::With::kSitter);
    const Vec3 face(studio.points.face);
    const Vec3 ahead(0.0F, 0.0F, 1.0F);

    const auto flag = stage.intersect({face + 0.2F * ahead, ahead});
    ASSERT_TRUE(flag);
    EXPECT_EQ(flag->thing, Thing::kPanel);
    EXPECT_NEAR(flag->distance, 0.8F, 1e-4F);
    EXPECT_LT(flag->geometric.z, 0.0F);  // toward where the ray came from

    const auto light = stage.intersect({face + 1.2F * ahead, ahead});
    ASSERT_TRUE(light);
    EXPECT_EQ(light->thing, Thing::kEmitter);
    EXPECT_TRUE(light->luminous);
    EXPECT_NEAR(light->distance, 0.8F, 1e-4F);
    const auto behind = stage.intersect({face + 3.0F * ahead, -ahead});
    ASSERT_TRUE(behind);
    EXPECT_EQ(behind->thing, Thing::kEmitter);
    EXPECT_FALSE(behind->luminous);

    const auto ball = stage.intersect({face + 0.5F * ahead, -ahead});
    ASSERT_TRUE(ball);
    EXPECT_EQ(ball->thing, Thing::kBall);
    EXPECT_NEAR(ball->distance, 0.4F, 1e-5F);
    EXPECT_NEAR(ball->shading.z, 1.0F, 1e-5F);

    const auto backdrop = stage.intersect({face - 0.5F * ahead, -ahead});
    ASSERT_TRUE(backdrop);
    EXPECT_EQ(backdrop->thing, Thing::kBackdrop);
    EXPECT_NEAR(backdrop->position.z, -1.5F, 1e-4F);

    EXPECT_EQ(stage.blocker({face + 0.5F * ahead, ahead}), "flag");
    EXPECT_EQ(stage.blocker({face + 1.5F * ahead, ahead}), "key");
    EXPECT_EQ(stage.blocker({face + 0.5F * ahead, -ahead}), "ball");
    EXPECT_TRUE(stage.blocks({face + 0.2F * ahead, ahead}));
    EXPECT_FALSE(stage.blocks({face + 0.2F * ahead, ahead, 0.0F, 0.7F}));
    EXPECT_FALSE(stage.intersect({face + 0.2F * ahead, Vec3(0.0F, 1.0F, 0.0F)}));
}

TEST(Stage, NobodyStandsInAFreeMetersWay) {
    const Studio studio = with("ball", kKey);
    const Stage stage(studio, Stage::With::kNobody);
    const Ray through{Vec3(studio.points.face) + Vec3(0.0F, 0.0F, 0.5F), Vec3(0.0F, 0.0F, -1.0F), 0.0F, 1.0F};
    EXPECT_FALSE(stage.blocks(through));
    EXPECT_TRUE(Stage(studio, Stage::With::kSitter).blocks(through));
}

TEST(Stage, TheAmbientHasItsLayer) {
    const Studio dark = with("ball", kKey);
    EXPECT_EQ(Stage(dark, Stage::With::kSitter).layer_count(), 1U);
    const Studio lit = with("ball", std::string(kKey) + "[room]\nambient = \"10 lx\"\n");
    EXPECT_EQ(Stage(lit, Stage::With::kSitter).layer_count(), 2U);
}

TEST(Stage, FindsLightsAndCamerasInsideTheBall) {
    const auto problems = [](const std::string& light_place, const std::string& camera) {
        const Studio studio =
            studio_from("[camera]\n" + camera + "[sitter]\nhead = \"ball\"\n[[light]]\nname = \"key\"\nmodifier = { " +
                        "shape = \"disc\", diameter = 0.05 }\nmeter = 4.0\n" + light_place);
        return Stage(studio, Stage::With::kSitter).problems_with(studio);
    };
    EXPECT_TRUE(problems("distance = 1.0\n", "distance = 2.0\n").empty());
    const Problems light = problems("position = [0.0, 1.30, 0.0]\n", "distance = 2.0\n");
    ASSERT_EQ(light.size(), 1U);
    EXPECT_EQ(light[0].blame, Blame::kWrongInput);
    EXPECT_NE(light[0].text.find("\"key\""), std::string::npos);
    // Its middle is clear, its edge is not.
    EXPECT_EQ(problems("position = [0.0, 1.25, 0.102]\naim = [0.0, 3.0, 0.102]\n", "distance = 2.0\n").size(), 1U);
    const Problems camera = problems("distance = 1.0\n", "position = [0.0, 1.25, 0.05]\nfocus = \"1 m\"\n");
    ASSERT_EQ(camera.size(), 1U);
    EXPECT_NE(camera[0].text.find("camera"), std::string::npos);
}

}  // namespace
}  // namespace understudy
