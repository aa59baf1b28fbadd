// Intensity over direction from a photometric file.
//
// The values of the composed file and of the two simpler ones were computed apart from this program, as integrals of
// the interpolant in closed form and by quadrature. Directions of types A and B were worked by hand from what their
// angles mean: LM-63-2002's definitions (nadir is vertical 0 for B and C and h = 0, v = −90 for A; horizontal angles
// turn counter-clockwise for C and clockwise for A and B, seen from above), and for B the planes round a horizontal
// axis of CIE 121 as quoted in the definitions of IFC.

#include "kit/photometric_web.h"

#include <gtest/gtest.h>

#include <array>

#include "kit/photometric_opening.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

PhotometricWeb web_of(const std::string& text) {
    const auto file = parse_photometric_file(text, "lamp.ies");
    if (!file) throw std::runtime_error(file.problems()[0].text);
    return PhotometricWeb(*file);
}

TEST(PhotometricWeb, ComposedFileHasItsComputedIntensities) {
    const PhotometricWeb web = web_of(kQuadrants);
    EXPECT_DOUBLE_EQ(web.candela_at({0, 0}), 600);
    EXPECT_DOUBLE_EQ(web.candela_at({0, 77}), 600);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 0}), 400);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 45}), 300);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 135}), 300);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 180}), 400);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 270}), 200);
    EXPECT_DOUBLE_EQ(web.candela_at({45, -90}), 200);
    EXPECT_DOUBLE_EQ(web.candela_at({45, 360}), 400);
    EXPECT_DOUBLE_EQ(web.candela_at({22.5, 22.5}), 475);
    EXPECT_DOUBLE_EQ(web.candela_at({90, 0}), 0);
    EXPECT_DOUBLE_EQ(web.candela_at({120, 0}), 0);
    EXPECT_DOUBLE_EQ(web.peak_candela(), 600);
}

// Given to three decimals.
TEST(PhotometricWeb, FluxIsTheExactIntegralOfTheInterpolant) {
    EXPECT_NEAR(web_of(kQuadrants).flux_lm(), 1369.911, 0.0005);
    std::string scaled = kQuadrants;
    scaled.replace(scaled.find("-1 1.0 3"), 8, "-1 2.0 3");
    scaled.replace(scaled.find("1.0 1.0 100"), 11, "0.9 1.0 100");
    EXPECT_NEAR(web_of(scaled).flux_lm(), 2465.840, 0.0005);
    // 100 cd into a half-space and all round: 200 π and 400 π.
    EXPECT_NEAR(web_of(photometric_text(2, 1, 1, "0 90\n0\n100 100")).flux_lm(), 628.3185, 0.00005);
    EXPECT_NEAR(web_of(photometric_text(2, 1, 1, "0 180\n0\n100 100")).flux_lm(), 1256.637, 0.0005);
    EXPECT_NEAR(web_of(photometric_text(2, 1, 1, "0 180\n0\n100 100")).forward_flux_lm(), 628.3185, 0.00005);
    EXPECT_NEAR(web_of(photometric_text(4, 1, 1, "0 30 60 90\n0\n1000 866 500 0")).flux_lm(), 3067.754, 0.0005);
}

// 100 cd everywhere in front: 2π sr for either sideways type, however few the angles.
TEST(PhotometricWeb, SidewaysTypesFillTheHalfSpaceAhead) {
    for (const int type : {2, 3}) {
        const std::string even = "-90 90\n-90 90\n100 100\n100 100";
        EXPECT_NEAR(web_of(photometric_text(2, 2, type, even)).flux_lm(), 628.3185, 0.00005);
        EXPECT_NEAR(web_of(photometric_text(2, 2, type, even)).forward_flux_lm(), 628.3185, 0.00005);
        const std::string half = "0 90\n0 90\n100 100\n100 100";
        EXPECT_NEAR(web_of(photometric_text(2, 2, type, half)).flux_lm(), 314.1593, 0.00005);
        EXPECT_DOUBLE_EQ(web_of(photometric_text(2, 2, type, half)).candela_at({10, -30}), 100);
        EXPECT_DOUBLE_EQ(web_of(photometric_text(2, 2, type, half)).candela_at({-10, 30}), 0);
    }
}

