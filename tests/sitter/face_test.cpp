// Named amounts move what they name, the way they say; expressions move the face and not the skull.
#include <unistd.h>
#include <fstream>

#include "sitter/face_shapes.h"
#include "sitter/head_for_test.h"

namespace understudy {
namespace {

Sitter with_feature(FaceFeature feature, double amount) {
    auto settings = library_head("aspen");
    settings.face.of(feature) = amount;
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

Sitter with_expression(const ExpressionSettings& expression) {
    auto settings = library_head("aspen");
    settings.expression = expression;
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

double breadth(const Sitter& sitter, Zone zone) {
    double most = 0.0;
    for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
        if (sitter.mesh.zones[t] != zone) continue;
        for (const auto v : sitter.mesh.triangles[t]) {
            most = std::max(most, 2.0 * std::abs(static_cast<double>(sitter.mesh.positions[v].x)));
        }
    }
    return most;
}

// The furthest that a point of the zone went up, metres.
double most_raised(const Sitter& from, const Sitter& to, Zone zone) {
    double most = -1.0;
    for (std::size_t t = 0; t < from.mesh.triangles.size(); ++t) {
        if (from.mesh.zones[t] != zone) continue;
        for (const auto v : from.mesh.triangles[t]) {
            most = std::max(
                most, static_cast<double>(to.mesh.positions[v].y) - static_cast<double>(from.mesh.positions[v].y));
        }
    }
    return most;
}

// Over the wings, at the height of the tip.
double nose_breadth(const Sitter& sitter) {
    const Double3 tip = sitter.landmarks->nose_tip.position;
    double most = 0.0;
    for (const Vec3& p : sitter.mesh.positions) {
        const bool on_nose =
            std::abs(static_cast<double>(p.y) - tip.y) < 0.006 && static_cast<double>(p.z) > tip.z - 0.020;
        if (on_nose) most = std::max(most, 2.0 * std::abs(static_cast<double>(p.x)));
    }
    return most;
}

double eyes_behind_bridge(const Sitter& s) { return s.landmarks->nose_bridge.position.z - s.eyes->at(0).centre.z; }
double eye_spacing(const Sitter& s) { return glm::distance(s.eyes->at(0).centre, s.eyes->at(1).centre); }
double nose_below_eyes(const Sitter& s) { return s.eyes->at(0).centre.y - s.landmarks->nose_tip.position.y; }
double nose_before_bridge(const Sitter& s) {
    return s.landmarks->nose_tip.position.z - s.landmarks->nose_bridge.position.z;
}

TEST(Face, AmountsMoveWhatTheyName) {
    using F = FaceFeature;
    const auto grows = [](FaceFeature feature, const auto& measure, double by_mm) {
        const double less = measure(with_feature(feature, -1.0));
        const double more = measure(with_feature(feature, 1.0));
        EXPECT_GT(1000.0 * (more - less), by_mm) << kFaceFeatureNames.at(static_cast<std::size_t>(feature));
    };
    grows(F::kEyeSpacing, eye_spacing, 2.0);
    grows(F::kNoseLength, nose_below_eyes, 3.0);
    grows(F::kNoseWidth, nose_breadth, 3.0);
    grows(F::kNoseDepth, nose_before_bridge, 3.0);
    grows(
        F::kFaceWidth, [](const Sitter& s) { return breadth(s, Zone::kScalp); }, 6.0);
    grows(
        F::kJaw, [](const Sitter& s) { return breadth(s, Zone::kChin); }, 1.0);
    grows(
        F::kForehead, [](const Sitter& s) { return s.landmarks->forehead.position.z; }, 2.0);
    // Deep-set eyes lie further behind the bridge of the nose than prominent ones.
    grows(
        F::kEyeSet, [](const Sitter& s) { return -eyes_behind_bridge(s); }, 2.0);
}

// Mean and standard deviation, millimetres: ANSUR II (US Army, 2012), computed from its public tables. The ends of the
// amounts that change a measured size, on an average face, are people that the survey could have met: within 3.1
// deviations, all but two in a thousand. Nose, jaw, brow and lips have no measure there that these meshes could be held
// to.
TEST(Face, EndsOfTheAmountsAreStillPeople) {
    constexpr std::array<std::array<double, 2>, 2> kSpacing = {{{61.71, 3.62}, {64.02, 3.42}}};
    constexpr std::array<std::array<double, 2>, 2> kBreadth = {{{147.8, 5.2}, {154.3, 5.5}}};
    for (const int sex : {0, 1}) {
        for (const FaceFeature feature : {FaceFeature::kEyeSpacing, FaceFeature::kFaceWidth, FaceFeature::kForehead}) {
            const auto f = static_cast<std::size_t>(feature);
            for (const double amount : {-1.0, 1.0}) {
                auto settings = library_head(sex == 0 ? "aspen" : "rowan");
                settings.face.features.fill(0.0);
                settings.face.features.at(f) = amount;
                const auto head = loaded(settings);
                ASSERT_TRUE(head);
                const Sitter sitter = pose_head(*head, settings, std::nullopt);
                const auto at = static_cast<std::size_t>(sex);
                EXPECT_NEAR(1000.0 * eye_spacing(sitter), kSpacing.at(at)[0], 3.1 * kSpacing.at(at)[1])
                    << kFaceFeatureNames.at(f) << amount;
                double most = 0.0;
                for (const Vec3& p : sitter.mesh.positions) {
                    if (static_cast<double>(p.y) > 1.25 + 0.025) {
                        most = std::max(most, 2.0 * std::abs(static_cast<double>(p.x)));
                    }
                }
                EXPECT_NEAR(1000.0 * most, kBreadth.at(at)[0], 3.1 * kBreadth.at(at)[1])
                    << kFaceFeatureNames.at(f) << amount;
            }
        }
    }
}

TEST(Face, ExpressionsMoveTheFaceAndNotTheSkull) {
    const Sitter neutral = with_expression({});
    const Sitter raised = with_expression({0.0, 0.0, 1.0, 0.0});
    EXPECT_GT(most_raised(neutral, raised, Zone::kBrow), 0.002);
    const Sitter open = with_expression({0.0, 1.0, 0.0, 0.0});
    EXPECT_LT(open.landmarks->chin.position.y, neutral.landmarks->chin.position.y - 0.005);
    const Sitter smiling = with_expression({1.0, 0.0, 0.0, 0.0});
    EXPECT_GT(breadth(smiling, Zone::kLips), breadth(neutral, Zone::kLips) + 0.004);
    for (const Sitter* moved : {&raised, &open, &smiling}) {
        EXPECT_NEAR(glm::distance(moved->landmarks->crown.position, neutral.landmarks->crown.position), 0.0, 1e-3);
    }
}

TEST(Face, SharesOfAgeSexAndAncestryAddUpToOnePerson) {
    FaceSettings face;
    face.age_years = 40.0;
    face.sex = 0.3;
    face.ancestry = Ancestry{0.2, 0.3, 0.5};
    double kinds = 0.0;
    double builds = 0.0;
    for (const auto& [shape, amount] : face_shapes(face)) {
        if (!shape.starts_with("macrodetails/")) continue;
        (shape.find("universal") == std::string::npos ? kinds : builds) += amount;
    }
    EXPECT_NEAR(kinds, 1.0, 1e-12);
    EXPECT_NEAR(builds, 1.0, 1e-12);
}

TEST(Face, UnknownShapeOfAHeadsFileOffersTheNearest) {
    const auto path = std::filesystem::temp_directory_path() / ("face_test_" + std::to_string(getpid()) + ".toml");
    std::ofstream(path)
        << "[face]\nage = 30\nsex = 0\nancestry = \"asian\"\n[shape]\n\"nose/nose-hump-morehumb\" = 0.5\n";
    SitterSettings settings;
    settings.head = LibraryHead{"test", path};
    const auto head = load_head(settings, test_library());
    std::filesystem::remove(path);
    ASSERT_FALSE(head);
    EXPECT_NE(head.problems().front().text.find("\"nose/nose-hump-morehump\""), std::string::npos);
}

}  // namespace
}  // namespace understudy
