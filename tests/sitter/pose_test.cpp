#include <cmath>

#include "sitter/eye.h"
#include "sitter/head_for_test.h"

namespace understudy {
namespace {

Sitter with_pose(double turn, double chin, double lean) {
    auto settings = library_head("aspen");
    settings.turn_deg = turn;
    settings.chin_deg = chin;
    settings.lean_deg = lean;
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

Double3 between(const Sitter& sitter) { return 0.5 * (sitter.eyes->at(0).centre + sitter.eyes->at(1).centre); }
Double3 across(const Sitter& sitter) { return glm::normalize(sitter.eyes->at(1).centre - sitter.eyes->at(0).centre); }

TEST(Pose, StraightHeadLooksAtTheCameraFromOverTheMark) {
    const auto settings = library_head("aspen");
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter sitter = pose_head(*head, settings, std::nullopt);
    const Double3 face = face_point(*head, settings.eye_height_m);
    EXPECT_NEAR(face.x, 0.0, 1e-9);
    EXPECT_NEAR(face.y, 1.25, 1e-9);
    EXPECT_NEAR(glm::distance(face, between(sitter)), 0.0, 1e-9);
    EXPECT_LT(sitter.eyes->at(0).centre.x, 0.0) << "the first eye is camera left";
    EXPECT_GT(crown_point(*head, 1.25).y, 1.25 + 0.09);
    EXPECT_LT(chest_point(*head, 1.25).y, 1.25 - 0.2);
}

// Turning is round the upright axis over the mark, toward camera right.
TEST(Pose, TurnOfThirtyDegreesTurnsTheFaceByThirtyDegrees) {
    const Sitter straight = with_pose(0.0, 0.0, 0.0);
    const Sitter turned = with_pose(30.0, 0.0, 0.0);
    ASSERT_TRUE(straight.eyes && turned.eyes);
    const Double3 from = between(straight);
    const Double3 to = between(turned);
    EXPECT_NEAR(degrees(std::atan2(to.x, to.z)), 30.0, 1e-6);
    EXPECT_NEAR(std::hypot(to.x, to.z), from.z, 1e-9);
    EXPECT_NEAR(degrees(std::acos(glm::dot(across(straight), across(turned)))), 30.0, 1e-6);
    EXPECT_NEAR(degrees(std::atan2(turned.eyes->at(0).axis.x, turned.eyes->at(0).axis.z)), 30.0, 1e-6);
    // The skin goes with the eyes.
    const Double3 tip = turned.landmarks->nose_tip.position;
    EXPECT_NEAR(degrees(std::atan2(tip.x, tip.z)), 30.0, 0.2);
}

TEST(Pose, ChinGoesUpAndHeadLeansTowardCameraRight) {
    const Sitter up = with_pose(0.0, 15.0, 0.0);
    const Sitter leaning = with_pose(0.0, 0.0, 10.0);
    ASSERT_TRUE(up.eyes && leaning.eyes);
    EXPECT_NEAR(degrees(std::asin(up.eyes->at(0).axis.y)), 15.0, 1e-6);
    EXPECT_NEAR(degrees(std::asin(-across(leaning).y)), 10.0, 1e-6);
    EXPECT_GT(leaning.landmarks->crown.position.x, 0.01);
}

TEST(Pose, ShouldersStayWhenTheHeadTurns) {
    const Sitter straight = with_pose(0.0, 0.0, 0.0);
    const Sitter turned = with_pose(45.0, 10.0, 10.0);
    ASSERT_TRUE(straight.eyes && turned.eyes);
    std::size_t low = 0;
    for (std::size_t v = 0; v < straight.mesh.positions.size(); ++v) {
        if (straight.mesh.positions[v].y > 1.25F - 0.30F) continue;
        ++low;
        ASSERT_LT(glm::distance(straight.mesh.positions[v], turned.mesh.positions[v]), 0.003F);
    }
    EXPECT_GT(low, 1000U);
}

TEST(Pose, BodyTurnsUnderAHeadThatStays) {
    auto settings = library_head("aspen");
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter straight = pose_head(*head, settings, std::nullopt);
    settings.body_deg = 40.0;
    const Sitter turned = pose_head(*head, settings, std::nullopt);
    EXPECT_NEAR(glm::distance(between(straight), between(turned)), 0.0, 1e-9);
    EXPECT_NEAR(glm::dot(across(straight), across(turned)), 1.0, 1e-9);
    std::size_t low = 0;
    for (std::size_t v = 0; v < straight.mesh.positions.size(); ++v) {
        const Double3 from(straight.mesh.positions[v]);
        const Double3 to(turned.mesh.positions[v]);
        if (from.y > 1.25 - 0.30) continue;
        ++low;
        const double angle = radians(40.0);
        const Double3 rotated(from.x * std::cos(angle) + from.z * std::sin(angle), from.y,
                              from.z * std::cos(angle) - from.x * std::sin(angle));
        ASSERT_NEAR(glm::distance(to, rotated), 0.0, 0.003);
    }
    EXPECT_GT(low, 1000U);
}

TEST(Pose, LoweredShoulderIsLowerAndTheHeadStaysUpright) {
    auto settings = library_head("aspen");
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter straight = pose_head(*head, settings, std::nullopt);
    settings.shoulders_deg = 8.0;
    const Sitter lowered = pose_head(*head, settings, std::nullopt);
    EXPECT_NEAR(across(lowered).y, 0.0, 1e-9);
    const auto outermost = [](const SitterMesh& mesh) {
        std::size_t most = 0;
        for (std::size_t v = 0; v < mesh.positions.size(); ++v) {
            if (mesh.positions[v].x > mesh.positions[most].x) most = v;
        }
        return most;
    };
    const auto shoulder = outermost(straight.mesh);
    EXPECT_LT(lowered.mesh.positions[shoulder].y, straight.mesh.positions[shoulder].y - 0.02F);
}

// The sitter steps; the point that stands are placed from does not.
TEST(Pose, StepMovesTheSitterAndNotTheMark) {
    auto settings = library_head("aspen");
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter before = pose_head(*head, settings, std::nullopt);
    settings.step_m = {-0.1, 0.0, 0.05};
    const Sitter after = pose_head(*head, settings, std::nullopt);
    EXPECT_NEAR(glm::distance(between(after), between(before) + settings.step_m), 0.0, 1e-9);
    EXPECT_NEAR(
        glm::distance(after.landmarks->nose_tip.position, before.landmarks->nose_tip.position + settings.step_m), 0.0,
        1e-6);
    EXPECT_NEAR(glm::distance(stepped_face(*head, settings), between(after)), 0.0, 1e-9);
    EXPECT_NEAR(glm::distance(face_point(*head, settings.eye_height_m), between(before)), 0.0, 1e-9);
}

TEST(Pose, BothEyesLookAtTheTarget) {
    auto settings = library_head("aspen");
    settings.turn_deg = 20.0;
    settings.chin_deg = -5.0;
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Double3 camera(0.3, 1.4, 2.2);
    const Sitter sitter = pose_head(*head, settings, camera);
    for (const Eye& eye : *sitter.eyes) {
        EXPECT_NEAR(glm::dot(eye.axis, glm::normalize(camera - eye.centre)), 1.0, 1e-9);
    }
}

TEST(Pose, GazeAnglesAreRelativeToTheFace) {
    auto settings = library_head("aspen");
    settings.turn_deg = 25.0;
    settings.gaze = GazeAngles{-10.0, 5.0};
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter sitter = pose_head(*head, settings, std::nullopt);
    const Double3 axis = sitter.eyes->at(1).axis;
    EXPECT_NEAR(degrees(std::atan2(axis.x, axis.z)), 15.0, 1e-6);
    EXPECT_NEAR(degrees(std::asin(axis.y)), 5.0, 1e-6);
}

TEST(Pose, NobodyAndTheBall) {
    SitterSettings settings;
    settings.head = NobodyThere{};
    const auto nobody = loaded(settings);
    ASSERT_TRUE(nobody);
    EXPECT_EQ(pose_head(*nobody, settings, std::nullopt).kind, Sitter::Kind::kNobody);
    EXPECT_EQ(face_point(*nobody, 1.3), Double3(0.0, 1.3, 0.0));
    settings.head = MattBall{};
    const auto ball = loaded(settings);
    ASSERT_TRUE(ball);
    const Sitter sitter = pose_head(*ball, settings, std::nullopt);
    EXPECT_EQ(sitter.kind, Sitter::Kind::kBall);
    EXPECT_DOUBLE_EQ(sitter.ball_radius_m, 0.1);
    EXPECT_TRUE(sitter.mesh.triangles.empty());
    EXPECT_FALSE(sitter.eyes);
}

}  // namespace
}  // namespace understudy
