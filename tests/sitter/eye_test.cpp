#include "sitter/eye.h"

#include <gtest/gtest.h>

#include "sitter/eye_surface.h"

namespace understudy {
namespace {

// Corneal radius 7.8 mm, index 1.376: Gullstrand's and Le Grand's schematic eyes (7.7 and 7.8 mm; 1.376 and 1.3771).
TEST(Eye, CorneaIsTheSchematicEyes) {
    EXPECT_NEAR(kCorneaRadius, 0.0078, 0.0001);
    EXPECT_NEAR(kCorneaIndex, 1.376, 0.0012);
}

// White-to-white 11.71 ± 0.42 mm: Rüfer, Schröder and Erb, Cornea 24 (2005) 259.
TEST(Eye, WhiteToWhite) { EXPECT_NEAR(2.0 * kIrisRadius, 0.01171, 0.00042); }

// The derived places must satisfy both spheres at the limbus.
TEST(Eye, SpheresMeetAtTheLimbus) {
    EXPECT_NEAR(std::hypot(kLimbusAhead, kIrisRadius), kEyeballRadius, 1e-12);
    EXPECT_NEAR(std::hypot(kLimbusAhead - kCorneaCentreAhead, kIrisRadius), kCorneaRadius, 1e-12);
}

// Axial length of the adult eye 23.5 ± 1 mm or so (Bhardwaj and Rajeshbhai, J Clin Diagn Res 7(10), 2013: 22.6–24.1).
TEST(Eye, EyeIsAsLongAsEyesAre) { EXPECT_NEAR(kEyeballRadius + kApexAhead, 0.0242, 0.0016); }

// Anterior chamber with the cornea's thickness: 3.6 mm in Gullstrand's eye, 3.1 to 3.7 mm in living ones.
TEST(Eye, IrisLiesBehindTheCornea) { EXPECT_NEAR(kIrisBehindApex, 0.0036, 0.0003); }

TEST(Eye, SurfaceIsTheUnionOfTheTwoSpheres) {
    const Eye eye{{0.1, 0.2, 0.3}, glm::normalize(Double3(0.2, -0.1, 1.0)), 0.00175};
    for (int i = 0; i <= 60; ++i) {
        const double angle = radians(3.0 * i);
        const Frame frame = Frame::around(Vec3(eye.axis));
        const Double3 way = std::cos(angle) * eye.axis + std::sin(angle) * glm::normalize(Double3(frame.tangent));
        const Double3 p = eye.centre + eye_surface_radius(eye, way) * way;
        const double to_ball = glm::distance(p, eye.centre) - kEyeballRadius;
        const double to_cornea = glm::distance(p, cornea_centre(eye)) - kCorneaRadius;
        EXPECT_NEAR(std::min(to_ball, to_cornea), 0.0, 1e-9) << "at " << 3 * i << " degrees";
        EXPECT_NEAR(height_above_eye(eye, p + 0.002 * way), 0.002, 1e-9);
    }
}

}  // namespace
}  // namespace understudy
