#include <cmath>

#include "sitter/eye.h"
#include "sitter/eye_rays.h"
#include "sitter/eye_surface.h"

namespace understudy {
namespace {

class LidsTest : public testing::TestWithParam<const char*> {};

void expect_no_lid_inside(const Sitter& sitter) {
    for (const Eye& eye : *sitter.eyes) {
        for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
            // The lids' lining and the sockets count as inside.
            const Zone zone = sitter.mesh.zones[t];
            if (zone != Zone::kUpperLid && zone != Zone::kLowerLid && zone != Zone::kSocket) continue;
            for (const auto v : sitter.mesh.triangles[t]) {
                const double height = height_above_eye(eye, Double3(sitter.mesh.positions[v]));
                // The caruncle's edge dips in by a tenth of a millimetre so that no light slips under it.
                ASSERT_GT(height, -0.00012);
            }
        }
    }
}

TEST_P(LidsTest, NoLidVertexIsInsideTheEye) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.eyes);
    expect_no_lid_inside(sitter);
}

TEST_P(LidsTest, NorWhenTheEyesLookAside) {
    auto settings = library_head(GetParam());
    settings.gaze = GazeAngles{20.0, -10.0};
    const HeadPointer& head = loaded_once(GetParam());
    ASSERT_TRUE(head);
    expect_no_lid_inside(pose_head(*head, settings, std::nullopt));
}

// A ray that came between lid and eye would meet the socket behind the eye's middle: from the front none may, as far as
// the eyeball reaches; beside it there is no eye to slip behind, and the temple's skin may lie farther back.
TEST_P(LidsTest, NoRayPassesBetweenLidAndEye) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.eyes);
    const Double3 way(0.0, 0.0, -1.0);
    const TriangleScene head = rays_at(sitter);
    for (const Eye& eye : *sitter.eyes) {
        for (int column = -26; column <= 26; ++column) {
            for (int row = -8; row <= 8; ++row) {
                if (std::hypot(0.0005 * column, 0.0005 * row) >= kEyeballRadius) continue;
                const Double3 origin = eye.centre + Double3(0.0005 * column, 0.0005 * row, 0.1);
                const double met = std::min(first_distance(head, origin, way), to_eye(eye, origin, way));
                ASSERT_LT(met, 0.1) << "millimetres off the pupil: " << 0.5 * column << ", " << 0.5 * row;
            }
        }
    }
}

// How close the lid comes to the eye in the first 5 mm that it or a fold of it covers, walking outward from the pupil
// along one meridian.
double gap_along(const TriangleScene& head, const Eye& eye, double meridian) {
    const Double3 outward(std::cos(meridian), std::sin(meridian), 0.0);
    constexpr double kStep = 0.00015;
    double gap = 1e9;
    double covered = 0.0;
    for (double walked = 0.0; walked < 0.020 && covered < 0.005; walked += kStep) {
        const double angle = walked / kEyeballRadius;
        const Double3 way = std::cos(angle) * eye.axis + std::sin(angle) * outward;
        const Double3 from = eye.centre + (eye_surface_radius(eye, way) - 1e-6) * way;
        const double lid = first_distance(head, from, way);
        if (lid < 0.004 || covered > 0.0) covered += kStep;
        gap = std::min(gap, lid);
    }
    return gap;
}

TEST_P(LidsTest, LidsTouchTheEyeAllRound) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.eyes);
    const TriangleScene head = rays_at(sitter);
    for (const Eye& eye : *sitter.eyes) {
        for (int k = 0; k < 40; ++k) EXPECT_LE(gap_along(head, eye, radians(9.0 * k)), 0.0005) << "at " << 9 * k;
    }
}

// The upper lid hides 1 to 2 mm of the iris and the lower lid meets the limbus, give or take (margin reflex distance 4
// to 5 mm above, 5 mm below the light reflex: standard values of lid examination, common in textbooks).
struct Opening {
    double upper, lower;  // over the eye's middle, metres
};

Opening opening_of(const TriangleScene& head, const Eye& eye) {
    const auto visible = [&](double y) {
        const Double3 origin = eye.centre + Double3(0.0, y, 0.1);
        return to_eye(eye, origin, {0.0, 0.0, -1.0}) < first_distance(head, origin, {0.0, 0.0, -1.0});
    };
    // From the pupil both ways, until skin is met.
    const double pupil = kApexAhead * eye.axis.y;
    Opening opening{pupil, pupil};
    while (opening.upper < 0.011 && visible(opening.upper)) opening.upper += 0.0001;
    while (opening.lower > -0.011 && visible(opening.lower)) opening.lower -= 0.0001;
    return opening;
}

TEST_P(LidsTest, OpeningIsNatural) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.eyes);
    const TriangleScene head = rays_at(sitter);
    for (const Eye& eye : *sitter.eyes) {
        const auto [upper, lower] = opening_of(head, eye);
        EXPECT_GE(upper, 0.0036);  // the folds of hooded and of East Asian lids hang before the edge
        EXPECT_LE(upper, 0.0050);
        EXPECT_LE(lower, -0.0045);
        EXPECT_GE(lower, -0.0062);
    }
}

// Becker and Fuchs 1988: the upper lid goes with the eye. The pupil goes down by 4.5 mm; the lid by half of that or
// more, as much as the folds over it leave to be seen.
TEST_P(LidsTest, UpperLidFollowsTheGaze) {
    auto settings = library_head(GetParam());
    settings.gaze = GazeAngles{0.0, -20.0};
    const HeadPointer& head = loaded_once(GetParam());
    ASSERT_TRUE(head);
    const Sitter down = pose_head(*head, settings, std::nullopt);
    const Sitter& straight = posed(GetParam());
    for (std::size_t e = 0; e < 2; ++e) {
        const auto before = opening_of(rays_at(straight), straight.eyes->at(e));
        const auto after = opening_of(rays_at(down), down.eyes->at(e));
        EXPECT_LT(after.upper, before.upper - 0.5 * kApexAhead * std::sin(radians(20.0)));
        EXPECT_GT(after.upper - after.lower, 0.003) << "the eye is still open";
    }
}

INSTANTIATE_TEST_SUITE_P(All, LidsTest, testing::ValuesIn(kLibraryHeads),
                         [](const auto& name) { return std::string(name.param); });

}  // namespace
}  // namespace understudy
