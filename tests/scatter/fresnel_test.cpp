#include "scatter/fresnel.h"

#include <gtest/gtest.h>

#include "scatter/rough_metal.h"

namespace understudy {
namespace {

float cosine_of(double angle_deg) { return static_cast<float>(std::cos(radians(angle_deg))); }

// ((n − 1) / (n + 1))²: the boundaries of the eye (Purkinje's images), skin and hair.
TEST(Fresnel, ReflectsTheKnownShareAtNormalIncidence) {
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.376F), 0.025043F, 1e-6F);           // air to cornea
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.336F), 0.020689F, 1e-6F);           // air to tears
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.336F / 1.376F), 0.000218F, 1e-6F);  // cornea to aqueous humour
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.406F / 1.336F), 0.000652F, 1e-6F);  // aqueous humour to lens
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.40F), 0.027778F, 1e-6F);            // air to skin
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.55F), 0.046521F, 1e-6F);            // air to hair
    EXPECT_NEAR(dielectric_fresnel(1.0F, 1.5F), 0.04F, 1e-6F);                 // air to glass
}

// Fresnel's equations worked out apart from this program.
TEST(Fresnel, RisesTowardsGrazing) {
    EXPECT_NEAR(dielectric_fresnel(cosine_of(30), 1.376F), 0.026244F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(45), 1.376F), 0.033416F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(60), 1.376F), 0.067650F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(75), 1.376F), 0.224987F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(45), 1.40F), 0.036579F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(60), 1.40F), 0.071977F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(75), 1.40F), 0.231283F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(75), 1.55F), 0.261842F, 2e-6F);
    EXPECT_NEAR(dielectric_fresnel(0.0F, 1.4F), 1.0F, 1e-6F);
}

// At Brewster's angle, tan θ = n, only the perpendicular half is left: ((n² − 1) / (n² + 1))² / 2.
TEST(Fresnel, LosesTheParallelHalfAtBrewstersAngle) {
    const double n = 1.376;
    const double perpendicular = (n * n - 1.0) / (n * n + 1.0);
    EXPECT_NEAR(degrees(std::atan(n)), 53.992, 5e-4);
    EXPECT_NEAR(dielectric_fresnel(cosine_of(degrees(std::atan(n))), 1.376F), 0.5 * perpendicular * perpendicular,
                1e-6);
}

// The same both ways along a refracted ray (Stokes' relations), and everything beyond the critical angle.
TEST(Fresnel, IsTheSameFromBothSidesAndTotalBeyondTheCriticalAngle) {
    for (const double outside : {10.0, 40.0, 70.0, 85.0}) {
        const double inside = degrees(std::asin(std::sin(radians(outside)) / 1.376));
        EXPECT_NEAR(dielectric_fresnel(cosine_of(outside), 1.376F),
                    dielectric_fresnel(cosine_of(inside), 1.0F / 1.376F), 1e-5F);
    }
    const double critical = degrees(std::asin(1.0 / 1.376));
    EXPECT_LT(dielectric_fresnel(cosine_of(critical - 0.5), 1.0F / 1.376F), 0.8F);
    EXPECT_EQ(dielectric_fresnel(cosine_of(critical + 0.1), 1.0F / 1.376F), 1.0F);
}

TEST(Refraction, FollowsSnellsLaw) {
    const Vec3 normal(0.0F, 0.0F, 1.0F);
    const auto w = Vec3(std::sin(0.7F), 0.0F, std::cos(0.7F));
    const auto inside = refract(w, normal, 1.376F);
    ASSERT_TRUE(inside);
    EXPECT_NEAR(glm::length(*inside), 1.0F, 1e-6F);
    EXPECT_NEAR(-inside->x * 1.376F, std::sin(0.7F), 1e-6F);
    EXPECT_LT(inside->z, 0.0F);
    const auto back = refract(*inside, -normal, 1.0F / 1.376F);
    ASSERT_TRUE(back);
    EXPECT_NEAR(glm::length(*back - w), 0.0F, 1e-5F);
    EXPECT_FALSE(refract(Vec3(0.8F, 0.0F, 0.6F), normal, 1.0F / 1.376F));
}

// Evaporated gold and silver: G. Hass, in American Institute of Physics Handbook, 1972, 6g; from memory. Films differ,
// hence the wide limits.
TEST(Metals, HaveTheirHandbookReflectances) {
    const Spectrum gold = gold_reflectance();
    EXPECT_NEAR(gold.at(450.0F), 0.387F, 0.04F);
    EXPECT_NEAR(gold.at(500.0F), 0.477F, 0.04F);
    EXPECT_NEAR(gold.at(550.0F), 0.817F, 0.04F);
    EXPECT_NEAR(gold.at(600.0F), 0.919F, 0.04F);
    EXPECT_NEAR(gold.at(650.0F), 0.955F, 0.04F);
    const Spectrum silver = silver_reflectance();
    EXPECT_NEAR(silver.at(400.0F), 0.956F, 0.04F);
    EXPECT_NEAR(silver.at(500.0F), 0.979F, 0.02F);
    EXPECT_NEAR(silver.at(700.0F), 0.989F, 0.02F);
}

}  // namespace
}  // namespace understudy
