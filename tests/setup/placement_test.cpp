#include "setup/placement.h"

#include <cmath>

#include <gtest/gtest.h>

namespace understudy {
namespace {

constexpr double kExact = 1e-9;
const Double3 kFace{0.0, 1.25, 0.09};

StandPlacement stand(double angle, std::optional<double> height, std::optional<double> elevation, double distance) {
    return {angle, height, elevation, distance, {"scene.toml", 7, 12}};
}

void expect_near(const Double3& a, const Double3& b, double tolerance = kExact) {
    EXPECT_NEAR(a.x, b.x, tolerance);
    EXPECT_NEAR(a.y, b.y, tolerance);
    EXPECT_NEAR(a.z, b.z, tolerance);
}

StudioPoints points() { return {kFace, {0.0, 0.85, 0.05}, {0.0, 1.37, 0.0}, {0.0, 1.25, -1.5}, {0.0, 1.25, 2.29}}; }

Placement at(const Double3& position, const Double3& aim) {
    Placement placement;
    placement.where = position;
    placement.aim = {Aim::Target::kPoint, aim};
    placement.said_at = {"scene.toml", 3, 5};
    return placement;
}

// Both statements of the scene file at once, for every angle: on its bearing from the mark, and so far from the face.
TEST(StandPosition, KeepsAngleHeightAndDistance) {
    for (double angle = -180.0; angle <= 180.0; angle += 7.5) {
        for (const double height : {0.4, 1.25, 1.7, 2.4}) {
            const Expected<Double3> p = stand_position(stand(angle, height, {}, 1.3), kFace);
            ASSERT_TRUE(p) << angle;
            EXPECT_NEAR(glm::length(*p - kFace), 1.3, kExact);
            EXPECT_NEAR(p->y, height, kExact);
            const double off_bearing = p->x * std::cos(radians(angle)) - p->z * std::sin(radians(angle));
            EXPECT_NEAR(off_bearing, 0.0, kExact) << angle;
            EXPECT_GE(p->x * std::sin(radians(angle)) + p->z * std::cos(radians(angle)), 0.0) << angle;
        }
    }
}

// By hand: face at the mark, 3-4-5 triangle with 4 level and 3 up.
TEST(StandPosition, WorkedExamples) {
    const Double3 face(0.0, 1.0, 0.0);
    expect_near(*stand_position(stand(0.0, 4.0, {}, 5.0), face), {0.0, 4.0, 4.0});
    expect_near(*stand_position(stand(90.0, 4.0, {}, 5.0), face), {4.0, 4.0, 0.0});
    expect_near(*stand_position(stand(-90.0, 4.0, {}, 5.0), face), {-4.0, 4.0, 0.0});
    expect_near(*stand_position(stand(180.0, 4.0, {}, 5.0), face), {0.0, 4.0, -4.0});
    // Neither height nor elevation: the eye's height.
    expect_near(*stand_position(stand(0.0, {}, {}, 2.2), kFace), {0.0, 1.25, 2.29});
}

// Elevation 30 from 2 m away is 1 m up, since sin 30° = 1/2.
TEST(StandPosition, ElevationIsOverTheEyeLine) {
    const Expected<Double3> p = stand_position(stand(-40.0, {}, 30.0, 2.0), kFace);
    ASSERT_TRUE(p);
    EXPECT_NEAR(p->y, 2.25, kExact);
    EXPECT_NEAR(glm::length(*p - kFace), 2.0, kExact);
    expect_near(*stand_position(stand(0.0, {}, 90.0, 1.0), kFace), {0.0, 2.25, 0.09}, 1e-6);
}

TEST(StandPosition, SaysTheSmallestDistanceThatReaches) {
    // At 90° the plumb line passes the face at √(0.09² + 1²) = 1.00404 m.
    const Expected<Double3> side = stand_position(stand(90.0, 2.25, {}, 1.002), kFace);
    ASSERT_FALSE(side);
    EXPECT_NE(side.problems().front().text.find("scene.toml:7:12: "), std::string::npos);
    EXPECT_NE(side.problems().front().text.find("at least 1.005 m"), std::string::npos) << side.problems().front().text;
    EXPECT_TRUE(stand_position(stand(90.0, 2.25, {}, 1.005), kFace));
    // Over the camera the plumb line through the face itself is on the bearing: 1 m.
    EXPECT_FALSE(stand_position(stand(0.0, 2.25, {}, 0.999), kFace));
    EXPECT_TRUE(stand_position(stand(0.0, 2.25, {}, 1.0), kFace));
    // Behind the sitter the nearest place on the bearing is over the mark.
    const Expected<Double3> behind = stand_position(stand(180.0, 2.25, {}, 1.003), kFace);
    ASSERT_FALSE(behind);
    EXPECT_NE(behind.problems().front().text.find("at least 1.005 m"), std::string::npos);
    // Straight over the face is on no bearing but 0.
    EXPECT_FALSE(stand_position(stand(90.0, {}, 90.0, 1.0), kFace));
    const Expected<Double3> steep = stand_position(stand(90.0, {}, 89.0, 1.0), kFace);
    ASSERT_FALSE(steep);
    // 0.09 m / cos 89° = 5.1569 m.
    EXPECT_NE(steep.problems().front().text.find("at least 5.157 m"), std::string::npos);
    EXPECT_TRUE(stand_position(stand(90.0, {}, 89.0, 5.157), kFace));
}

TEST(PlaceFront, AxisPointsAtTheAimAndTheBasisIsRightHanded) {
    const Expected<PlacedFront> front = place_front(at({-1.0, 2.0, 1.0}, kFace), points());
    ASSERT_TRUE(front);
    expect_near(front->axis, glm::normalize(kFace - Double3(-1.0, 2.0, 1.0)));
    expect_near(glm::cross(front->right, front->up), front->axis);
    EXPECT_GT(front->up.y, 0.0);
    EXPECT_NEAR(front->right.y, 0.0, kExact);  // no roll: level
}

// Somebody who looks at a front that faces the camera sees camera right at the right.
TEST(PlaceFront, RightIsAsSeenFromOutside) {
    const Expected<PlacedFront> front = place_front(at({0.0, 1.0, 0.0}, {0.0, 1.0, 5.0}), points());
    ASSERT_TRUE(front);
    expect_near(front->right, {1.0, 0.0, 0.0});
    expect_near(front->up, {0.0, 1.0, 0.0});
}

TEST(PlaceFront, EveryNamedAimIsItsPoint) {
    const StudioPoints where = points();
    const std::vector<std::pair<Aim::Target, Double3>> cases{
        {Aim::Target::kFace, where.face},         {Aim::Target::kEyes, where.face},
        {Aim::Target::kChest, where.chest},       {Aim::Target::kCrown, where.crown},
        {Aim::Target::kBackdrop, where.backdrop}, {Aim::Target::kCamera, where.camera}};
    for (const auto& [target, point] : cases) {
        Placement placement = at({1.0, 2.0, 0.5}, {});
        placement.aim.target = target;
        expect_near(place_front(placement, where)->axis, glm::normalize(point - Double3(1.0, 2.0, 0.5)));
    }
}

TEST(PlaceFront, StraightDownAndUpHaveAStatedUp) {
    const Expected<PlacedFront> down = place_front(at({0.0, 3.0, 0.0}, {0.0, 1.0, 0.0}), points());
    ASSERT_TRUE(down);
    expect_near(down->up, {0.0, 0.0, -1.0});
    expect_near(glm::cross(down->right, down->up), down->axis);
    expect_near(place_front(at({0.0, 0.0, 0.0}, {0.0, 1.0, 0.0}), points())->up, {0.0, 0.0, 1.0});
    // Nearly down, tilted from facing the backdrop, is nearly the same: no flip at the pole.
    const Expected<PlacedFront> nearly = place_front(at({0.0, 3.0, 0.0}, {0.0, 1.0, -1e-4}), points());
    expect_near(nearly->up, {0.0, 0.0, -1.0}, 1e-4);
}

TEST(PlaceFront, RollTurnsRoundTheAxis) {
    Placement placement = at({0.0, 1.0, 0.0}, {0.0, 1.0, 5.0});
    placement.roll_deg = 90.0;
    const Expected<PlacedFront> front = place_front(placement, points());
    ASSERT_TRUE(front);
    expect_near(front->axis, {0.0, 0.0, 1.0});
    expect_near(front->up, {-1.0, 0.0, 0.0});  // counterclockwise as seen from the front
    expect_near(front->right, {0.0, 1.0, 0.0});
}

TEST(PlaceFront, FeatherTurnsTowardTheCameraFromEitherSide) {
    const StudioPoints where = points();
    for (const double angle : {-120.0, -60.0, -20.0, 20.0, 60.0, 120.0}) {
        Placement placement;
        placement.where = stand(angle, 1.25, {}, 1.3);
        const PlacedFront straight = *place_front(placement, where);
        placement.feather_deg = 15.0;
        const PlacedFront feathered = *place_front(placement, where);
        placement.feather_deg = -15.0;
        const PlacedFront away = *place_front(placement, where);
        const Double3 camera = glm::normalize(where.camera - straight.centre);
        EXPECT_NEAR(degrees(std::acos(glm::dot(straight.axis, feathered.axis))), 15.0, 1e-6);
        EXPECT_GT(glm::dot(feathered.axis, camera), glm::dot(straight.axis, camera)) << angle;
        EXPECT_LT(glm::dot(away.axis, camera), glm::dot(straight.axis, camera)) << angle;
        expect_near(feathered.up, straight.up);
        expect_near(glm::cross(feathered.right, feathered.up), feathered.axis);
    }
}

TEST(PlaceFront, AnAimAtThePlaceItselfIsAProblem) {
    const Expected<PlacedFront> front = place_front(at(kFace, kFace), points());
    ASSERT_FALSE(front);
    EXPECT_NE(front.problems().front().text.find("scene.toml:3:5: "), std::string::npos);
}

}  // namespace
}  // namespace understudy
