// Lids drawn from wide to closed.
#include <array>
#include <cmath>

#include "sitter/eye_rays.h"
#include "sitter/eye_surface.h"
#include "sitter/tear_line.h"

namespace understudy {
namespace {

class LidOpeningTest : public testing::TestWithParam<const char*> {};

Sitter with_lids(const std::string& name, double lids, const GazeAngles& gaze = {}) {
    auto settings = library_head(name);
    settings.lids = lids;
    settings.gaze = gaze;
    const HeadPointer& head = loaded_once(name);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

bool round_the_eye(Zone zone) {
    return zone == Zone::kUpperLid || zone == Zone::kLowerLid || zone == Zone::kSocket || zone == Zone::kCaruncle ||
           zone == Zone::kTearLine;
}

// Square millimetres of the eye that show from the front.
double shown_mm2(const TriangleScene& head, const Eye& eye) {
    constexpr double kStep = 0.0005;
    int seen = 0;
    for (int column = -26; column <= 26; ++column) {
        for (int row = -24; row <= 24; ++row) {
            const Double3 origin = eye.centre + Double3(kStep * column, kStep * row, 0.1);
            const double distance = to_eye(eye, origin, {0.0, 0.0, -1.0});
            if (distance < first_distance(head, origin, {0.0, 0.0, -1.0}) && distance < 1.0) ++seen;
        }
    }
    return 0.25 * seen;
}

// The opening is a share of the natural one, by definition: so is the area between the lids, but for the lids' own
// thickness and the folds, which hang before it.
TEST_P(LidOpeningTest, OpensByTheShare) {
    const Sitter& natural = posed(GetParam());
    const TriangleScene before = rays_at(natural);
    for (const auto& [lids, low, high] : {std::array{0.5, 0.3, 0.65}, {1.3, 1.1, 1.5}}) {
        const Sitter drawn = with_lids(GetParam(), lids);
        const TriangleScene after = rays_at(drawn);
        for (std::size_t e = 0; e < 2; ++e) {
            const double share = shown_mm2(after, drawn.eyes->at(e)) / shown_mm2(before, natural.eyes->at(e));
            EXPECT_GT(share, low) << lids;
            EXPECT_LT(share, high) << lids;
        }
    }
}

// From the eye's own front, in every direction outward, a closed lid is met: no light can come in.
TEST_P(LidOpeningTest, ClosedLidsLetNothingThrough) {
    for (const GazeAngles& gaze : {GazeAngles{}, GazeAngles{25.0, 15.0}, GazeAngles{-20.0, -20.0}}) {
        const Sitter closed = with_lids(GetParam(), 0.0, gaze);
        ASSERT_TRUE(closed.eyes);
        const TriangleScene head = rays_at(closed);
        for (const Eye& eye : *closed.eyes) {
            EXPECT_EQ(shown_mm2(head, eye), 0.0);
            for (int i = 0; i < 200; ++i) {
                // A spiral over the front of the ball, and another over the directions outward.
                const double turn = 2.399963 * i;
                const double z = 1.0 - 0.6 * (i + 0.5) / 200.0;
                const double r = std::sqrt(1.0 - z * z);
                const Double3 at =
                    at_height(eye, eye.centre + 0.01 * Double3(r * std::cos(turn), r * std::sin(turn), z), 1e-5);
                const double other = 5.0 * turn;
                const double up = std::fmod(0.618034 * i, 1.0);
                const Double3 out = glm::normalize(at - eye.centre);
                const Frame frame = Frame::around(Vec3(out));
                const double flat = std::sqrt(1.0 - up * up);
                const Double3 way = up * out + flat * (std::cos(other) * Double3(frame.tangent) +
                                                       std::sin(other) * Double3(frame.bitangent));
                EXPECT_LT(first_distance(head, at, glm::normalize(way)), 1.0) << i;
            }
        }
    }
}

TEST_P(LidOpeningTest, NoLidIsInsideTheEye) {
    for (const double lids : {0.0, 0.1, 0.5, 1.3}) {
        const Sitter sitter = with_lids(GetParam(), lids, {15.0, -10.0});
        for (const Eye& eye : *sitter.eyes) {
            for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
                if (!round_the_eye(sitter.mesh.zones[t])) continue;
                for (const auto v : sitter.mesh.triangles[t]) {
                    // The caruncle's edge dips in by a tenth of a millimetre.
                    ASSERT_GT(height_above_eye(eye, Double3(sitter.mesh.positions[v])), -0.00012) << lids;
                }
            }
        }
    }
}

// Tears along both lids, no higher on them than a meniscus is: 0.365 ± 0.153 mm in radius (Yokoi and others, Br. J.
// Ophthalmol. 83, 1999, 92); the literature's mean height is 0.22 mm, and 0.16 to 0.35 mm its range (Doughty and
// others, Cont. Lens Anterior Eye 25, 2002, 57).
TEST_P(LidOpeningTest, TearsLieAlongBothLids) {
    const Sitter& sitter = posed(GetParam());
    for (const Eye& eye : *sitter.eyes) {
        std::array<double, 2> highest{};
        for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
            if (sitter.mesh.zones[t] != Zone::kTearLine) continue;
            for (const auto v : sitter.mesh.triangles[t]) {
                const Double3 p(sitter.mesh.positions[v]);
                if (glm::distance(p, eye.centre) > 0.02) continue;
                const double height = height_above_eye(eye, p);
                ASSERT_LT(height, 0.0006);
                // The middle third, where nothing of the caruncle holds the lid off.
                if (std::abs(p.x - eye.centre.x) > 0.005) continue;
                double& high = highest.at(p.y > eye.centre.y ? 0 : 1);
                high = std::max(high, height);
            }
        }
        for (const double high : highest) {
            EXPECT_GT(high, 0.00016);
            EXPECT_LT(high, 0.00045);
        }
    }
}

// Eyes do not turn farther than eyes can (Lee and others 2019); a face turned away keeps them at that.
TEST_P(LidOpeningTest, GazeStopsWhereEyesStop) {
    auto settings = library_head(GetParam());
    settings.gaze = GazeAtCamera{};
    const HeadPointer& head = loaded_once(GetParam());
    ASSERT_TRUE(head);
    const Sitter aside = pose_head(*head, settings, Double3(5.0, 1.25, 0.5));
    EXPECT_GT(aside.gaze_asked_deg, 80.0);
    for (const Eye& eye : *aside.eyes) {
        EXPECT_NEAR(degrees(std::acos(eye.axis.z)), kFarthestGazeDeg, 1e-6);
        EXPECT_NEAR(glm::length(eye.axis), 1.0, 1e-12);
        EXPECT_GT(eye.axis.x, 0.7);
    }
    const Sitter straight = pose_head(*head, settings, Double3(0.0, 1.25, 2.0));
    EXPECT_LT(straight.gaze_asked_deg, 3.0);
}

INSTANTIATE_TEST_SUITE_P(All, LidOpeningTest, testing::ValuesIn(kLibraryHeads),
                         [](const auto& name) { return std::string(name.param); });

}  // namespace
}  // namespace understudy
