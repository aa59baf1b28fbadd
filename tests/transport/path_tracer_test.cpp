// The path tracer against light that is known in closed form.
#include "transport/path_tracer.h"

#include <gtest/gtest.h>

#include "scatter/random_stream.h"
#include "support/studio_from.h"
#include "transport/light_sample.h"

namespace understudy {
namespace {

struct Mean {
    double value = 0.0;
    double error = 0.0;  // standard error, of independent runs
};

Mean mean_of(const std::vector<double>& runs) {
    Mean mean;
    for (const double run : runs) mean.value += run / static_cast<double>(runs.size());
    for (const double run : runs) mean.error += std::pow(run - mean.value, 2.0);
    const auto n = static_cast<double>(runs.size());
    mean.error = std::sqrt(mean.error / (n * (n - 1.0)));
    return mean;
}

double average(const Light4& light) { return static_cast<double>(light.x + light.y + light.z + light.w) / 4.0; }

// Illuminance per lumen of layer 0, runs of 64 stratified samples each.
Mean illuminance(const Stage& stage, const Gathering& place, std::size_t layer, std::uint32_t runs) {
    const PathTracer tracer(stage);
    std::vector<double> results;
    for (std::uint32_t run = 0; run < runs; ++run) {
        double sum = 0.0;
        for (std::uint32_t i = 0; i < 64; ++i) {
            const Sampler sampler(1, run, i);
            PathLight light;
            tracer.gather(place, sample_waves(sampler.group(1).x), sampler, light);
            sum += average(light.layers[layer]) / 64.0;
        }
        results.push_back(sum);
    }
    return mean_of(results);
}

std::string globe(double diameter, double distance) {
    return "[[light]]\nmodifier = { shape = \"sphere\", diameter = " + std::to_string(diameter) +
           " }\nmeter = 4.0\nangle = 0\ndistance = " + std::to_string(distance) + "\n";
}

// A closed room with walls of reflectance ρ round a lamp of 1 lm takes up 1 / (1 − ρ (1 − f)) lm in all, f the share of
// light from the walls that the lamp swallows (integrating-sphere theory: the sum of (ρ (1 − f))ⁿ). A convex lamp's f
// is its area over the walls' (reciprocity: A₁ F₁₂ = A₂ F₂₁).
TEST(PathTracer, AClosedRoomMultipliesItsLight) {
    const double rho = 0.8;
    const Studio studio = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[room]\nsize = [2, 2, 2]\nwalls = 0.8\n"
        "[camera]\ndistance = 0.9\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.05 }\nmeter = 4.0\n"
        "position = [0, 0.999, 0]\naim = [0, 0.999, 1]\n");
    const Stage stage(studio, Stage::With::kNobody);
    const PathTracer tracer(stage);
    RandomStream random(2);
    std::vector<double> runs;
    for (std::uint32_t run = 0; run < 64; ++run) {
        double sum = 0.0;
        for (std::uint32_t i = 0; i < 2048; ++i) {
            // A place on one of six equal walls.
            const Vec3 u = random.next3();
            const float side = random.next() * 6.0F;
            const auto axis = static_cast<glm::length_t>(side) % 3;
            const float sign = side < 3.0F ? 1.0F : -1.0F;
            Vec3 place(2.0F * u - 1.0F);
            place[axis] = sign * (1.0F - 1e-4F);
            Vec3 normal(0.0F);
            normal[axis] = -sign;
            PathLight light;
            const Sampler sampler(3, run, i);
            tracer.gather({place + Vec3(0.0F, 0.999F, 0.0F), normal}, sample_waves(u.x), sampler, light);
            sum += average(light.layers[0]);
        }
        runs.push_back(sum / 2048.0 * 24.0);  // m² of wall
    }
    const Mean flux = mean_of(runs);
    const double swallowed = kPiDouble * 0.05 * 0.05 / 24.0;
    const double expected = 1.0 / (1.0 - rho * (1.0 - swallowed));
    EXPECT_NEAR(flux.value, expected, 3.0 * flux.error);
    EXPECT_LT(3.0 * flux.error, 0.005 * expected);
}

// Even light of 1 lx has the radiance 1/π everywhere; a convex matt body of reflectance ρ then shows ρ / π all over,
// whatever its shape (the furnace test).
TEST(PathTracer, TheBallInEvenLightShowsItsReflectance) {
    const Studio studio = studio_from(
        "[sitter]\nhead = \"ball\"\n[backdrop]\nsurface = \"none\"\n[room]\nambient = 1\n" + globe(0.01, 30.0));
    const Stage stage(studio, Stage::With::kSitter);
    const PathTracer tracer(stage);
    for (const float aside : {0.0F, 0.05F, 0.09F, 0.0995F}) {
        double sum = 0.0;
        for (std::uint32_t i = 0; i < 256; ++i) {
            const Sampler sampler(0, 0, i);
            PathLight light;
            tracer.look({Vec3(studio.points.face) + Vec3(aside, 0.0F, 1.0F), Vec3(0.0F, 0.0F, -1.0F)},
                        sample_waves(sampler.group(1).x), sampler, light);
            sum += average(light.layers[1]) / 256.0;
        }
        EXPECT_NEAR(sum, 0.18 / kPiDouble, 1e-5) << aside;
    }
    // Past the ball: the light itself.
    PathLight light;
    const Sampler sampler(0, 0, 0);
    tracer.look({Vec3(studio.points.face) + Vec3(0.2F, 0.0F, 1.0F), Vec3(0.0F, 0.0F, -1.0F)}, sample_waves(0.5F),
                sampler, light);
    EXPECT_NEAR(average(light.layers[1]), 1.0 / kPiDouble, 1e-6);
}

// A flat receptor in even light of 1 lx reads 1 lx; a dome 4 · ½ = 2 of the flat one's π against 2π.
TEST(PathTracer, ReceptorsInEvenLight) {
    const Studio studio = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[room]\nambient = 1\n" + globe(0.01, 30.0));
    const Stage stage(studio, Stage::With::kNobody);
    const Gathering flat{Vec3(studio.points.face)};
    EXPECT_NEAR(illuminance(stage, flat, 1, 4).value, 1.0, 1e-3);
    Gathering dome = flat;
    dome.response = Response::kDome;
    EXPECT_NEAR(illuminance(stage, dome, 1, 4).value, 2.0, 2e-3);
}

// A ball lamp's illuminance is I / d² exactly, d to its middle: Φ / (4π d²) (configuration factor (R / H)²). Twice as
// far is two stops less.
TEST(PathTracer, TwiceAsFarIsTwoStopsLess) {
    std::vector<double> readings;
    for (const double distance : {1.0, 2.0}) {
        const Studio studio =
            studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n" + globe(0.01, distance));
        const Stage stage(studio, Stage::With::kNobody);
        const Vec3 face(studio.points.face);
        const Vec3 toward = glm::normalize(Vec3(studio.lights[0].centre) - face);
        readings.push_back(illuminance(stage, {face, toward}, 0, 4).value);
        EXPECT_NEAR(readings.back(), 1.0 / (4.0 * kPiDouble * distance * distance), 2e-3 * readings.back());
    }
    EXPECT_NEAR(std::log2(readings[0] / readings[1]), 2.0, 0.01);
}

// What the path tracer brings back from the first surface that a ray meets, against following that surface's own
// directions alone and counting what shines (Veach and Guibas 1995: every such combination is unbiased).
void expect_the_surfaces_own_way(const Stage& stage, const Ray& ray) {
    const PathTracer tracer(stage);
    const auto hit = stage.intersect(ray);
    ASSERT_TRUE(hit && hit->surface != nullptr);
    const Frame frame = Frame::around(hit->shading);
    std::vector<double> both;
    std::vector<double> alone;
    for (std::uint32_t run = 0; run < 64; ++run) {
        double sum = 0.0;
        double plain = 0.0;
        for (std::uint32_t i = 0; i < 1024; ++i) {
            const Sampler sampler(4, run, i);
            const Waves waves = sample_waves(sampler.group(1).x);
            PathLight light;
            tracer.look(ray, waves, sampler, light);
            sum += average(light.layers[0]) / 1024.0;
            const Vec4 u = Sampler(5, run, i).group(0);
            const auto way = sample_scatter(*hit->surface, frame.to_local(-ray.direction), waves, Vec3(u));
            if (!way) continue;
            const auto met = stage.intersect({hit->leave_from, frame.to_world(way->wi)});
            if (met && met->luminous) {
                const Vec3 back = -frame.to_world(way->wi);
                plain += average(way->weight) * static_cast<double>(stage.emitters()[0].radiance(met->position, back)) /
                         1024.0;
            }
        }
        both.push_back(sum);
        alone.push_back(plain);
    }
    const Mean a = mean_of(both);
    const Mean b = mean_of(alone);
    EXPECT_GT(b.value, 10.0 * b.error);
    EXPECT_NEAR(a.value, b.value, 3.5 * std::hypot(a.error, b.error));
    EXPECT_LT(a.error, 0.01 * a.value);
}

TEST(PathTracer, BothWaysToALightAgreeOnSilver) {
    const Studio studio = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { shape = \"rectangle\", "
        "width = 0.5, height = 0.5 }\nmeter = 4.0\nposition = [0.9, 1.25, 0.9]\naim = [0, 1.25, 0]\n"
        "[[panel]]\nname = \"silver\"\nsurface = \"silver\"\nsize = [1, 1]\nposition = [0, 1.25, 0]\n"
        "aim = [0, 1.25, 3]\n");
    const Stage stage(studio, Stage::With::kNobody);
    const Vec3 panel(0.0F, 1.25F, 0.0F);
    for (const float angle : {-0.78F, -0.5F, 0.0F}) {
        SCOPED_TRACE(angle);
        const Vec3 eye = panel + 2.0F * Vec3(std::sin(angle), 0.0F, std::cos(angle));
        expect_the_surfaces_own_way(stage, {eye, glm::normalize(panel - eye)});
    }
}

// What tears make wet and smooth: both strategies are weighed against each other.
TEST(PathTracer, BothWaysToALightAgreeOnTears) {
    for (const std::string shape :
         {R"(shape = "rectangle", width = 0.5, height = 0.5)", R"(shape = "sphere", diameter = 0.5)",
          R"(shape = "ring", diameter = 0.5, inner = 0.2)",
          R"(shape = "umbrella", cloth = "silver", diameter = 0.6, head_diameter = 0.02)",
          R"(shape = "umbrella", cloth = "through", diameter = 0.6)",
          R"(shape = "frame", width = 0.7, height = 0.7, head = 0.5)",
          R"(shape = "window", width = 0.7, height = 0.7, bar = 0.06)"}) {
        SCOPED_TRACE(shape);
        Studio studio =
            studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { " + shape +
                        " }\nmeter = 4.0\nposition = [1.0, 1.25, -0.12]\naim = [0, 1.25, 0]\n");
        // A chip of wet lid whose normal lies 0.75 to the side, so that the mirror image of the camera falls on the
        // light.
        const Vec3 normal(0.75F, 0.0F, std::sqrt(1.0F - 0.75F * 0.75F));
        const Vec3 place(0.009F, 1.25F, 0.008F);
        const Vec3 aside(normal.z, 0.0F, -normal.x);
        const Vec3 up(0.0F, 1.0F, 0.0F);
        studio.sitter.mesh = {{place - 0.002F * (aside + up), place + 0.004F * aside, place + 0.004F * up},
                              {normal, normal, normal},
                              {{0, 1, 2}},
                              {Zone::kTearLine},
                              std::vector<Vec3>(3),
                              std::vector<SkinVertex>(3)};
        const Stage stage(studio, Stage::With::kSitter);
        const Ray ray{Vec3(0.009F, 1.25F, 2.0F), Vec3(0.0F, 0.0F, -1.0F)};
        const auto hit = stage.intersect(ray);
        ASSERT_TRUE(hit && hit->thing == Thing::kSitter);
        ASSERT_TRUE(wants_mis(*hit->surface));
        expect_the_surfaces_own_way(stage, ray);
    }
}

// The stated density of a light's samples is the density with which they come: hits found by directions agree.
TEST(PathTracer, ALightsDensityIsTheSameBothWays) {
    for (const std::string shape :
         {R"(shape = "disc", diameter = 0.8)", R"(shape = "sphere", diameter = 0.4)",
          R"(shape = "polygon", sides = 8, diameter = 0.9)", R"(shape = "ring", diameter = 0.4, inner = 0.2)",
          R"(shape = "dome", diameter = 1.0, depth = 0.2)",
          R"(shape = "umbrella", cloth = "silver", diameter = 1.05, head_diameter = 0.05)",
          R"(shape = "umbrella", cloth = "through", diameter = 1.05)",
          R"(shape = "frame", width = 2, height = 2, head = 1.5)",
          R"(shape = "window", width = 1.2, height = 1.5, columns = 2, rows = 3)"}) {
        SCOPED_TRACE(shape);
        const Studio studio =
            studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { " + shape +
                        " }\nmeter = 4.0\nangle = 30\ndistance = 1.2\nheight = 1.7\n");
        const Stage stage(studio, Stage::With::kNobody);
        const Emitter& emitter = stage.emitters()[0];
        const Receiver receiver{Vec3(studio.points.face), Vec3(0.0F, 0.0F, 1.0F), Response::kFlat};
        int met = 0;
        for (std::uint32_t i = 0; i < 1000; ++i) {
            const Vec4 u = Sampler(0, 0, i).group(0);
            const auto sample = sample_light(emitter, receiver, {u.x, u.y});
            ASSERT_TRUE(sample);
            const auto hit = stage.intersect({receiver.position, sample->direction});
            if (!hit || !hit->luminous || -glm::dot(hit->geometric, sample->direction) < 0.1F) continue;
            ++met;
            ASSERT_NEAR(light_density(emitter, receiver, *hit) / sample->density, 1.0F, 0.01F);
        }
        EXPECT_GT(met, 900);
    }
}

}  // namespace
}  // namespace understudy
