// A photometric file's light as an emitter: as a point, and spread over a flat front.

#include "kit/web_emission.h"

#include <gtest/gtest.h>

#include "kit/emitter.h"
#include "kit_shapes.h"
#include "setup/photometric_file.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

std::shared_ptr<const PhotometricWeb> web_of(const std::string& text) {
    const auto file = parse_photometric_file(text, "lamp.ies");
    if (!file) throw std::runtime_error(file.problems()[0].text);
    return std::make_shared<const PhotometricWeb>(*file);
}

// I / d² for a receiver that faces it: 600 of 1369.911 lm a steradian ahead (the composed file's computed flux).
TEST(WebEmission, APointGivesIntensityOverDistanceSquared) {
    const PlacedFront front = slanted_front();
    const auto light = std::make_shared<const WebEmission>(WebEmission::from_point(web_of(kQuadrants)));
    const Emitter emitter(PointShape{}, front, nullptr, light);
    for (const double distance : {0.1, 1.0, 20.0}) {
        const Vec3 receiver(front.centre + distance * front.axis);
        const auto density = emitter.density_for(receiver, -Vec3(front.axis), Response::kFlat);
        ASSERT_TRUE(density);
        const EmitterPoint point = emitter.point_at(density->sample({0.3F, 0.9F}), receiver);
        EXPECT_EQ(point.position, emitter.centre());
        EXPECT_NEAR(glm::dot(point.normal, Vec3(front.axis)), 1.0F, 1e-6F);
        const double lux = static_cast<double>(emitter.radiance(point.position, Vec3(front.axis)) * point.area /
                                               density->density({0.3F, 0.9F})) /
                           (distance * distance);
        EXPECT_NEAR(lux, 600.0 / 1369.911 / (distance * distance), 1e-5 * lux);
    }
}

TEST(WebEmission, APointIsNeverHitAndLightsNothingInTheDark) {
    const PlacedFront front = slanted_front();
    const auto light = std::make_shared<const WebEmission>(WebEmission::from_point(web_of(kQuadrants)));
    const Emitter emitter(PointShape{}, front, nullptr, light);
    const Vec3 before(front.centre + 2.0 * front.axis);
    const Vec3 behind(front.centre - 2.0 * front.axis);
    const Vec3 axis(front.axis);
    EXPECT_FALSE(emitter.intersect({before, -axis}));
    EXPECT_FALSE(emitter.blocks({before, -axis}));
    EXPECT_FALSE(emitter.density_for(before, axis, Response::kFlat)) << "the receiver looks away";
    EXPECT_TRUE(emitter.density_for(before, axis, Response::kDome));
    EXPECT_FALSE(emitter.density_for(behind, axis, Response::kFlat)) << "the file has no light above 90 degrees";
    for (const Vec3& point : emitter.outline(before, 8)) EXPECT_EQ(point, emitter.centre());
}

// All that the front gives into the half-space ahead is the one lumen: ∫ L cos θ dω over its area, by the midpoint
// rule.
TEST(WebEmission, AFrontOfOneLumenGivesOneLumen) {
    constexpr double kArea = 0.06;
    const WebEmission light = WebEmission::over_front(web_of(kQuadrants), kArea);
    EXPECT_NEAR(light.lumens(), 1369.911, 0.0005);
    constexpr int kSide = 500;
    double flux = 0.0;
    for (int i = 0; i < kSide; ++i) {
        const double cosine = (i + 0.5) / kSide;
        const double across = std::sqrt(1.0 - cosine * cosine);
        for (int j = 0; j < kSide; ++j) {
            const double turn = 2.0 * kPiDouble * (j + 0.5) / kSide;
            const Vec3 direction(Double3(across * std::cos(turn), across * std::sin(turn), cosine));
            flux += kArea * static_cast<double>(light.radiance(direction)) * cosine * 2.0 * kPiDouble / (kSide * kSide);
        }
    }
    EXPECT_NEAR(flux, 1.0, 1e-4);
    EXPECT_EQ(light.radiance({0.6F, 0.0F, -0.8F}), 0.0F);
}

}  // namespace
}  // namespace understudy
