// Panels, backdrop and room against closed forms: what they send back of light that is known.
#include <gtest/gtest.h>

#include "scatter/random_stream.h"
#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

struct Mean {
    double value = 0.0;
    double error = 0.0;  // standard error, of independent runs
};

// Of layer 0, per lumen; `place` gives each path its own gathering.
template <class Place>
Mean reading(const Stage& stage, std::uint32_t paths_a_run, const Place& place) {
    const PathTracer tracer(stage);
    constexpr int kRuns = 64;
    double sum = 0.0;
    double squares = 0.0;
    for (std::uint32_t run = 0; run < kRuns; ++run) {
        double mean = 0.0;
        for (std::uint32_t i = 0; i < paths_a_run; ++i) {
            const Sampler sampler(1, run, i);
            PathLight light;
            const auto [where, weight] = place();
            tracer.gather(where, sample_waves(sampler.group(1).x), sampler, light);
            const Light4& layer = light.layers[0];
            mean += weight * static_cast<double>(layer.x + layer.y + layer.z + layer.w) / (4.0 * paths_a_run);
        }
        sum += mean / kRuns;
        squares += mean * mean / kRuns;
    }
    return {sum, std::sqrt((squares - sum * sum) / (kRuns - 1))};
}

std::string lamp_at(const std::string& position) {
    return "[sitter]\nhead = \"none\"\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.05 }\nmeter = 4.0\n"
           "position = " +
           position + "\naim = [0, 1, 0.5]\n";
}

// A white disc, evenly lit by a far lamp, shines on a receiver that turns its back to the lamp: ρ · E · F with Howell's
// configuration factors of a disc, R² / (R² + h²) on its axis and ½ [1 − (Z − 2ρ²) / √(Z² − 4ρ²)] off it (Siegel and
// Howell).
TEST(Surroundings, ALitDiscFillsByItsConfigurationFactor) {
    struct Case {
        double aside, factor;
    };
    for (const Case& one : {Case{0.0, 0.20000000}, Case{0.5, 0.14644661}, Case{1.0, 0.06587843}}) {
        const Studio studio = studio_from(lamp_at("[0, 1.25, 100]") +
                                          "[backdrop]\nsurface = \"none\"\n[[panel]]\nshape = \"disc\"\ndiameter = 1\n"
                                          "surface = 0.8\nposition = [0, 1.25, -1]\naim = [0, 1.25, 1]\n");
        const Stage stage(studio, Stage::With::kNobody);
        const Gathering back{{static_cast<float>(one.aside), 1.25F, 0.0F}, {0.0F, 0.0F, -1.0F}};
        const Mean fill = reading(stage, 512, [&] { return std::pair(back, 1.0); });
        const double expected = 0.8 / (4.0 * kPiDouble * 101.0 * 101.0) * one.factor;
        // At the disc's edge the lamp is 0.5² / 101² · 3/2 weaker: 4e-5.
        EXPECT_NEAR(fill.value, expected, 3.0 * fill.error + 1e-4 * expected) << one.aside;
        EXPECT_LT(3.0 * fill.error, 0.03 * expected);
    }
}