// The integral again, by the midpoint rule over directions: nothing of the closed form's terms is shared.
TEST(PhotometricWeb, FluxAgreesWithAQuadratureOverDirections) {
    const std::string planes = "-90 -20 35 90\n-90 -45 10 90\n1 2 3 4\n50 90 20 10\n80 300 120 30\n5 4 3 2";
    for (const std::string& text : {kQuadrants, photometric_text(4, 4, 2, planes), photometric_text(4, 4, 3, planes)}) {
        const PhotometricWeb web = web_of(text);
        constexpr int kRows = 720;
        double sum = 0.0;
        for (int i = 0; i < kRows; ++i) {
            const double z = -1.0 + (2.0 * i + 1.0) / kRows;
            for (int j = 0; j < kRows; ++j) {
                const double angle = 2.0 * kPiDouble * (j + 0.5) / kRows;
                const double across = std::sqrt(1.0 - z * z);
                sum += web.candela(Vec3(Double3(across * std::cos(angle), across * std::sin(angle), z)));
            }
        }
        // 500 000 directions; the error is that of the cells at the jump to darkness beyond 90 degrees.
        EXPECT_NEAR(sum * 4.0 * kPiDouble / (kRows * kRows), web.flux_lm(), 2e-3 * web.flux_lm());
    }
}

TEST(PhotometricWeb, FillsTheRound) {
    const auto at = [](const std::string& numbers, int planes, double horizontal) {
        return web_of(photometric_text(2, planes, 1, "0 90\n" + numbers)).candela_at({90, horizontal});
    };
    // 0 to 180: mirrored at that plane.
    const std::string half = "0 90 180\n1 1\n1 2\n1 5";
    EXPECT_DOUBLE_EQ(at(half, 3, 270), 2);
    EXPECT_DOUBLE_EQ(at(half, 3, 225), 3.5);
    // 90 to 270: mirrored at the plane through 90 and 270; without a plane at 180 too.
    const std::string other = "90 120 180 270\n1 1\n1 2\n1 5\n1 9";
    EXPECT_DOUBLE_EQ(at(other, 4, 60), 2);
    EXPECT_DOUBLE_EQ(at(other, 4, 0), 5);
    EXPECT_DOUBLE_EQ(at(other, 4, 315), 7);
    EXPECT_DOUBLE_EQ(at(other, 4, 225), 7);
    const std::string gap = "90 170 200 270\n1 1\n1 2\n1 5\n1 9";
    EXPECT_DOUBLE_EQ(at(gap, 4, 10), 2);
    EXPECT_DOUBLE_EQ(at(gap, 4, 355), 3.5);
    EXPECT_DOUBLE_EQ(at(gap, 4, 185), 3.5);
    // 0 to 345: from there evenly to what is at 0.
    const std::string open = "0 180 345\n1 1\n1 2\n1 4";
    EXPECT_DOUBLE_EQ(at(open, 3, 350), 3);
    EXPECT_DOUBLE_EQ(at(open, 3, 355), 2);
    // 0 to 360: nothing is mirrored.
    const std::string all = "0 90 180 270 360\n1 1\n1 2\n1 3\n1 4\n1 1";
    EXPECT_DOUBLE_EQ(at(all, 5, 90), 2);
    EXPECT_DOUBLE_EQ(at(all, 5, 270), 4);
    EXPECT_DOUBLE_EQ(at(all, 5, 315), 2.5);
}

struct ByHand {
    int type;
    PhotometricAngles angles;
    Vec3 direction;  // x right and y up as seen by someone who looks at the light, z along its axis
};

