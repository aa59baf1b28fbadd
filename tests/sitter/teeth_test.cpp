// Teeth: hidden by closed lips, seen between parted ones, and of the sizes that the table has.
#include <cmath>

#include "sitter/eye_rays.h"
#include "stage/triangle_scene.h"

namespace understudy {
namespace {

Sitter with_mouth(const std::string& name, double open, double smile) {
    auto settings = library_head(name);
    settings.expression.open_mouth = open;
    settings.expression.smile = smile;
    settings.hair.style = HairStyle::kNone;
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

// What parallel rays see of the mouth from the front, turned to the side by so many degrees; half a millimetre apart.
struct Seen {
    int teeth = 0, lips = 0, lining = 0;
};
Seen seen_from(const Sitter& sitter, double turned_deg) {
    const TriangleScene head = rays_at(sitter);
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
            seen.teeth += zone == Zone::kTeeth ? 1 : 0;
            seen.lips += zone == Zone::kLips ? 1 : 0;
            seen.lining += zone == Zone::kMouth ? 1 : 0;
        }
    }
    return seen;
}

class TeethTest : public testing::TestWithParam<const char*> {};

TEST_P(TeethTest, ClosedLipsHideThem) {
    const Sitter sitter = with_mouth(GetParam(), 0.0, 0.0);
    for (const double turned : {-60.0, -30.0, 0.0, 30.0, 60.0}) {
        const Seen seen = seen_from(sitter, turned);
        EXPECT_GT(seen.lips, 500) << turned;
        // The crack between them, 0.04 mm wide, lets one ray in fifty in.
        EXPECT_LT(seen.teeth, seen.lips / 200) << turned;
        EXPECT_LT(seen.teeth + seen.lining, seen.lips / 50) << turned;
    }
}

// A smile that parts the lips shows both rows, and never more than lies between the lips.
TEST_P(TeethTest, PartedLipsShowThem) {
    const Seen seen = seen_from(with_mouth(GetParam(), 0.4, 0.5), 0.0);
    EXPECT_GT(seen.teeth, 150);
    EXPECT_GT(seen.lining, 50);
    EXPECT_LT(seen.teeth + seen.lining, 2 * seen.lips);
}

INSTANTIATE_TEST_SUITE_P(Heads, TeethTest, testing::ValuesIn(kLibraryHeads),
                         [](const auto& name) { return std::string(name.param); });

// The gaps of a row: where rays from the front go deepest, from one side to the other.
std::vector<double> gaps_of_upper_row(const Sitter& sitter) {
    std::vector<std::array<std::uint32_t, 3>> teeth;
    float low = kInfinity;
    float middle = -kInfinity;
    for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
        if (sitter.mesh.zones[t] == Zone::kTeeth) teeth.push_back(sitter.mesh.triangles[t]);
    }
    // The upper row comes first.
    for (std::size_t t = 0; t < teeth.size() / 2; ++t) {
        for (const auto v : teeth[t]) {
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
    for (const char* name : kLibraryHeads) {
        const auto gaps = gaps_of_upper_row(posed(name));
        const auto middle =
            std::min_element(gaps.begin(), gaps.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
        ASSERT_TRUE(middle > gaps.begin() && middle + 1 < gaps.end()) << name;
        EXPECT_NEAR(*middle, 0.0, 0.0003) << name;
        for (const double width : {*(middle + 1) - *middle, *middle - *(middle - 1)}) {
            EXPECT_NEAR(width, 0.0085, 0.0015) << name;
            sum += width / 24.0;
        }
    }
    EXPECT_NEAR(sum, 0.0085, 0.0006);
}

}  // namespace
}  // namespace understudy