// Whatever the walls' reflectances, each lumen ends in one of them: Σ (1 − ρ) E A = 1 − what the lamp itself swallows.
// A small black lamp takes the share A / ΣA (reciprocity) of what the walls send, at most ρ / (1 − ρ) of a lumen.
TEST(Surroundings, EveryLumenEndsInAWallWithThreeReflectances) {
    const Studio studio =
        studio_from(lamp_at("[0.6, 1.7, -0.2]") +
                    "[camera]\ndistance = 0.9\n[backdrop]\nsurface = \"none\"\n[room]\nsize = [2, 2.5, "
                    "2]\nwalls = 0.6\nceiling = 0.8\nfloor = 0.2\n");
    const Stage stage(studio, Stage::With::kNobody);
    RandomStream random(5);
    const Vec3 size(2.0F, 2.0F, 2.5F);  // along x, y, z
    const auto on_a_wall = [&] {
        const Vec3 u = random.next3();
        const auto pick = static_cast<std::uint32_t>(random.next() * 6.0F);
        const auto axis = static_cast<glm::length_t>(pick / 2);
        const float side = pick % 2 == 0 ? -1.0F : 1.0F;
        Vec3 place = (u - 0.5F) * size;
        place[axis] = side * (0.5F * size[axis] - 1e-4F);
        Vec3 normal(0.0F);
        normal[axis] = -side;
        const double rho = axis != 1 ? 0.6 : side > 0.0F ? 0.8 : 0.2;
        const auto area = static_cast<double>(size.x * size.y * size.z / size[axis]);
        // The floor is a millimetre below the mark's level.
        return std::pair(Gathering{place + Vec3(0.0F, 0.5F * size.y - 0.001F, 0.0F), normal}, 6.0 * area * (1.0 - rho));
    };
    const Mean taken = reading(stage, 2048, on_a_wall);
    const double swallowed = kPiDouble * 0.05 * 0.05 / 28.0 * 0.8 / 0.2;
    EXPECT_LT(taken.value, 1.0 + 3.0 * taken.error);
    EXPECT_GT(taken.value, 1.0 - swallowed - 3.0 * taken.error);
    EXPECT_LT(3.0 * taken.error, 0.01);
}

// A lamp behind the paper does not reach the sitter; one that turns its back to the sitter and lights a black paper
// gives nothing back.
TEST(Surroundings, PaperIsTight) {
    const Studio behind = studio_from(lamp_at("[0, 1.25, -2]"));
    const Stage paper(behind, Stage::With::kNobody);
    const auto face = [&] { return std::pair(Gathering{Vec3(behind.points.face), {0.0F, 0.0F, -1.0F}}, 1.0); };
    EXPECT_EQ(reading(paper, 16, face).value, 0.0);
    const Studio lit = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = 0\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.4 "
        "}\nmeter = 4\nposition = [0.3, 1.25, -0.5]\naim = \"backdrop\"\n");
    const Stage black(lit, Stage::With::kNobody);
    EXPECT_EQ(reading(black, 16, face).value, 0.0);
    const auto wall = [&] { return std::pair(Gathering{Vec3(0.0F, 1.25F, -1.499F)}, 1.0); };
    EXPECT_GT(reading(black, 16, wall).value, 0.1);
}

// A flag between a light and the backdrop takes its light from there and leaves the face's as it was.
TEST(Surroundings, AFlagKeepsALightFromTheBackdrop) {
    const std::string scene = lamp_at("[1.2, 1.25, 0.8]") + "[backdrop]\nsurface = 0\n";
    const std::string flag =
        "[[panel]]\nname = \"flag\"\nsurface = \"black\"\nsize = [0.4, 1.2]\nposition = [0.9, 1.25, "
        "0.3]\naim = [1.2, 1.25, 0.8]\n";
    const Studio open = studio_from(scene);
    const Studio flagged = studio_from(scene + flag);
    const Stage without(open, Stage::With::kNobody);
    const Stage with(flagged, Stage::With::kNobody);
    const auto wall = [&] { return std::pair(Gathering{Vec3(0.2F, 1.25F, -1.499F)}, 1.0); };
    const auto face = [&] { return std::pair(Gathering{Vec3(open.points.face), {0.8F, 0.0F, 0.6F}}, 1.0); };
    const double free = reading(without, 64, wall).value;
    EXPECT_GT(free, 0.0);
    EXPECT_EQ(reading(with, 64, wall).value, 0.0);
    EXPECT_NEAR(reading(with, 64, face).value, reading(without, 64, face).value,
                0.05 * reading(without, 64, face).value);
}

}  // namespace
}  // namespace understudy
