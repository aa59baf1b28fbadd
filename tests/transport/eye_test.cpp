// The eye's outside as a camera sees it: its mirror image, its white, and what is behind closed lids.
#include <unistd.h>

#include <cmath>
#include <filesystem>
#include <fstream>

#include <gtest/gtest.h>

#include "sitter/eye_surface.h"
#include "stage/eye_optics.h"
#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

double mean_of(const Light4& light) { return static_cast<double>(light.x + light.y + light.z + light.w) / 4.0; }

// Of one path, per lumen.
PathLight one_path(const Stage& stage, const Ray& ray) {
    const Sampler sampler(11, 0, 0);
    PathLight light;
    PathTracer(stage).look(ray, sample_waves(sampler.group(1).x), sampler, light);
    return light;
}

// Radiance per lumen from the point along the way.
double seen(const Stage& stage, const Ray& ray, std::uint32_t paths, std::size_t layer) {
    const PathTracer tracer(stage);
    double sum = 0.0;
    for (std::uint32_t i = 0; i < paths; ++i) {
        const Sampler sampler(11, 0, i);
        PathLight light;
        tracer.look(ray, sample_waves(sampler.group(1).x), sampler, light);
        sum += mean_of(light.layers[layer]) / paths;
    }
    return sum;
}

// Unpolarised reflectance of a surface of index 1.376, the cornea's (Fresnel's equations; 0.0250 straight on, 0.0262 at
// 30°). Seen in the pupil, where nothing else is bright.
TEST(EyeSurface, TheCorneaMirrorsByFresnel) {
    for (const double angle : {12.0, 28.0}) {
        const Studio studio = studio_from(
            "[camera]\nangle = " + std::to_string(-angle) +
            "\n[sitter]\nhair = \"none\"\ngaze = [0, 0]\npupil = \"8 mm\"\n"
            "[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.4 }\nmeter = 4\n"
            "distance = 1\nelevation = 0\nangle = " +
            std::to_string(angle) + "\n");
        const Stage stage(studio, Stage::With::kSitter);
        for (const Eye& eye : stage.eyes()) {
            const Vec3 apex(eye.centre + kApexAhead * eye.axis);
            const Vec3 light = stage.emitters()[0].centre();
            const Vec3 to_light = glm::normalize(light - apex);
            const Vec3 normal(eye.axis);
            // From where the middle of the front is mirrored at the apex.
            const Vec3 way = 2.0F * glm::dot(to_light, normal) * normal - to_light;
            const double incidence = degrees(std::acos(static_cast<double>(glm::dot(way, normal))));
            EXPECT_NEAR(incidence, angle, 5.0);
            const double sine = std::sin(radians(incidence));
            const double cosine = std::sqrt(1.0 - sine * sine);
            const double inner = std::sqrt(1.0 - sine * sine / (1.376 * 1.376));
            const double across = std::pow((cosine - 1.376 * inner) / (cosine + 1.376 * inner), 2.0);
            const double along = std::pow((inner - 1.376 * cosine) / (inner + 1.376 * cosine), 2.0);
            const double mirrored = seen(stage, {apex + 0.3F * way, -way}, 16, 0);
            const double bright = static_cast<double>(stage.emitters()[0].radiance(light, -to_light));
            EXPECT_NEAR(mirrored / bright, 0.5 * (across + along), 2e-5) << incidence;
            // All of it is told as a glint; the light itself, looked at, is none.
            const auto glint = static_cast<double>(one_path(stage, {apex + 0.3F * way, -way}).glints[0]);
            EXPECT_NEAR(glint / bright, 0.5 * (across + along), 2e-5) << incidence;
            const PathLight direct = one_path(stage, {light - 0.3F * to_light, to_light});
            EXPECT_NEAR(mean_of(direct.layers[0]), bright, 1e-3 * bright);
            EXPECT_EQ(direct.glints[0], 0.0F);
        }
    }
}

