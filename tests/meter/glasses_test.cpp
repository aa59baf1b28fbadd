// Lights that glasses mirror over an eye, told by geometry: the law of reflection on the lens's own sphere.
#include <fmt/format.h>

#include "meter/corneal_mirror.h"
#include "meter/warnings.h"
#include "metered.h"
#include "sitter/eye.h"
#include "stage/camera.h"

namespace understudy {
namespace {

std::string scene(const std::string& glasses, const Double3& light) {
    return fmt::format(
        "[camera]\ndistance = 2.2\n[backdrop]\nsurface = \"none\"\n[sitter]\nhead = \"aspen\"\nglasses = {}\n"
        "[[light]]\nname = \"key\"\nmodifier = {{ shape = \"sphere\", diameter = 0.16 }}\nposition = [{}, {}, {}]\n"
        "meter = 4\n",
        glasses, light.x, light.y, light.z);
}

std::vector<Warning> glares(const Studio& studio) {
    const Stage stage(studio, Stage::With::kSitter);
    const Stage nobody(studio, Stage::With::kNobody);
    return warn_of_glasses(studio, stage, value_of(set_powers(studio, nobody)));
}

const Warning* over(const std::vector<Warning>& warnings, const std::string& eye) {
    for (const Warning& warning : warnings) {
        if (warning.by == eye) return &warning;
    }
    return nullptr;
}

struct Sight {
    Double3 on_lens, onward;  // where the camera's way to an iris meets the lens, and where it is mirrored to
};

Sight sight_of(const Studio& studio, std::size_t eye) {
    const SpectacleLens& lens = studio.sitter.lenses[eye];
    const Double3 camera = studio.camera.centre;
    const Double3 way = glm::normalize(iris_centre(studio.sitter.eyes->at(eye)) - camera);
    const Double3 from = camera - lens.centre;
    const double along = -glm::dot(from, way);
    const double aside = glm::dot(from + along * way, from + along * way);
    const Double3 place = camera + (along - std::sqrt(lens.radius_m * lens.radius_m - aside)) * way;
    const Double3 normal = (place - lens.centre) / lens.radius_m;
    return {place, way - 2.0 * glm::dot(way, normal) * normal};
}

// A lamp put where the sight of the right iris is mirrored to lies over that eye; Alhazen's problem, solved the other
// way round, agrees on the place. A lamp of 8 cm radius a metre and a half away is a spot of some 4 mm radius.
TEST(GlassesGlare, IsTheLampInTheMirroredSight) {
    const Studio first = studio_from(scene("{ glass = \"plain\" }", {1.0, 3.0, 1.0}));
    for (std::size_t e = 0; e < 2; ++e) {
        const Sight sight = sight_of(first, e);
        const Double3 lamp = sight.on_lens + 1.5 * sight.onward;
        const SpectacleLens& lens = first.sitter.lenses[e];
        const MirrorPoint mirror = mirror_point(lens.centre, lens.radius_m, lamp, first.camera.centre);
        EXPECT_LT(glm::distance(mirror.point, sight.on_lens), 1e-6);
        const auto warnings = glares(studio_from(scene("{ glass = \"plain\" }", lamp)));
        const Warning* warning = over(warnings, e == 0 ? "camera-left" : "camera-right");
        ASSERT_NE(warning, nullptr);
        EXPECT_EQ(warning->thing, "key");
        EXPECT_GT(warning->number, 8.0);
        EXPECT_LT(warning->number, 60.0);
        // Bare glass mirrors more than ten times what coated glass does: three stops and more.
        const auto coated = glares(studio_from(scene("{ glass = \"coated\" }", lamp)));
        if (const Warning* faint = over(coated, warning->by)) {
            EXPECT_LT(*faint->also, *warning->also - 2.5);
        }
        // Level with the eyes the mirror image is far from them: twice the lean away.
        const Double3 level(lamp.x, first.points.face.y, lamp.z);
        EXPECT_EQ(over(glares(studio_from(scene("{ glass = \"plain\" }", level))), warning->by), nullptr);
    }
}

TEST(GlassesGlare, GoesWhereTheWarningSaysItGoes) {
    const Sight sight = sight_of(studio_from(scene("{ glass = \"plain\" }", {1.0, 3.0, 1.0})), 0);
    const Double3 lamp = sight.on_lens + 1.5 * sight.onward;
    const auto warnings = glares(studio_from(scene("{ glass = \"plain\" }", lamp)));
    const Warning* warning = over(warnings, "camera-left");
    ASSERT_NE(warning, nullptr);
    ASSERT_TRUE(warning->raise_m);
    const Double3 raised = lamp + Double3(0.0, *warning->raise_m + 0.01, 0.0);
    EXPECT_EQ(over(glares(studio_from(scene("{ glass = \"plain\" }", raised))), "camera-left"), nullptr);
    ASSERT_TRUE(warning->tip_deg);
    Studio tipped = studio_from(scene("{ glass = \"plain\" }", lamp));
    for (SpectacleLens& lens : tipped.sitter.lenses) {
        const Double3 middle = lens.centre + lens.radius_m * lens.axis;
        const double tip = radians(*warning->tip_deg);
        const Double3 axis = std::cos(tip) * lens.axis - std::sin(tip) * lens.up;
        lens.up = std::cos(tip) * lens.up + std::sin(tip) * lens.axis;
        lens.axis = axis;
        lens.centre = middle - lens.radius_m * axis;
    }
    EXPECT_EQ(over(glares(tipped), "camera-left"), nullptr);
}

TEST(GlassesGlare, NeedsGlasses) {
    const Sight sight = sight_of(studio_from(scene("{ glass = \"plain\" }", {1.0, 3.0, 1.0})), 0);
    EXPECT_TRUE(glares(studio_from(scene("\"none\"", sight.on_lens + 1.5 * sight.onward))).empty());
}

}  // namespace
}  // namespace understudy
