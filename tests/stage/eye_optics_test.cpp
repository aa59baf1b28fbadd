// Rays that meet an eye. Sizes from the schematic eyes: cornea 7.8 mm, index 1.376 (Gullstrand); white-to-white 11.71 ±
// 0.42 mm (Rüfer and others 2005).
#include "stage/eye_optics.h"

#include <gtest/gtest.h>

#include "scatter/fresnel.h"

namespace understudy {
namespace {

Eye looking_along_z() { return Eye{{0.03, 1.2, 0.08}, {0.0, 0.0, 1.0}, 0.00175}; }

Ray from_the_front(const Eye& eye, double across, double up) {
    return {Vec3(eye.centre + Double3(across, up, 0.5)), Vec3(0.0F, 0.0F, -1.0F)};
}

TEST(EyeOptics, ShowsTheCorneaInsideTheLimbusAndWhiteOutside) {
    const Eye eye = looking_along_z();
    for (int i = 0; i < 64; ++i) {
        const double turn = 2.0 * kPiDouble * i / 64.0;
        const auto at = [&](double radius) {
            return intersect_eye(eye, from_the_front(eye, radius * std::cos(turn), radius * std::sin(turn)));
        };
        for (const double radius : {0.0, 0.002, 0.0055, 0.00588}) {
            ASSERT_TRUE(at(radius)) << radius;
            EXPECT_TRUE(at(radius)->cornea) << radius;
        }
        for (const double radius : {0.00592, 0.008, 0.0119}) {
            ASSERT_TRUE(at(radius)) << radius;
            EXPECT_FALSE(at(radius)->cornea) << radius;
        }
        EXPECT_FALSE(at(0.0121));
    }
}

// The surface goes on without a step: no ray slips between cornea and white, and its depth does not jump.
TEST(EyeOptics, TheSurfaceIsContinuousAtTheLimbus) {
    const Eye eye = looking_along_z();
    const auto inside = intersect_eye(eye, from_the_front(eye, 0.005899, 0.0));
    const auto outside = intersect_eye(eye, from_the_front(eye, 0.005901, 0.0));
    ASSERT_TRUE(inside && outside);
    EXPECT_NEAR(inside->distance, outside->distance, 3e-6F);
    for (int i = 0; i <= 4000; ++i) {
        const double across = 0.0058 + 0.0002 * i / 4000.0;
        EXPECT_TRUE(intersect_eye(eye, from_the_front(eye, across, 0.0))) << across;
    }
    // From aside at a slant, over the whole front.
    for (int i = 0; i <= 2000; ++i) {
        const Double3 target = eye.centre + Double3(0.0118 * (2.0 * i / 2000.0 - 1.0), 0.0, 0.0);
        const Double3 from = eye.centre + Double3(0.3, 0.1, 0.3);
        EXPECT_TRUE(intersect_eye(eye, {Vec3(from), Vec3(glm::normalize(target - from))}));
    }
}

TEST(EyeOptics, ApexAndNormalsAreThoseOfTheSpheres) {
    const Eye eye = looking_along_z();
    const auto apex = intersect_eye(eye, from_the_front(eye, 0.0, 0.0));
    ASSERT_TRUE(apex);
    // Eyeball 12 mm, limbus radius 5.9 mm, cornea 7.8 mm: √(12² − 5.9²) − √(7.8² − 5.9²) + 7.8 = 13.147 mm.
    const double ahead = std::sqrt(144.0 - 34.81) - std::sqrt(60.84 - 34.81) + 7.8;
    EXPECT_NEAR(static_cast<double>(apex->distance), 0.5 - 0.001 * ahead, 1e-7);
    EXPECT_NEAR(apex->normal.z, 1.0F, 1e-6F);
    const auto aside = intersect_eye(eye, from_the_front(eye, 0.0039, 0.0));
    ASSERT_TRUE(aside && aside->cornea);
    EXPECT_NEAR(aside->normal.x, 0.5F, 1e-5F);  // 3.9 / 7.8
    const auto white = intersect_eye(eye, from_the_front(eye, 0.0, 0.009));
    ASSERT_TRUE(white && !white->cornea);
    EXPECT_NEAR(white->normal.y, 0.75F, 1e-5F);  // 9 / 12
}

TEST(EyeOptics, StraightOnReachesThePupilsCentre) {
    const Eye eye = looking_along_z();
    const Vec3 apex(eye.centre + kApexAhead * eye.axis);
    const auto hit = reach_iris(eye, apex, Vec3(0.0F, 0.0F, -1.0F));
    ASSERT_TRUE(hit);
    EXPECT_TRUE(hit->on_iris);
    EXPECT_NEAR(hit->radius, 0.0F, 1e-7F);
    EXPECT_NEAR(glm::length(apex - hit->position), 0.0035F, 1e-6F);  // depth of the chamber with the cornea
    EXPECT_NEAR(hit->normal.z, 1.0F, 1e-6F);
    EXPECT_FALSE(reach_iris(eye, apex, Vec3(0.0F, 0.0F, 1.0F)));
}

// Snell: the entrance pupil stands before the real one and is 1.13 times as large (schematic eyes, Gullstrand: pupil
// 3.04 mm behind the cornea for 3.6 mm). Paraxial, one surface: n / s − 1 / s′ = (n − 1) / R.
TEST(EyeOptics, TheCorneaMagnifiesThePupil) {
    const Eye eye = looking_along_z();
    const double across = 0.0002;  // paraxial
    const Ray ray = from_the_front(eye, across, 0.0);
    const auto met = intersect_eye(eye, ray);
    ASSERT_TRUE(met && met->cornea);
    const Double3 normal = glm::normalize(Double3(met->normal));
    const double sine = normal.x / 1.376;
    const double bent = std::asin(normal.x) - std::asin(sine);
    const Vec3 inward(Double3(-std::sin(bent), 0.0, -std::cos(bent)));
    const auto iris = reach_iris(eye, ray.at(met->distance), inward);
    ASSERT_TRUE(iris);
    // From infinity a height h at the cornea falls to h (1 − depth (n − 1) / (n R)).
    const double expected = across * (1.0 - 3.5 * 0.376 / (1.376 * 7.8));
    EXPECT_NEAR(static_cast<double>(iris->radius), expected, 0.002 * expected);
}

TEST(EyeOptics, LeavesThroughTheCorneaOnly) {
    const Eye eye = looking_along_z();
    const Vec3 middle(eye.centre + kIrisAhead * eye.axis);
    const auto straight = leave_through_cornea(eye, middle, Vec3(0.0F, 0.0F, 1.0F));
    ASSERT_TRUE(straight);
    EXPECT_NEAR(glm::length(straight->position - middle), 0.0035F, 1e-6F);
    // Fresnel at normal incidence: 1 − ((n − 1) / (n + 1))² = 0.97496.
    EXPECT_NEAR(straight->transmittance, 1.0F - std::pow(0.376F / 2.376F, 2.0F), 1e-5F);
    // The limbus as seen from the iris's middle: 5.9 mm aside, (kLimbusAhead − kIrisAhead) ahead.
    const double edge = std::atan2(0.0059, kLimbusAhead - kIrisAhead);
    const auto way = [](double angle) {
        return Vec3(static_cast<float>(std::sin(angle)), 0.0F, static_cast<float>(std::cos(angle)));
    };
    EXPECT_TRUE(leave_through_cornea(eye, middle, way(edge - 0.01)));
    EXPECT_FALSE(leave_through_cornea(eye, middle, way(edge + 0.01)));
}

}  // namespace
}  // namespace understudy
