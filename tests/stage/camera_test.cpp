// The camera as a thin lens: where things are drawn, how large, and what is sharp.
#include "stage/camera.h"

#include <gtest/gtest.h>

#include "support/studio_from.h"

namespace understudy {
namespace {

Studio with_camera(const std::string& camera, const std::string& picture = "width = 640\nheight = 800\n") {
    return studio_from("[picture]\n" + picture + "[camera]\n" + camera +
                       "[sitter]\nhead = \"none\"\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.5 }\n"
                       "meter = 4.0\n");
}

Double3 in_focus_plane(const Camera& camera, double focus, double right, double up) {
    return camera.position() + focus * camera.axis() + right * camera.right() + up * camera.up();
}

TEST(Camera, SeesThePictureTheRightWayRound) {
    const Studio studio = with_camera("distance = 2.0\n");
    const Camera camera(studio);
    const auto pixel = camera.pixel_of(studio.points.face);
    EXPECT_NEAR(pixel.x, 320.0F, 1e-3F);
    EXPECT_NEAR(pixel.y, 400.0F, 1e-3F);
    EXPECT_GT(camera.pixel_of(studio.points.face + Double3(0.1, 0, 0)).x, 321.0F);  // +x is camera right
    EXPECT_LT(camera.pixel_of(studio.points.face + Double3(0, 0.1, 0)).y, 399.0F);
    EXPECT_NEAR(glm::length(camera.position() - studio.points.face), 2.0, 1e-9);
}

TEST(Camera, DrawsAPointWhereItsRayCameFrom) {
    const Studio studio = with_camera("distance = 1.7\nangle = 25\nheight = 1.6\n");
    const Camera camera(studio);
    for (const float x : {0.0F, 13.5F, 320.0F, 640.0F}) {
        for (const float y : {0.0F, 250.25F, 800.0F}) {
            const Ray middle = camera.ray({x, y}, {0.5F, 0.5F});
            for (const float distance : {0.8F, 1.7F, 5.0F}) {
                const Vec2 back = camera.pixel_of(Double3(middle.at(distance)));
                EXPECT_NEAR(back.x, x, 2e-3F);
                EXPECT_NEAR(back.y, y, 2e-3F);
            }
        }
    }
}

// The lens equation, 1/f = 1/d + 1/v: magnification f / (d − f).
TEST(Camera, MagnifiesAsAThinLensDoes) {
    for (const double focal : {0.050, 0.085, 0.200}) {
        const Studio studio =
            with_camera("distance = 2.0\nfocal_length = " + std::to_string(focal * 1000.0) + "\nsensor = [36, 24]\n");
        const Camera camera(studio);
        const double magnification = focal / (2.0 - focal);
        // Upright, 640 × 800: 24 mm would need 30 mm of height, 36 mm 28.8 of width, so the width of 24 mm decides.
        const double pixels_a_metre = 640.0 / 0.024;
        const auto left = camera.pixel_of(studio.points.face);
        const auto right = camera.pixel_of(studio.points.face + 0.1 * camera.right());
        EXPECT_NEAR(static_cast<double>(right.x - left.x), 0.1 * magnification * pixels_a_metre, 0.01);
    }
}

// A sensor w wide shows a field w / magnification in the plane of focus; a wide picture lays the camera level.
TEST(Camera, LevelPicturesUseTheLongSide) {
    const Studio studio = with_camera("distance = 2.085\n", "width = 900\nheight = 600\n");
    const Camera camera(studio);
    const double field = 0.036 * (2.085 - 0.085) / 0.085;
    const Vec2 edge = camera.pixel_of(in_focus_plane(camera, studio.focus_m, 0.5 * field, 0.0));
    EXPECT_NEAR(edge.x, 900.0F, 0.01F);
    EXPECT_NEAR(edge.y, 300.0F, 0.01F);
}

// Every ray of a pixel passes through one point of the plane in focus; elsewhere it strays in a disc of diameter
// (f / N) |d′ − d| / d (similar triangles from the entrance pupil).
TEST(Camera, BlursByItsAperture) {
    const Studio studio = with_camera("distance = 2.0\naperture = 2.0\nfocal_length = 100\n");
    const Camera camera(studio);
    const double pupil = 0.100 / 2.0;
    double widest = 0.0;
    for (int i = 0; i < 33; ++i) {
        for (int j = 0; j < 33; ++j) {
            const Vec2 lens(static_cast<float>(i) / 32.0F, static_cast<float>(j) / 32.0F);
            const Ray ray = camera.ray({100.0F, 650.0F}, lens);
            const auto at_depth = [&](double depth) {
                const Double3 origin(ray.origin);
                const Double3 way(ray.direction);
                return origin + (depth - glm::dot(origin - camera.position(), camera.axis())) /
                                    glm::dot(way, camera.axis()) * way;
            };
            const Vec2 sharp = camera.pixel_of(at_depth(2.0));
            EXPECT_NEAR(sharp.x, 100.0F, 0.02F);
            EXPECT_NEAR(sharp.y, 650.0F, 0.02F);
            const Ray middle = camera.ray({100.0F, 650.0F}, {0.5F, 0.5F});
            const Double3 way(middle.direction);
            const Double3 core = camera.position() + 3.0 / glm::dot(way, camera.axis()) * way;
            widest = std::max(widest, 2.0 * glm::length(at_depth(3.0) - core));
        }
    }
    EXPECT_NEAR(widest, pupil * (3.0 - 2.0) / 2.0, 1e-5);
}

TEST(Camera, CannotFocusInsideTwiceItsFocalLength) {
    const auto setup = setup_from(
        "[camera]\nfocal_length = 200\nfocus = \"0.39 m\"\n[sitter]\nhead = \"none\"\n[[light]]\n"
        "modifier = { shape = \"disc\", diameter = 0.5 }\nmeter = 4.0\n");
    EXPECT_FALSE(place_studio(setup, source_library()));
}

}  // namespace
}  // namespace understudy
