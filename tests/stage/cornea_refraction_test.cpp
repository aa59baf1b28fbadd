// Light on the iris through the cornea: the solved way against Snell's law followed ray by ray.
#include "stage/cornea_refraction.h"

#include <gtest/gtest.h>

#include "scatter/fresnel.h"

namespace understudy {
namespace {

constexpr double kIndexSquared = kCorneaIndex * kCorneaIndex;

Eye looking_along_z() { return Eye{{0.03, 1.2, 0.08}, {0.0, 0.0, 1.0}, 0.00175}; }

Vec3 on_iris(const Eye& eye, double across, double up) {
    return {eye.centre + kIrisAhead * eye.axis + Double3(across, up, 0.0)};
}

// A matt round light that faces the eye.
struct Lamp {
    Double3 centre, axis, right, up;
    double radius;
};

Lamp lamp(const Eye& eye, double elevation_deg, double distance, double radius) {
    const double e = radians(elevation_deg);
    const Double3 way(0.0, std::sin(e), std::cos(e));
    return {eye.centre + distance * way, -way, {1.0, 0.0, 0.0}, {0.0, std::cos(e), -std::sin(e)}, radius};
}

// Illuminance for a lamp of radiance 1, summed over its area by the solved ways.
double by_solved_ways(const Eye& eye, const Vec3& point, const Lamp& from) {
    constexpr int kRings = 40;
    constexpr int kTurns = 80;
    double sum = 0.0;
    for (int i = 0; i < kRings; ++i) {
        for (int j = 0; j < kTurns; ++j) {
            const double r = from.radius * std::sqrt((i + 0.5) / kRings);
            const double a = 2.0 * kPiDouble * (j + 0.5) / kTurns;
            const Double3 place = from.centre + r * (std::cos(a) * from.right + std::sin(a) * from.up);
            const auto way = bent_way(eye, point, Vec3(place));
            if (!way) continue;
            const Double3 back = glm::normalize(Double3(way->exit) - place);
            const double cosine = glm::dot(Double3(way->inside), eye.axis);
            const double area = kPiDouble * from.radius * from.radius / (kRings * kTurns);
            sum += static_cast<double>(way->transmittance * way->spread) * kIndexSquared * std::max(0.0, cosine) *
                   glm::dot(back, from.axis) * area;
        }
    }
    return sum;
}

bool meets(const Lamp& light, const Double3& origin, const Double3& way) {
    const double slope = glm::dot(way, light.axis);
    if (slope >= 0.0) return false;
    const double distance = glm::dot(light.centre - origin, light.axis) / slope;
    return distance > 0.0 && glm::length(origin + distance * way - light.centre) <= light.radius;
}

// The same by sending rays from the point, evenly in projected solid angle, and bending each by Snell's law.
double by_rays(const Eye& eye, const Vec3& point, const Lamp& light) {
    constexpr int kAcross = 1200;
    const Double3 centre = cornea_centre(eye);
    const Double3 from(point);
    double sum = 0.0;
    for (int i = 0; i < kAcross; ++i) {
        for (int j = 0; j < kAcross; ++j) {
            const double x = 2.0 * (i + 0.5) / kAcross - 1.0;
            const double y = 2.0 * (j + 0.5) / kAcross - 1.0;
            if (x * x + y * y >= 1.0) continue;
            const Double3 way(x, y, std::sqrt(1.0 - x * x - y * y));
            const Double3 off = from - centre;
            const double along = glm::dot(off, way);
            const double distance =
                -along + std::sqrt(along * along - glm::dot(off, off) + kCorneaRadius * kCorneaRadius);
            const Double3 exit = from + distance * way;
            if (glm::dot(exit - eye.centre, eye.axis) < kLimbusAhead) continue;
            const Double3 normal = (exit - centre) / kCorneaRadius;
            const auto out = refract(Vec3(-way), Vec3(-normal), static_cast<float>(1.0 / kCorneaIndex));
            if (!out || !meets(light, exit, Double3(*out))) continue;
            sum += 1.0 - static_cast<double>(dielectric_fresnel(static_cast<float>(glm::dot(normal, way)),
                                                                static_cast<float>(1.0 / kCorneaIndex)));
        }
    }
    return sum * kIndexSquared * 4.0 / (static_cast<double>(kAcross) * kAcross);
}

// The counted rays have an error of a few per mille: a lamp covers about 10,000 of them, its edge a few hundred.
TEST(CorneaRefraction, GivesTheIlluminanceThatRaysBentBySnellsLawGive) {
    const Eye eye = looking_along_z();
    for (const double elevation : {0.0, 40.0, 65.0}) {
        const Lamp light = lamp(eye, elevation, 1.0, 0.3);
        for (const double up : {-0.005, -0.0025, 0.0, 0.0025, 0.005}) {
            const Vec3 point = on_iris(eye, 0.001, up);
            const double rays = by_rays(eye, point, light);
            EXPECT_NEAR(by_solved_ways(eye, point, light), rays, 0.01 * rays + 1e-4) << elevation << "° " << up;
        }
    }
}

TEST(CorneaRefraction, BendsByTheRatioOfSines) {
    const Eye eye = looking_along_z();
    for (const double across : {-0.0055, -0.002, 0.0, 0.003, 0.0058}) {
        for (const double angle : {-75.0, -30.0, 0.0, 20.0, 60.0}) {
            const double a = radians(angle);
            const Vec3 point = on_iris(eye, across, 0.0005);
            const Vec3 light(eye.centre + Double3(std::sin(a), 0.1, std::cos(a)));
            const auto way = bent_way(eye, point, light);
            if (!way) continue;
            const Double3 normal(way->normal);
            const Double3 out = glm::normalize(Double3(light) - Double3(way->exit));
            const double inside = glm::length(glm::cross(normal, Double3(way->inside)));
            const double outside = glm::length(glm::cross(normal, out));
            EXPECT_NEAR(outside, kCorneaIndex * inside, 2e-5) << across << " " << angle;
            EXPECT_NEAR(glm::length(way->exit - Vec3(cornea_centre(eye))), 0.0078F, 1e-6F);
        }
    }
}

// What photographers know as the bright crescent: the iris is brightest on the side away from the light (common
// practice, no source), and darkens toward its rim there; by straight ways both sides would be nearly alike.
TEST(CorneaRefraction, LightsTheIrisOppositeTheLight) {
    const Eye eye = looking_along_z();
    for (const double elevation : {40.0, 60.0}) {
        const Lamp light = lamp(eye, elevation, 1.0, 0.3);
        const double away = by_solved_ways(eye, on_iris(eye, 0.0, -0.0025), light);
        const double near = by_solved_ways(eye, on_iris(eye, 0.0, 0.0025), light);
        const double rim = by_solved_ways(eye, on_iris(eye, 0.0, -0.0055), light);
        EXPECT_GT(away, (elevation > 50.0 ? 1.4 : 1.15) * near) << elevation;
        EXPECT_LT(rim, 0.5 * away) << elevation;
    }
    const Lamp ahead = lamp(eye, 0.0, 1.0, 0.3);
    EXPECT_NEAR(by_solved_ways(eye, on_iris(eye, 0.0, -0.0025), ahead),
                by_solved_ways(eye, on_iris(eye, 0.0, 0.0025), ahead), 1e-4);
}

TEST(CorneaRefraction, ALightBehindTheEyeReachesNothing) {
    const Eye eye = looking_along_z();
    EXPECT_FALSE(bent_way(eye, on_iris(eye, 0.0, 0.0), Vec3(eye.centre + Double3(0.2, 0.0, -1.0))));
}

}  // namespace
}  // namespace understudy
