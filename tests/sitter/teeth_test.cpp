// Teeth: hidden by closed lips, seen between parted ones, and of the sizes that the table has.
#include <cmath>

#include "sitter/eye_rays.h"
#include "stage/triangle_scene.h"

namespace understudy {
namespace {

Sitter with_mouth(const std::string& name, double open, double smile, const FaceSettings& face = {}) {
    auto settings = library_head(name);
    settings.expression.open_mouth = open;
    settings.expression.smile = smile;
    settings.face = face;
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

// Triangles of the teeth; the upper row comes first, and is as long as the lower one.
std::vector<std::uint32_t> teeth_of(const Sitter& sitter) {
    std::vector<std::uint32_t> teeth;
    for (std::uint32_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
        if (sitter.mesh.zones[t] == Zone::kTeeth) teeth.push_back(t);
    }
    return teeth;
}

// What parallel rays see of the mouth from the front, turned to the side by so many degrees; half a millimetre apart.
struct Seen {
    int upper_teeth = 0, lower_teeth = 0, lips = 0, lining = 0;
    int teeth() const { return upper_teeth + lower_teeth; }
};
Seen seen_from(const Sitter& sitter, double turned_deg) {
    const TriangleScene head = rays_at(sitter);
    const auto teeth = teeth_of(sitter);
    const std::uint32_t first_lower = teeth.at(teeth.size() / 2);
    const Double3 chin = sitter.landmarks->chin.position;
    const Double3 nose = sitter.landmarks->nose_tip.position;
    const Double3 mouth(nose.x, 0.5 * (chin.y + nose.y), nose.z - 0.02);
    const double turn = radians(turned_deg);
    const Vec3 way(Double3(-std::sin(turn), 0.0, -std::cos(turn)));
    const Double3 right(std::cos(turn), 0.0, -std::sin(turn));
    Seen seen;
    for (int column = -70; column <= 70; ++column) {
        for (int row = -50; row <= 50; ++row) {
            const Double3 place = mouth + 0.0005 * column * right + Double3(0.0, 0.0005 * row, 0.0);
            const auto met = head.meet({Vec3(place) - 0.2F * way, way});
            if (met.distance == kInfinity) continue;
            const Zone zone = sitter.mesh.zones[met.triangle];
            if (zone == Zone::kTeeth) ++(met.triangle < first_lower ? seen.upper_teeth : seen.lower_teeth);
            seen.lips += zone == Zone::kLips ? 1 : 0;
            seen.lining += zone == Zone::kMouth ? 1 : 0;
        }
    }
    return seen;
}

void expect_closed(const Sitter& sitter) {
    for (const double turned : {-60.0, -30.0, 0.0, 30.0, 60.0}) {
        const Seen seen = seen_from(sitter, turned);
        EXPECT_GT(seen.lips, 500) << turned;
        // The crack between them, 0.04 mm wide, lets one ray in fifty in.
        EXPECT_LT(seen.teeth(), seen.lips / 200) << turned;
        EXPECT_LT(seen.teeth() + seen.lining, seen.lips / 50) << turned;
    }
}

class TeethTest : public testing::TestWithParam<const char*> {};

TEST_P(TeethTest, ClosedLipsHideThem) { expect_closed(posed(GetParam())); }

INSTANTIATE_TEST_SUITE_P(Heads, TeethTest, testing::ValuesIn(kLibraryHeads),
                         [](const auto& name) { return std::string(name.param); });

TEST(TeethOfOthersTest, ClosedLipsHideThemInFacesOffTheLibrary) {
    FaceSettings thin;
    thin.of(FaceFeature::kLips) = -1.0;
    thin.of(FaceFeature::kJaw) = -1.0;
    thin.age_years = 90.0;
    expect_closed(with_mouth("aspen", 0.0, 0.0, thin));
    FaceSettings full;
    full.of(FaceFeature::kLips) = 1.0;
    full.of(FaceFeature::kJaw) = 1.0;
    full.age_years = 16.0;
    expect_closed(with_mouth("elm", 0.0, 0.0, full));
}

// Both rows, with the tongue or the mouth's lining between them.
TEST(TeethOfOthersTest, PartedLipsShowThem) {
    for (const char* name : {"alder", "elm", "willow"}) {
        const Seen seen = seen_from(with_mouth(name, 0.4, 0.5), 0.0);
        EXPECT_GT(seen.upper_teeth, 100) << name;
        EXPECT_GT(seen.lower_teeth, 50) << name;
        EXPECT_GT(seen.lining, 50) << name;
    }
}

// The package's heads are even on both sides, and so are their teeth.
TEST(TeethOfOthersTest, AreTheSameOnBothSides) {
    const Sitter& sitter = posed("alder");
    std::vector<Vec3> places;
    for (const auto t : teeth_of(sitter)) {
        for (const auto v : sitter.mesh.triangles[t]) places.push_back(sitter.mesh.positions[v]);
    }
    for (std::size_t i = 0; i < places.size(); i += 37) {
        const Vec3 wanted(-places[i].x, places[i].y, places[i].z);
        float nearest = kInfinity;
        for (const Vec3& place : places) nearest = std::min(nearest, glm::length(place - wanted));
        EXPECT_LT(nearest, 1e-4F);
    }
}

// The gaps of a row: where rays from the front go deepest, from one side to the other.
std::vector<double> gaps_of_upper_row(const Sitter& sitter) {
    std::vector<std::array<std::uint32_t, 3>> teeth;
    float low = kInfinity;
    float middle = -kInfinity;
    const auto numbers = teeth_of(sitter);
    for (std::size_t i = 0; i < numbers.size() / 2; ++i) {
        teeth.push_back(sitter.mesh.triangles[numbers[i]]);
        for (const auto v : teeth.back()) {
            low = std::min(low, sitter.mesh.positions[v].y);
            middle = std::max(middle, sitter.mesh.positions[v].z);
        }
    }
    const TriangleScene row(sitter.mesh.positions, teeth);
    constexpr double kStep = 0.0001;
    const auto depth = [&](int i) {
        const Vec3 origin(static_cast<float>(kStep * i), low + 0.0035F, middle + 0.1F);
        return row.distance({origin, {0.0F, 0.0F, -1.0F}});
    };
    std::vector<double> gaps;
    for (int i = -160; i <= 160; ++i) {
        bool deepest = true;
        for (int k = -12; k <= 12; ++k) deepest = deepest && depth(i) >= depth(i + k);
        if (deepest && (gaps.empty() || kStep * i - gaps.back() > 0.002)) gaps.push_back(kStep * i);
    }
    return gaps;
}

// Upper central incisors are 8.5 mm wide (table of average teeth, Wheeler, from memory); those of people differ by some
// 0.6 mm, and heads of the library are of every size.
TEST(ToothSizeTest, UpperIncisorsAreAsWideAsTheTableHasThem) {
    double sum = 0.0;
    constexpr std::array kSome = {"alder", "elm", "hazel", "yew"};
    for (const char* name : kSome) {
        const auto gaps = gaps_of_upper_row(posed(name));
        const auto middle =
            std::min_element(gaps.begin(), gaps.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
        ASSERT_TRUE(middle > gaps.begin() && middle + 1 < gaps.end()) << name;
        EXPECT_NEAR(*middle, 0.0, 0.0003) << name;
        for (const double width : {*(middle + 1) - *middle, *middle - *(middle - 1)}) {
            EXPECT_NEAR(width, 0.0085, 0.0015) << name;
            sum += width / (2.0 * kSome.size());
        }
    }
    EXPECT_NEAR(sum, 0.0085, 0.0006);
}

}  // namespace
}  // namespace understudy