// Straight ahead is +z. Positive horizontal angles of A and B go to the light's own right: to that person's left.
TEST(PhotometricWeb, DirectionsWorkedByHand) {
    const float half = std::sqrt(0.5F);
    const std::vector<ByHand> cases{
        // C: nadir ahead; plane 0 up, plane 90 right; 180 behind.
        {1, {0, 0}, {0, 0, 1}},
        {1, {90, 0}, {0, 1, 0}},
        {1, {90, 90}, {1, 0, 0}},
        {1, {90, 180}, {0, -1, 0}},
        {1, {45, 270}, {-half, 0, half}},
        {1, {180, 0}, {0, 0, -1}},
        // B: vertical angles turn round the horizontal axis, so that h = 90 is a pole.
        {2, {0, 0}, {0, 0, 1}},
        {2, {45, 0}, {0, half, half}},
        {2, {0, 45}, {-half, 0, half}},
        {2, {30, 90}, {-1, 0, 0}},
        {2, {-90, -45}, {half, -half, 0}},
        {2, {45, 45}, {-half, 0.5F, 0.5F}},
        // A: horizontal angles turn round the upright axis, so that v = 90 is a pole.
        {3, {0, 0}, {0, 0, 1}},
        {3, {45, 0}, {0, half, half}},
        {3, {0, 45}, {-half, 0, half}},
        {3, {90, 30}, {0, 1, 0}},
        {3, {45, 45}, {-0.5F, half, 0.5F}},
        {3, {-90, 0}, {0, -1, 0}},
    };
    const std::array webs{web_of(photometric_text(2, 1, 1, "0 180\n0\n1 1")),
                          web_of(photometric_text(2, 2, 2, "-90 90\n-90 90\n1 1\n1 1")),
                          web_of(photometric_text(2, 2, 3, "-90 90\n-90 90\n1 1\n1 1"))};
    for (const ByHand& by_hand : cases) {
        const Vec3 direction = webs[static_cast<std::size_t>(by_hand.type - 1)].direction_of(by_hand.angles);
        EXPECT_LT(glm::length(direction - by_hand.direction), 1e-6F)
            << "type " << by_hand.type << " v " << by_hand.angles.vertical_deg << " h " << by_hand.angles.horizontal_deg
            << ": " << direction.x << " " << direction.y << " " << direction.z;
    }
}

TEST(PhotometricWeb, AnglesAndDirectionsAreInverse) {
    for (const int type : {1, 2, 3}) {
        const std::string numbers = type == 1 ? "0 180\n0 360\n1 1\n1 1" : "-90 90\n-90 90\n1 1\n1 1";
        const PhotometricWeb web = web_of(photometric_text(2, 2, type, numbers));
        for (double vertical = type == 1 ? 5.0 : -85.0; vertical < 90.0; vertical += 17.0) {
            for (double horizontal = type == 1 ? 0.0 : -85.0; horizontal < 90.0; horizontal += 13.0) {
                const PhotometricAngles back = web.angles_of(web.direction_of({vertical, horizontal}));
                EXPECT_NEAR(back.vertical_deg, vertical, 1e-3);  // floats near a pole
                EXPECT_NEAR(back.horizontal_deg, horizontal, 1e-3);
            }
        }
    }
}

TEST(PhotometricWeb, TellsWhereThePeakIs) {
    const PhotometricWeb web = web_of(photometric_text(3, 2, 1, "0 30 90\n0 180\n5 9 1\n5 8 1"));
    EXPECT_DOUBLE_EQ(web.peak_candela(), 9);
    EXPECT_DOUBLE_EQ(web.peak_at().vertical_deg, 30);
    EXPECT_DOUBLE_EQ(web.peak_at().horizontal_deg, 0);
}

// LM-63-2002 as quoted; from memory: the lying cylinders, the sphere, and the 1991 circle with no length.
TEST(PhotometricOpening, SignsTellTheForm) {
    EXPECT_EQ(opening_kind({0, 0, 0}), OpeningKind::kPoint);
    EXPECT_EQ(opening_kind({0.3, 1.2, 0}), OpeningKind::kRectangle);
    EXPECT_EQ(opening_kind({0.3, 1.2, 0.1}), OpeningKind::kBox);
    EXPECT_EQ(opening_kind({-0.3, -0.3, 0}), OpeningKind::kCircle);
    EXPECT_EQ(opening_kind({-0.3, 0, 0}), OpeningKind::kCircle);
    EXPECT_EQ(opening_kind({-0.3, -0.5, 0}), OpeningKind::kEllipse);
    EXPECT_EQ(opening_kind({-0.3, -0.3, 0.4}), OpeningKind::kUprightCylinder);
    EXPECT_EQ(opening_kind({-0.3, -0.5, 0.4}), OpeningKind::kUprightEllipticCylinder);
    EXPECT_EQ(opening_kind({-0.3, -0.3, -0.3}), OpeningKind::kSphere);
    EXPECT_EQ(opening_kind({-0.3, 1.2, -0.3}), OpeningKind::kCylinderAlongLength);
    EXPECT_EQ(opening_kind({1.2, -0.3, -0.3}), OpeningKind::kCylinderAcrossLength);
    EXPECT_EQ(opening_kind({0, 1.2, 0}), OpeningKind::kUnknown);
    EXPECT_EQ(describe_opening({-0.3, -0.3, 0}), "a circle of 0.3 m");
}

}  // namespace
}  // namespace understudy
