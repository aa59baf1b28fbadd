// The mirror image in a cornea of 7.8 mm (Schwartz, Geometrical and Visual Optics; schematic-eye tables).

#include <cmath>

#include <gtest/gtest.h>

#include "meter/corneal_mirror.h"

namespace understudy {
namespace {

constexpr double kMillimetre = 1e-3;
constexpr double kRadius = 7.8 * kMillimetre;
constexpr double kFar = 1e6;

Double3 point_mm(const Double3& light_mm, const Double3& camera_mm, double radius = kRadius) {
    return mirror_point(Double3(0.0), radius, light_mm * kMillimetre, camera_mm * kMillimetre).point / kMillimetre;
}

// How far behind the apex the reflected way, drawn on backwards, meets the axis that the light is on, for a camera a
// hundredth of a degree away: the paraxial image.
double image_behind_apex_mm(double light_m) {
    const double angle = radians(0.01);
    const Double3 camera(kFar * std::sin(angle), 0.0, kFar * std::cos(angle));
    const Double3 point = mirror_point(Double3(0.0), kRadius, {0.0, 0.0, kRadius + light_m}, camera).point;
    const Double3 way = glm::normalize(camera - point);
    return (kRadius - (point.z - point.x * way.z / way.x)) / kMillimetre;
}

// f·d / (d + f), f = r/2: 3.90 mm for a distant light.
TEST(CornealMirror, TheImageLiesBehindTheApex) {
    EXPECT_NEAR(image_behind_apex_mm(kFar), 3.9000, 1e-3);
    EXPECT_NEAR(image_behind_apex_mm(2.0), 3.8924, 1e-3);
    EXPECT_NEAR(image_behind_apex_mm(1.0), 3.8848, 1e-3);
    EXPECT_NEAR(image_behind_apex_mm(0.5), 3.8698, 1e-3);
}

// r·sin(θ/2), exact for a sphere with light and camera far away.
TEST(CornealMirror, OffsetGoesWithTheSineOfHalfTheAngle) {
    struct Row {
        double angle_deg, wide_mm, narrow_mm;
    };
    for (const Row& row : {Row{10.0, 0.680, 0.671}, Row{20.0, 1.354, 1.337}, Row{30.0, 2.019, 1.993},
                           Row{45.0, 2.985, 2.947}, Row{60.0, 3.900, 3.850}, Row{90.0, 5.515, 5.445}}) {
        const Double3 light(1e9 * std::sin(radians(row.angle_deg)), 0.0, 1e9 * std::cos(radians(row.angle_deg)));
        EXPECT_NEAR(point_mm(light, {0.0, 0.0, 1e9}).x, row.wide_mm, 6e-4) << row.angle_deg;
        EXPECT_NEAR(point_mm(light, {0.0, 0.0, 1e9}, 7.7 * kMillimetre).x, row.narrow_mm, 6e-4) << row.angle_deg;
    }
}

// Places and clock of distant lights: x ∝ sin az · cos el, y ∝ sin el.
TEST(CornealMirror, ClockOfDistantLights) {
    struct Row {
        double azimuth_deg, elevation_deg, x_mm, y_mm, clock_h;
    };
    for (const Row& row :
         {Row{45.0, 45.0, 2.252, 3.184, 1.17}, Row{-45.0, 45.0, -2.252, 3.184, 10.83},
          Row{30.0, 30.0, 1.805, 2.085, 1.36}, Row{45.0, 30.0, 2.660, 2.172, 1.69}, Row{60.0, 30.0, 3.456, 2.304, 1.88},
          Row{20.0, 45.0, 1.034, 3.023, 0.63}, Row{0.0, 40.0, 0.0, 2.668, 0.0}, Row{90.0, 0.0, 5.515, 0.0, 3.0}}) {
        const double level = std::cos(radians(row.elevation_deg));
        const Double3 way(level * std::sin(radians(row.azimuth_deg)), std::sin(radians(row.elevation_deg)),
                          level * std::cos(radians(row.azimuth_deg)));
        const Double3 point = point_mm(1e9 * way, {0.0, 0.0, 1e9});
        EXPECT_NEAR(point.x, row.x_mm, 6e-4);
        EXPECT_NEAR(point.y, row.y_mm, 6e-4);
        const double clock = std::fmod(degrees(std::atan2(point.x, point.y)) / 30.0 + 12.0, 12.0);
        EXPECT_NEAR(clock, row.clock_h, 6e-3);
    }
}

// By exact iteration; camera 2 m before the cornea's centre.
TEST(CornealMirror, LightsNearAtHand) {
    const Double3 camera(0.0, 0.0, 2000.0);
    const Double3 first = point_mm({750.0, 750.0, 1060.66}, camera);
    EXPECT_NEAR(first.x, 2.1119, 1e-4);
    EXPECT_NEAR(first.y, 2.1119, 1e-4);
    EXPECT_NEAR(first.z, 7.2055, 1e-4);
    const Double3 second = point_mm({1060.66, 1060.66, 1060.66}, camera);
    EXPECT_NEAR(second.x, 2.5358, 1e-4);
    EXPECT_NEAR(second.y, 2.5358, 1e-4);
    EXPECT_NEAR(second.z, 6.9267, 1e-4);
}

// Two eyes 63 mm apart, one light: 2.2460 and 1.9482 mm, 0.30 mm of parallax.
TEST(CornealMirror, TwoEyesSeeOneLightDifferently) {
    const auto from_eye = [](double x) {
        const Double3 eye(x, 0.0, 0.0);
        return point_mm(Double3(600.0, 500.0, 900.0) - eye, Double3(0.0, 0.0, 2000.0) - eye);
    };
    const Double3 left = from_eye(-31.5);
    const Double3 right = from_eye(31.5);
    EXPECT_NEAR(left.x, 2.2460, 1e-4);
    EXPECT_NEAR(left.y, 1.7264, 1e-4);
    EXPECT_NEAR(right.x, 1.9482, 1e-4);
    EXPECT_NEAR(right.y, 1.7710, 1e-4);
}

TEST(CornealMirror, LightBehindTheCamera) {
    const MirrorPoint at = mirror_point(Double3(0.0), kRadius, {0.0, 0.0, 3.0}, {0.0, 0.0, 2.0});
    EXPECT_NEAR(at.point.z, kRadius, 1e-12);
    EXPECT_NEAR(glm::length(at.normal), 1.0, 1e-12);
}

}  // namespace
}  // namespace understudy
