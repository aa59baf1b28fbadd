// What a path brings through a lens of glasses and from its mirror image.
#include <gtest/gtest.h>

#include "scatter/glass_pane.h"
#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

// A lens before the camera's way, flat as far as a ray can tell, turned 45° about the upright axis.
Studio behind_lens(const std::string& lights, LensCoating glass) {
    Studio studio = studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n" + lights);
    SpectacleLens lens;
    lens.radius_m = 100.0;
    lens.axis = glm::normalize(Double3(1.0, 0.0, 1.0));
    lens.right = glm::normalize(Double3(1.0, 0.0, -1.0));
    lens.centre = -lens.radius_m * lens.axis;
    studio.sitter.lenses = {lens};
    studio.sitter.glasses = GlassesSettings{};
    studio.sitter.glasses->glass = glass;
    return studio;
}

std::string lamp(const std::string& position) {
    return "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.4 }\nposition = " + position +
           "\naim = [0, 0, 0]\nlumens = 1000\n";
}

// By Fresnel at 45° both faces of bare glass send back 9.7 % (r⊥ = 0.0920, r∥ = 0.0085: Born and Wolf 1.5.2), the rest
// goes straight on.
TEST(LensPath, SharesTheLightBetweenMirrorImageAndStraightOn) {
    const double mirrored = 0.5 * (2.0 * 0.092013 / 1.092013 + 2.0 * 0.0084664 / 1.0084664);
    const Studio studio = behind_lens(lamp("[2, 0, 0]") + lamp("[0, 0, -2]"), LensCoating::kPlain);
    const Stage stage(studio, Stage::With::kSitter);
    const Sampler sampler(1, 0, 0);
    PathLight light;
    PathTracer(stage).look({{0.0F, 0.0F, 2.0F}, {0.0F, 0.0F, -1.0F}}, sample_waves(0.4F), sampler, light);
    const float direct = stage.emitters()[0].radiance({2.0F, 0.0F, 0.0F}, {-1.0F, 0.0F, 0.0F});
    EXPECT_NEAR(light.layers[0].x / direct, mirrored, 1e-4);
    EXPECT_EQ(light.glints[0], light.layers[0].x);
    EXPECT_EQ(light.by_hair[0], Light4(0.0F)) << "or it would be booked twice";
    EXPECT_EQ(light.glints[1], 0.0F);
    EXPECT_NEAR(light.layers[1].x / direct, 1.0 - mirrored, 1e-4);
}

// What is seen through glasses is as far as it is.
TEST(LensPath, KeepsDistances) {
    Studio studio = behind_lens(lamp("[2, 1, 2]"), LensCoating::kCoated);
    studio.setup.panels.push_back({});
    studio.setup.panels.back().surface = Reflectance{0.5};
    studio.panels.push_back({{0.0, 0.0, -1.0}, {0.0, 0.0, 1.0}, {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}});
    const Stage stage(studio, Stage::With::kSitter);
    PathLight light;
    const FirstSight sight =
        PathTracer(stage).look({{0.0F, 0.0F, 2.0F}, {0.0F, 0.0F, -1.0F}}, sample_waves(0.4F), Sampler(1, 0, 0), light);
    EXPECT_NEAR(sight.distance, 3.0F, 1e-4F);
    EXPECT_GT(sight.albedo.x, 0.0F);
}

}  // namespace
}  // namespace understudy
