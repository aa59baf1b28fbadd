// The table of what leaves a front: its flux, its symmetry, and that it gives back what it was filled with.
#include "kit/emission_table.h"

#include <random>

#include <gtest/gtest.h>

#include "kit/emission_weights.h"
#include "kit_shapes.h"

namespace understudy {
namespace {

EmissionLayout layout_for(const ModifierShape& shape, std::vector<float> angles) {
    EmissionLayout layout = EmissionLayout::of(shape);
    layout.across = 7;
    layout.along = layout.round() ? 1 : 5;
    layout.azimuths = layout.round() ? 9 : 8;
    layout.angles = std::move(angles);
    return layout;
}

std::vector<float> whole_hemisphere() { return {0.0F, 0.2F, 0.5F, 0.9F, 1.2F, 0.5F * kPi}; }

double area_of(const ModifierShape& shape) {
    if (const auto* s = std::get_if<RectangleShape>(&shape)) return s->width_m * s->height_m;
    if (const auto* s = std::get_if<DiscShape>(&shape)) return kPiDouble / 4.0 * s->diameter_m * s->diameter_m;
    if (const auto* s = std::get_if<RingShape>(&shape)) {
        return kPiDouble / 4.0 * (s->diameter_m * s->diameter_m - s->inner_m * s->inner_m);
    }
    if (const auto* s = std::get_if<SphereShape>(&shape)) return kPiDouble * s->diameter_m * s->diameter_m;
    const auto& polygon = std::get<PolygonShape>(shape);
    return polygon.sides / 8.0 * polygon.diameter_m * polygon.diameter_m * std::sin(2.0 * kPiDouble / polygon.sides);
}

// A random point of a flat front or a ball, evenly by area, with its normal.
struct SurfacePoint {
    Vec3 place;
    Vec3 normal;
};

SurfacePoint random_point(const ModifierShape& shape, std::mt19937& random) {
    std::uniform_real_distribution<float> unit(0.0F, 1.0F);
    const float u = unit(random);
    const float v = unit(random);
    if (const auto* sphere = std::get_if<SphereShape>(&shape)) {
        const float z = 1.0F - 2.0F * u;
        const float r = std::sqrt(1.0F - z * z);
        const Vec3 normal(r * std::cos(2.0F * kPi * v), r * std::sin(2.0F * kPi * v), z);
        return {static_cast<float>(0.5 * sphere->diameter_m) * normal, normal};
    }
    const Emitter emitter(shape, front_at({0.0, 0.0, 0.0}, {0.0, 0.0, 1.0}));
    return {emitter.point_at({u, v}, Vec3(0.0F, 0.0F, 1.0F)).position, Vec3(0.0F, 0.0F, 1.0F)};
}

// An even table is the closed form 1 / (π A) everywhere, for every shape, and its flux is 1.
TEST(EmissionTable, AnEvenOneIsOneOverPiTimesTheArea) {
    std::mt19937 random(1);
    for (const NamedShape& named : every_shape()) {
        if (!EmissionLayout::folds(named.shape)) continue;
        SCOPED_TRACE(named.name);
        const EmissionLayout layout = layout_for(named.shape, whole_hemisphere());
        const EmissionTable table(layout, std::vector<float>(layout.size(), 3.0F));
        const auto expected = static_cast<float>(1.0 / (kPiDouble * area_of(named.shape)));
        EXPECT_NEAR(table.flux(), 1.0, 1e-6);
        EXPECT_NEAR(table.even_radiance() / expected, 1.0F, 1e-5F);
        for (int i = 0; i < 50; ++i) {
            const SurfacePoint point = random_point(named.shape, random);
            EXPECT_NEAR(table.radiance(point.place, point.normal) / expected, 1.0F, 1e-4F);
            EXPECT_NEAR(table.rough_radiance(point.place, point.normal) / expected, 1.0F, 1e-4F);
        }
    }
}

// Whatever the values: the flux by Monte Carlo over the whole front and hemisphere, which knows nothing of folds.
TEST(EmissionTable, AnyTablesFluxIsOneByMonteCarlo) {
    std::mt19937 random(2);
    std::uniform_real_distribution<float> unit(0.0F, 1.0F);
    for (const NamedShape& named : every_shape()) {
        if (!EmissionLayout::folds(named.shape)) continue;
        SCOPED_TRACE(named.name);
        const EmissionLayout layout = layout_for(named.shape, whole_hemisphere());
        std::vector<float> values(layout.size());
        for (float& value : values) value = unit(random);
        const EmissionTable table(layout, values);
        double sum = 0.0;
        double squares = 0.0;
        constexpr int kPaths = 100000;
        for (int i = 0; i < kPaths; ++i) {
            const SurfacePoint point = random_point(named.shape, random);
            const float u = unit(random);
            const float v = 2.0F * kPi * unit(random);
            const Vec3 local(std::sqrt(u) * std::cos(v), std::sqrt(u) * std::sin(v), std::sqrt(1.0F - u));
            const Vec3 direction = Frame::around(point.normal).to_world(local);
            const double share =
                static_cast<double>(table.radiance(point.place, direction)) * kPiDouble * area_of(named.shape);
            sum += share;
            squares += share * share;
        }
        const double mean = sum / kPaths;
        const double error = std::sqrt((squares / kPaths - mean * mean) / kPaths);
        EXPECT_NEAR(mean, 1.0, 4.0 * error);
    }
}

// At its own knots it gives back what it was filled with: the fold and the lookup agree with the order of the values.
TEST(EmissionTable, GivesBackItsKnots) {
    EmissionLayout layout = layout_for(RectangleShape{0.6, 0.9}, whole_hemisphere());
    std::vector<float> values(layout.size());
    for (std::size_t i = 0; i < values.size(); ++i) values[i] = 1.0F + static_cast<float>(i % 97);
    const EmissionTable table(layout, values);
    const float scale = table.values()[0] / values[0];
    std::size_t index = 0;
    for (std::uint32_t a = 0; a < layout.across; ++a) {
        for (std::uint32_t b = 0; b < layout.along; ++b) {
            for (std::uint32_t k = 0; k < layout.azimuths; ++k) {
                for (const float angle : layout.angles) {
                    const float expected = values[index++] * scale;
                    if (angle == 0.0F || angle > 1.5F) continue;  // no azimuth there; behind the horizon
                    const Vec3 place(0.05F * static_cast<float>(a), 0.1125F * static_cast<float>(b), 0.0F);
                    const Vec2 aside = glm::normalize(from_square(4.0F * static_cast<float>(k) / 8.0F));
                    const Vec3 direction(std::sin(angle) * aside.x, std::sin(angle) * aside.y, std::cos(angle));
                    // Linear between knots that differ by up to 96, at float's accuracy of the coordinates.
                    EXPECT_NEAR(table.radiance(place, direction), expected, 1e-3F * 97.0F * scale);
                }
            }
        }
    }
}

Vec3 turned_round_axis(const Vec3& v, double angle) {
    const auto c = static_cast<float>(std::cos(angle));
    const auto s = static_cast<float>(std::sin(angle));
    return {c * v.x - s * v.y, s * v.x + c * v.y, v.z};
}

// An octagon turned by an eighth, a triangle by a third, either mirrored, is the same octagon or triangle.
TEST(EmissionTable, RepeatsWithTheSymmetryOfItsShape) {
    std::mt19937 random(3);
    std::uniform_real_distribution<float> unit(0.0F, 1.0F);
    for (const int sides : {3, 6, 8}) {
        const ModifierShape shape = PolygonShape{sides, 1.2};
        const EmissionLayout layout = layout_for(shape, whole_hemisphere());
        std::vector<float> values(layout.size());
        for (float& value : values) value = unit(random);
        const EmissionTable table(layout, values);
        for (int i = 0; i < 200; ++i) {
            const Vec3 place = random_point(shape, random).place;
            const float u = unit(random);
            const float v = 2.0F * kPi * unit(random);
            const Vec3 direction(std::sqrt(u) * std::cos(v), std::sqrt(u) * std::sin(v), std::sqrt(1.0F - u));
            const float here = table.radiance(place, direction);
            const double turn = 2.0 * kPiDouble / sides;
            EXPECT_NEAR(table.radiance(turned_round_axis(place, turn), turned_round_axis(direction, turn)), here,
                        2e-3F * table.even_radiance());
            const Vec3 mirror(-1.0F, 1.0F, 1.0F);
            EXPECT_NEAR(table.radiance(mirror * place, mirror * direction), here, 1e-4F * table.even_radiance());
        }
    }
}

// Beyond the last angle there is no light, and none behind.
TEST(EmissionTable, IsDarkBeyondItsLastAngle) {
    const EmissionLayout layout = layout_for(DiscShape{0.5}, {0.0F, 0.1F, 0.2F});
    const EmissionTable table(layout, std::vector<float>(layout.size(), 1.0F));
    EXPECT_GT(table.radiance({0.1F, 0.0F, 0.0F}, {std::sin(0.199F), 0.0F, std::cos(0.199F)}), 0.0F);
    EXPECT_EQ(table.radiance({0.1F, 0.0F, 0.0F}, {std::sin(0.201F), 0.0F, std::cos(0.201F)}), 0.0F);
    EXPECT_EQ(table.rough_radiance({0.1F, 0.0F, 0.0F}, {std::sin(0.201F), 0.0F, std::cos(0.201F)}), 0.0F);
    EXPECT_EQ(table.radiance({0.1F, 0.0F, 0.0F}, {0.0F, 0.0F, -1.0F}), 0.0F);
}

}  // namespace
}  // namespace understudy