// The white under even light from everywhere: what the tears mirror, and of the rest the white's own share, wherever
// the light wandered before it came out (conservation of energy). The eyes stand alone beside a speck of a mesh.
TEST(EyeSurface, TheWhiteKeepsItsLightWhereItWanders) {
    const auto speck = std::filesystem::temp_directory_path() / ("speck_" + std::to_string(getpid()) + ".obj");
    std::ofstream(speck)
        << "v 0 -1 -2\nv 0.001 -1 -2\nv 0 -1.001 -2\nv 0 -1 -2.001\nf 1 2 3\nf 1 3 4\nf 1 4 2\nf 2 4 3\n";
    const Studio studio = studio_from(
        "[sitter]\nhead = \"" + speck.string() +
        "\"\nleft_eye = [0.03, 0, 0]\nright_eye = [-0.03, 0, 0]\ngaze = [0, 0]\n"
        "[backdrop]\nsurface = \"none\"\n[room]\nambient = \"100 lx\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n"
        "angle = 180\ndistance = 3\nheight = 1\n");
    std::filesystem::remove(speck);
    const Stage stage(studio, Stage::With::kSitter);
    ASSERT_EQ(stage.eyes().size(), 2U);
    const Eye& eye = stage.eyes()[0];
    for (const double aside : {-1.1, -0.9}) {
        const Vec3 way(glm::normalize(Double3(aside, 0.0, 1.0)));
        const Vec3 place = Vec3(eye.centre) + static_cast<float>(kEyeballRadius) * way;
        double expected = 0.0;
        const float mirrored = std::get<CoatedSurface>(stage.eye_white_surface()).coat().at(way.z);
        constexpr std::uint32_t kPaths = 4096;
        for (std::uint32_t i = 0; i < kPaths; ++i) {
            const Waves waves = sample_waves(Sampler(11, 0, i).group(1).x);
            const Light4 white = stage.sclera().colour(way, 0, waves);
            expected += mean_of(mirrored + (1.0F - mirrored) * white) / kPaths;
        }
        const double found =
            static_cast<double>(kPi) *
            seen(stage, {place + Vec3(0.0F, 0.0F, 0.3F), {0.0F, 0.0F, -1.0F}}, kPaths, stage.emitters().size());
        EXPECT_NEAR(found / expected, 1.0, 0.02) << aside;
    }
}

// Nothing of a bright studio gets behind closed lids: at no place on the front of the eye a ten-thousandth of what the
// face gets.
TEST(EyeSurface, ClosedLidsKeepTheSocketBlack) {
    const Studio studio = studio_from(
        "[sitter]\nhair = \"none\"\nlids = 0\ngaze = [0, 0]\n[room]\nambient = \"1000 lx\"\n"
        "[[light]]\nmodifier = { shape = \"disc\", diameter = 1 }\nmeter = 4\nangle = 0\nelevation = 20\ndistance = 1\n"
        "[[light]]\nmodifier = { shape = \"disc\", diameter = 1 }\nmeter = 4\nangle = 80\nelevation = -10\ndistance = "
        "1\n");
    const Stage stage(studio, Stage::With::kSitter);
    const PathTracer tracer(stage);
    const auto at = [&](const Vec3& position, const Vec3& normal, std::uint32_t paths) {
        LayerLights sum{};
        for (std::uint32_t i = 0; i < paths; ++i) {
            const Sampler sampler(3, 0, i);
            PathLight light;
            tracer.gather(Gathering{position, normal}, sample_waves(sampler.group(1).x), sampler, light);
            for (std::size_t l = 0; l < sum.size(); ++l) sum[l] += light.layers[l] / static_cast<float>(paths);
        }
        return sum;
    };
    const Landmark& cheek = studio.sitter.landmarks->cheek_camera_right;
    const LayerLights outside = at(Vec3(cheek.position + 1e-4 * cheek.normal), Vec3(cheek.normal), 256);
    for (const Eye& eye : stage.eyes()) {
        for (int i = 0; i < 60; ++i) {
            const double turn = 2.399963 * i;
            const double z = 1.0 - 0.5 * (i + 0.5) / 60.0;
            const double r = std::sqrt(1.0 - z * z);
            const Double3 way(r * std::cos(turn), r * std::sin(turn), z);
            const LayerLights here = at(Vec3(at_height(eye, eye.centre + 0.01 * way, 5e-6)), Vec3(way), 64);
            for (std::size_t l = 0; l < stage.layer_count(); ++l) {
                EXPECT_LT(mean_of(here[l]), 1e-4 * mean_of(outside[l])) << "layer " << l << ", place " << i;
            }
        }
    }
}

}  // namespace
}  // namespace understudy
