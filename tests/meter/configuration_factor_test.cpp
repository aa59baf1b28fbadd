// Illuminance from Lambertian fronts against closed forms: E = M·F, M = Φ/A (Siegel and Howell; Howell's catalogue of
// configuration factors; values worked out by closed form and by Gauss-Legendre quadrature, which agree).

#include <cmath>

#include "metered.h"

namespace understudy {
namespace {

constexpr double kPart = 0.002;

double factor_of(const MeterReport& report, Facing facing, double area) {
    return face_reading(report, Receptor::kFlat, facing).exposure_lxs * area / kLumenSeconds;
}

void expect_factor(const std::string& scene, Facing facing, double area, double factor, const std::string& what) {
    const MeterReport report = metered(kEmpty + scene);
    expect_reading(face_reading(report, Receptor::kFlat, facing), factor * kLumenSeconds / area, kPart, what);
    testing::Test::RecordProperty(what, std::to_string(factor_of(report, facing, area)));
}

double disc_area(double diameter) { return 0.25 * kPiDouble * diameter * diameter; }

// Howell B-10: R² / (R² + h²).
TEST(ConfigurationFactor, DiscOnItsAxis) {
    struct Row {
        double diameter, height, factor;
    };
    for (const Row& row :
         {Row{1.0, 1.0, 0.2}, Row{0.9, 1.5, 0.08256881}, Row{2.0, 1.0, 0.5}, Row{0.5, 1.0, 0.05882353}}) {
        const std::string size = std::to_string(row.diameter);
        expect_factor(lamp("\"disc\", diameter = " + size, "[0, 1.25, " + std::to_string(row.height) + "]", "\"face\""),
                      Facing::kKey, disc_area(row.diameter), row.factor, "disc " + size);
    }
}

// A tilted receiver, the whole disc above its horizon: cos ω · R² / (R² + h²).
TEST(ConfigurationFactor, DiscOnItsAxisOverATiltedReceiver) {
    struct Row {
        const char* camera;
        double factor;
    };
    for (const Row& row : {Row{"[1.0, 1.25, 1.7320508]", 0.17320508}, Row{"[2.0, 1.25, 2.0]", 0.14142136},
                           Row{"[1.7320508, 1.25, 1.0]", 0.10}}) {
        expect_factor(std::string("[camera]\nposition = ") + row.camera + "\n" +
                          lamp("\"disc\", diameter = 1.0", "[0, 1.25, 1]", "\"face\""),
                      Facing::kCamera, disc_area(1.0), row.factor, row.camera);
    }
}

// Howell B-12: ½ (1 − (Z − 2ρ²) / √(Z² − 4ρ²)).
TEST(ConfigurationFactor, DiscOffItsAxis) {
    struct Row {
        double radius, height, off, factor;
    };
    for (const Row& row :
         {Row{0.5, 1.0, 0.5, 0.14644661}, Row{0.5, 1.0, 1.0, 0.06587843}, Row{0.5, 1.5, 1.0, 0.05278640},
          Row{0.45, 1.2, 0.3, 0.11214416}, Row{1.0, 2.0, 0.25, 0.19604475}}) {
        const std::string off = std::to_string(row.off);
        expect_factor(lamp("\"disc\", diameter = " + std::to_string(2.0 * row.radius),
                           "[" + off + ", 1.25, " + std::to_string(row.height) + "]", "[" + off + ", 1.25, 0]"),
                      Facing::kCamera, disc_area(2.0 * row.radius), row.factor, "disc off by " + off);
    }
}

// Howell B-3, four times the quarter: centred, parallel.
TEST(ConfigurationFactor, RectangleOnItsAxis) {
    struct Row {
        double width, height, distance, factor;
    };
    for (const Row& row : {Row{2.0, 2.0, 1.0, 0.55412642}, Row{1.0, 1.0, 1.0, 0.23945647},
                           Row{0.3, 1.2, 1.0, 0.09247221}, Row{0.6, 0.9, 1.2, 0.10527351}}) {
        const std::string width = std::to_string(row.width);
        expect_factor(lamp("\"rectangle\", width = " + width + ", height = " + std::to_string(row.height),
                           "[0, 1.25, " + std::to_string(row.distance) + "]", "\"face\""),
                      Facing::kKey, row.width * row.height, row.factor, "rectangle " + width);
    }
}

// Howell B-3 itself: the normal passes through one corner.
TEST(ConfigurationFactor, RectangleOverItsCorner) {
    expect_factor(lamp("\"rectangle\", width = 1.0, height = 1.0", "[0.5, 1.75, 1]", "[0.5, 1.75, 0]"), Facing::kCamera,
                  1.0, 0.13853161, "corner");
}

// Howell B-4: the rectangle stands square to the receiver, its lower edge in the receiver's plane.
TEST(ConfigurationFactor, RectangleSquareToTheReceiver) {
    struct Row {
        double height, width, distance, factor;
    };
    for (const Row& row : {Row{1.0, 1.0, 1.0, 0.05573420}, Row{1.0, 2.0, 0.5, 0.13548840},
                           Row{1.2, 0.3, 1.0, 0.02705396}, Row{2.0, 1.0, 1.5, 0.05724784}}) {
        const std::string place =
            ", " + std::to_string(1.25 + row.width / 2.0) + ", " + std::to_string(row.height / 2.0) + "]";
        const std::string width = std::to_string(row.height);
        expect_factor("[camera]\nposition = [0, 1.25, 4]\n" +
                          lamp("\"rectangle\", width = " + width + ", height = " + std::to_string(row.width),
                               "[" + std::to_string(row.distance) + place, "[0" + place),
                      Facing::kCamera, row.height * row.width, row.factor, "square to it " + place);
    }
}

// Lambert 1760, by the polygon's edges.
TEST(ConfigurationFactor, OctagonOnItsAxis) {
    expect_factor(lamp("\"polygon\", sides = 8, diameter = 1.0", "[0, 1.25, 1]", "\"face\""), Facing::kKey,
                  2.0 * std::sqrt(2.0) * 0.25, 0.18366372, "octagon");
}

// The difference of two discs.
TEST(ConfigurationFactor, RingOnItsAxis) {
    expect_factor(lamp("\"ring\", diameter = 1.0, inner = 0.5", "[0, 1.25, 1]", "\"face\""), Facing::kKey,
                  disc_area(1.0) - disc_area(0.5), 0.2 - 0.05882353, "ring");
}

// (R/H)² cos β above the horizon, Siegel and Howell's cut form below.
TEST(ConfigurationFactor, SphereAboveAndOnTheHorizon) {
    struct Row {
        double distance_in_radii, beta_deg, factor;
    };
    for (const Row& row : {Row{2.0, 0.0, 0.25}, Row{4.0, 0.0, 0.0625}, Row{10.0, 0.0, 0.01}, Row{2.0, 45.0, 0.176777},
                           Row{2.0, 70.0, 0.087655}, Row{2.0, 90.0, 0.028834}, Row{1.5, 90.0, 0.074110}}) {
        const double away = 0.5 * row.distance_in_radii;
        const double x = away * std::sin(radians(row.beta_deg));
        const double z = away * std::cos(radians(row.beta_deg));
        expect_factor("[camera]\nposition = [0, 1.25, 9]\n" +
                          lamp("\"sphere\", diameter = 1.0",
                               "[" + std::to_string(x) + ", 1.25, " + std::to_string(z) + "]", "\"face\""),
                      Facing::kCamera, kPiDouble, row.factor,
                      "sphere at " + std::to_string(row.distance_in_radii) + ", " + std::to_string(row.beta_deg));
    }
}

// The five-times rule (Ryer's handbook): a disc this many diameters away against I/d².
TEST(FiveTimesRule, DiscAgainstInverseSquare) {
    struct Row {
        double diameters, error;
    };
    for (const Row& row :
         {Row{1.0, -0.20}, Row{2.0, -0.05882}, Row{3.0, -0.02703}, Row{5.0, -0.00990}, Row{10.0, -0.00249}}) {
        const MeterReport report =
            metered(kEmpty + lamp("\"disc\", diameter = 0.4", "[0, 1.25, " + std::to_string(0.4 * row.diameters) + "]",
                                  "\"face\""));
        const double inverse_square = kLumenSeconds / kPiDouble / std::pow(0.4 * row.diameters, 2.0);
        const Reading reading = face_reading(report, Receptor::kFlat, Facing::kKey);
        EXPECT_NEAR(reading.exposure_lxs / inverse_square - 1.0, row.error,
                    std::max(0.0005, 3.0 * reading.standard_error_lxs / inverse_square))
            << row.diameters;
        EXPECT_LE(reading.standard_error_lxs / inverse_square, 0.003) << row.diameters;
    }
}

}  // namespace
}  // namespace understudy
