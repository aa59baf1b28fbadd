// What grows on the library's heads: on the skin and not in it, where anatomy has it, and the same every time.
#include <tbb/global_control.h>

#include <algorithm>
#include <cmath>

#include "setup/hair_names.h"
#include "sitter/eye.h"
#include "sitter/hair/grow_strands.h"
#include "sitter/head_for_test.h"

namespace understudy {
namespace {

constexpr StrandDetail kFew{0.0004};

// Hair is grown on a head that is posed once.
Sitter with_hair(const std::string& head, HairStyle style, BeardStyle beard = BeardStyle::kNone) {
    Sitter sitter = posed(head);
    sitter.growth->look.style = style;
    sitter.growth->look.fringe = false;
    sitter.growth->look.beard = beard;
    return sitter;
}

// With folds, loose, prominent and hooded lids: each takes a second to load.
constexpr std::array<const char*, 4> kLids = {"alder", "birch", "juniper", "linden"};

std::vector<const Strand*> of_kind(const Strands& strands, StrandKind kind) {
    std::vector<const Strand*> found;
    for (const Strand& strand : strands.strands) {
        if (strand.kind == kind) found.push_back(&strand);
    }
    return found;
}

double length_of(const Strands& strands, const Strand& strand) {
    double length = 0.0;
    for (std::uint32_t k = 1; k < strand.count; ++k) {
        length += static_cast<double>(
            glm::distance(strands.points[strand.first + k].place, strands.points[strand.first + k - 1].place));
    }
    return length;
}

// Over the tangent plane of the nearest vertex.
double over_skin(const SitterMesh& mesh, const Vec3& place) {
    std::size_t nearest = 0;
    float least = kInfinity;
    for (std::size_t v = 0; v < mesh.positions.size(); ++v) {
        const Vec3 gap = place - mesh.positions[v];
        const float far = glm::dot(gap, gap);
        if (far < least) {
            least = far;
            nearest = v;
        }
    }
    return static_cast<double>(glm::dot(place - mesh.positions[nearest], mesh.normals[nearest]));
}

TEST(Hair, GrowsInEveryStyleAndNowhereInTheSkull) {
    for (const auto& [name, style] : kHairStyles) {
        const Sitter sitter = with_hair("hazel", style);
        const Strands strands = grow_strands(sitter, kFew);
        const auto hairs = of_kind(strands, StrandKind::kHair);
        if (style == HairStyle::kNone) {
            EXPECT_TRUE(hairs.empty());
            continue;
        }
        ASSERT_GT(hairs.size(), 5000U) << name;
        int inside = 0;
        int asked = 0;
        for (std::size_t i = 0; i < hairs.size(); i += hairs.size() / 60) {
            // Past the root, which begins under the skin.
            for (const std::uint32_t k : {hairs[i]->count / 2U, hairs[i]->count - 1U}) {
                ++asked;
                if (over_skin(sitter.mesh, strands.points[hairs[i]->first + k].place) < -0.0015) ++inside;
            }
        }
        // The grid rounds the ears off: a few tips may touch them.
        EXPECT_LE(inside, asked / 50) << name;
    }
}

// Fewer and wider hairs, the same hair in sum: what they would cover laid side by side.
TEST(Hair, CoversAsMuchWidened) {
    const auto cover = [](const Strands& strands) {
        double sum = 0.0;
        for (const Strand* hair : of_kind(strands, StrandKind::kHair)) {
            sum += length_of(strands, *hair) * 2.0 * static_cast<double>(strands.points[hair->first].radius);
        }
        return sum;
    };
    const Sitter sitter = with_hair("hazel", HairStyle::kCropped);
    const double whole = cover(grow_strands(sitter, {}));
    EXPECT_NEAR(cover(grow_strands(sitter, {0.0002})) / whole, 1.0, 0.05);
    EXPECT_NEAR(cover(grow_strands(sitter, {0.0005})) / whole, 1.0, 0.05);
}

// 150 to 200 hairs a square centimetre of scalp, some 100 000 in all: common anatomy; common practice, no source.
TEST(Hair, HasAsManyAsAHead) {
    const auto hairs = of_kind(grow_strands(with_hair("hazel", HairStyle::kCropped), {}), StrandKind::kHair).size();
    EXPECT_GT(hairs, 75000U);
    EXPECT_LT(hairs, 150000U);
}

TEST(Hair, IsTheSameForAnyNumberOfThreads) {
    const Sitter sitter = with_hair("aspen", HairStyle::kCurly);
    const Strands many = grow_strands(sitter, kFew);
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    const Strands single = grow_strands(sitter, kFew);
    ASSERT_EQ(many.points.size(), single.points.size());
    for (std::size_t i = 0; i < many.points.size(); ++i) ASSERT_EQ(many.points[i].place, single.points[i].place);
}

// A share of hairs without pigment: Pearson's binomial error, three of them.
TEST(Hair, IsGreyByItsShare) {
    Sitter sitter = with_hair("aspen", HairStyle::kShaved);
    sitter.growth->look.grey = 0.3;
    const Strands strands = grow_strands(sitter, kFew);
    double grey = 0.0;
    const auto hairs = of_kind(strands, StrandKind::kHair);
    for (const Strand* hair : hairs) grey += strands.shades[hair->shade].eumelanin < 0.1 ? 1.0 : 0.0;
    const auto count = static_cast<double>(hairs.size());
    EXPECT_NEAR(grey / count, 0.3, 3.0 * std::sqrt(0.3 * 0.7 / count));
}

TEST(Hair, LeavesTheFaceFreeWithoutAFringe) {
    for (const HairStyle style : {HairStyle::kCropped, HairStyle::kSidePart, HairStyle::kBob, HairStyle::kTiedBack}) {
        const Sitter sitter = with_hair("hazel", style);
        const Strands strands = grow_strands(sitter, kFew);
        const Double3 between = 0.5 * ((*sitter.eyes)[0].centre + (*sitter.eyes)[1].centre);
        std::size_t over = 0;
        const auto hairs = of_kind(strands, StrandKind::kHair);
        for (const Strand* hair : hairs) {
            for (std::uint32_t k = 0; k < hair->count; ++k) {
                const Double3 off = Double3(strands.points[hair->first + k].place) - between;
                if (std::abs(off.x) < 0.040 && std::abs(off.y) < 0.030 && off.z > 0.0) {
                    ++over;
                    break;
                }
            }
        }
        EXPECT_LT(over, hairs.size() / 200) << static_cast<int>(style);
    }
}

TEST(Beard, GrowsWhereABeardDoes) {
    for (const auto& [name, style] : kBeardStyles) {
        const Sitter sitter = with_hair("rowan", HairStyle::kNone, style);
        const Strands strands = grow_strands(sitter, kFew);
        const auto hairs = of_kind(strands, StrandKind::kBeard);
        if (style == BeardStyle::kNone) {
            EXPECT_TRUE(hairs.empty());
            continue;
        }
        EXPECT_GT(hairs.size(), 500U) << name;
        const double eyes = (*sitter.eyes)[0].centre.y;
        const double nose = sitter.landmarks->nose_tip.position.y;
        for (const Strand* hair : hairs) {
            const Vec3 root = strands.points[hair->first].place;
            EXPECT_LT(static_cast<double>(root.y), eyes + 0.02) << name;
            // Before the mouth nothing grows over the nose.
            if (std::abs(root.x) < 0.01F) {
                EXPECT_LT(static_cast<double>(root.y), nose) << name;
            }
        }
    }
}

// Lengths of upper lashes, 8 to 12 mm where they are longest, and 6 to 8 mm of lower ones: anatomy texts, from memory.
TEST(Lashes, GrowAtTheLidsEdges) {
    for (const char* name : kLids) {
        const Sitter sitter = with_hair(name, HairStyle::kNone);
        const Strands strands = grow_strands(sitter, kFew);
        const auto lashes = of_kind(strands, StrandKind::kLash);
        ASSERT_GT(lashes.size(), 300U) << name;
        double longest = 0.0;
        for (const Strand* lash : lashes) {
            const Vec3 root = strands.points[lash->first].place;
            const Vec3 tip = strands.points[lash->first + lash->count - 1].place;
            const auto& eye = (*sitter.eyes)[root.x < 0.0F ? 0 : 1];
            float nearest = kInfinity;
            for (const auto& line : sitter.growth->lash_lines) {
                for (const auto v : line) nearest = std::min(nearest, glm::distance(root, sitter.mesh.positions[v]));
            }
            EXPECT_LT(nearest, 0.0016F) << name;
            EXPECT_GT(glm::distance(Double3(tip), eye.centre), glm::distance(Double3(root), eye.centre)) << name;
            longest = std::max(longest, length_of(strands, *lash));
        }
        EXPECT_GT(longest, 0.008) << name;
        EXPECT_LT(longest, 0.0125) << name;
    }
}

// The upper lid goes down with the gaze, and its lashes with it.
TEST(Lashes, FollowTheLids) {
    SitterSettings settings = library_head("aspen");
    settings.hair.style = HairStyle::kNone;
    const auto head = loaded(settings);
    const auto lowest_root = [&](double up_deg) {
        settings.gaze = GazeAngles{0.0, up_deg};
        const Sitter sitter = pose_head(*head, settings, std::nullopt);
        const Strands strands = grow_strands(sitter, kFew);
        double sum = 0.0;
        int count = 0;
        for (const Strand* lash : of_kind(strands, StrandKind::kLash)) {
            const Vec3 root = strands.points[lash->first].place;
            if (static_cast<double>(root.y) < (*sitter.eyes)[0].centre.y) continue;
            sum += static_cast<double>(root.y);
            ++count;
        }
        return sum / count;
    };
    EXPECT_LT(lowest_root(-15.0), lowest_root(10.0) - 0.001);
}

// A brow lies over the eye from its inner corner past its outer one, on the skin.
TEST(Brows, LieOverTheEyes) {
    for (const char* name : kLids) {
        const Sitter sitter = with_hair(name, HairStyle::kNone);
        const Strands strands = grow_strands(sitter, kFew);
        const auto brows = of_kind(strands, StrandKind::kBrow);
        ASSERT_GT(brows.size(), 400U) << name;
        for (std::size_t i = 0; i < brows.size(); i += 40) {
            const Vec3 root = strands.points[brows[i]->first].place;
            const Double3 off = Double3(root) - (*sitter.eyes)[root.x < 0.0F ? 0 : 1].centre;
            EXPECT_GT(off.y, 0.012) << name;
            EXPECT_LT(off.y, 0.038) << name;
            EXPECT_LT(std::abs(off.x), 0.034) << name;
            EXPECT_NEAR(over_skin(sitter.mesh, root), 0.0, 0.001) << name;
        }
    }
}

TEST(Strands, AreNoneOnABallOrAMeshOfOnesOwn) {
    Sitter ball;
    ball.kind = Sitter::Kind::kBall;
    EXPECT_TRUE(grow_strands(ball, kFew).empty());
}

TEST(Fringe, IsRefusedWhereThereIsNoHairForIt) {
    SitterSettings settings = library_head("aspen");
    settings.hair.style = HairStyle::kShaved;
    settings.hair.fringe = true;
    const auto head = load_head(settings, test_library());
    ASSERT_FALSE(head);
    EXPECT_NE(head.problems().front().text.find("fringe"), std::string::npos);
}

}  // namespace
}  // namespace understudy
