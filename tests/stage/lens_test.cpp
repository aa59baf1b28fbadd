// A lens of glasses on the stage: where it mirrors light to, and how much passes.
#include "stage/lens.h"

#include <gtest/gtest.h>

#include "scatter/glass_pane.h"
#include "stage/stage.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

// Before the origin, its vertex at 0, looking along +z and leaning.
SpectacleLens lens_at_origin(double radius_m, double lean_deg) {
    SpectacleLens lens;
    lens.radius_m = radius_m;
    const double lean = radians(lean_deg);
    lens.axis = {0.0, -std::sin(lean), std::cos(lean)};
    lens.up = {0.0, std::cos(lean), std::sin(lean)};
    lens.centre = -radius_m * lens.axis;
    return lens;
}

Vec3 mirrored(const Lens& lens, const Ray& ray) {
    const auto hit = lens.intersect(ray);
    EXPECT_TRUE(hit);
    return ray.direction - 2.0F * glm::dot(ray.direction, hit->normal) * hit->normal;
}

// The law of reflection: a plane that leans by 9° turns a level ray 18° down.
TEST(Lens, LeaningForwardMirrorsTwiceAsFarDown) {
    const Lens lens(lens_at_origin(0.110, 9.0), LensCoating::kPlain);
    const Vec3 away = mirrored(lens, {{0.0F, 0.0F, 2.0F}, {0.0F, 0.0F, -1.0F}});
    EXPECT_NEAR(degrees(std::asin(static_cast<double>(away.y))), -18.0, 1e-3);
    EXPECT_NEAR(away.x, 0.0F, 1e-6F);
}

// A sphere's normal 25 mm from its axis stands arcsin (25 / 110) = 13.14° aslant: a ray along the axis is sent twice
// that aside, 26.3°, which is the usual ±26° of a lens 50 mm wide.
TEST(Lens, CurvatureSpreadsTheMirrorImages) {
    const Lens lens(lens_at_origin(0.110, 0.0), LensCoating::kPlain);
    const Vec3 away = mirrored(lens, {{0.02499F, 0.0F, 2.0F}, {0.0F, 0.0F, -1.0F}});
    EXPECT_NEAR(degrees(std::asin(static_cast<double>(away.x))), 2.0 * degrees(std::asin(0.02499 / 0.110)), 1e-3);
    // An object far off has its image at the mirror's focus, half the radius behind it (Hecht, Optics, 5.4.3): a ray
    // that is sent off at 1 mm from the axis seems to come from 55 mm behind the vertex.
    const Vec3 near_axis = mirrored(lens, {{0.001F, 0.0F, 2.0F}, {0.0F, 0.0F, -1.0F}});
    EXPECT_NEAR(0.001F * near_axis.z / near_axis.x, 0.055F, 1e-4F);
}

TEST(Lens, EndsAtItsOutlineAndOnItsOwnSideOfTheSphere) {
    SpectacleLens place = lens_at_origin(0.110, 0.0);
    place.half_width_m = 0.025;
    place.half_height_m = 0.018;
    const Lens lens(place, LensCoating::kPlain);
    const auto meets = [&](float x, float y) {
        return lens.intersect({{x, y, 2.0F}, {0.0F, 0.0F, -1.0F}}).has_value();
    };
    EXPECT_TRUE(meets(0.0249F, 0.0F));
    EXPECT_FALSE(meets(0.0251F, 0.0F));
    EXPECT_TRUE(meets(0.0F, 0.0179F));
    EXPECT_FALSE(meets(0.0F, 0.0181F));
    EXPECT_FALSE(meets(0.0249F, 0.0179F));
    // From within, outward the other way: only the sphere's far side is there.
    EXPECT_FALSE(lens.intersect({{0.0F, 0.0F, -0.1F}, {0.0F, 0.0F, -1.0F}}));
}

TEST(Lens, RaysKnowWhereTheyCannotMeetIt) {
    const Lens lens(lens_at_origin(0.110, 9.0), LensCoating::kCoated);
    for (int i = 0; i < 2000; ++i) {
        const float angle = 0.7F * static_cast<float>(i);
        const float aside = 0.04F * static_cast<float>(i) / 2000.0F;
        const Ray ray{{aside * std::cos(angle), aside * std::sin(angle), 1.0F}, {0.0F, 0.0F, -1.0F}};
        WideRays rays;
        rays.set(0, ray);
        if (!lens.intersect(ray)) continue;
        EXPECT_TRUE((lanes_of(lens.may_meet(rays)) & 1U) != 0) << i;
    }
}

// Through a bare lens 92.3 % of the light, through a coated one over 99 %: shadow rays are weakened, not stopped, and
// whoever asks what stands there looks through.
TEST(Lens, WeakensLightAndHidesNothing) {
    Studio studio = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nname = \"key\"\nmodifier = { shape = "
        "\"disc\", diameter = 0.5 }\nposition = [0, 0, 2]\naim = [0, 0, 0]\nmeter = 4.0\n");
    studio.sitter.lenses = {lens_at_origin(0.110, 0.0)};
    studio.sitter.glasses = GlassesSettings{};
    const Ray ray{{0.0F, 0.0F, -0.02F}, {0.0F, 0.0F, 1.0F}, 0.0F, 1.9F};
    studio.sitter.glasses->glass = LensCoating::kPlain;
    const Stage plain(studio, Stage::With::kSitter);
    EXPECT_NEAR(plain.passes(ray), 1.0F - 2.0F * 0.04F / 1.04F, 1e-5F);
    EXPECT_FALSE(plain.blocks(ray));
    EXPECT_EQ(plain.blocker({ray.origin, ray.direction}).value_or(""), "key");
    studio.sitter.glasses->glass = LensCoating::kCoated;
    EXPECT_NEAR(Stage(studio, Stage::With::kSitter).passes(ray), 0.992F, 0.001F);
    EXPECT_FLOAT_EQ(Stage(studio, Stage::With::kNobody).passes(ray), 1.0F);
}

}  // namespace
}  // namespace understudy
