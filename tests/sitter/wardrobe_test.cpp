// What a sitter wears: it has thickness, lies outside the skin, follows the bones, and glasses rest where they should.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "head_for_test.h"
#include "sitter/eye.h"
#include "sitter/wardrobe/glasses.h"
#include "sitter/wardrobe/hat.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {
namespace {

// Without hair, which takes longest.
SitterSettings bald(const std::string& head) {
    SitterSettings settings = library_head(head);
    settings.hair.style = HairStyle::kNone;
    settings.hair.fringe = false;
    settings.hair.beard = BeardStyle::kNone;
    return settings;
}

SitterSettings wearing(const std::string& head, Outfit outfit) {
    SitterSettings settings = bald(head);
    settings.clothes.outfit = outfit;
    return settings;
}

Sitter dressed(const SitterSettings& settings) {
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

const Sitter& aspen_in(Outfit outfit) {
    static std::map<Outfit, Sitter> sitters;
    const auto found = sitters.find(outfit);
    return found != sitters.end() ? found->second : sitters[outfit] = dressed(wearing("aspen", outfit));
}

constexpr std::array kOutfits = {Outfit::kCrewNeck, Outfit::kHighNeck, Outfit::kOpenCollar, Outfit::kJacket,
                                 Outfit::kBareShoulders};

// A flat sheet of points a centimetre apart.
ClothSheet square_sheet(std::size_t count) {
    std::vector<SheetPoint> points;
    for (std::size_t r = 0; r < count; ++r) {
        for (std::size_t c = 0; c < count; ++c) {
            SheetPoint point;
            point.place = {0.01 * static_cast<double>(c), 0.01 * static_cast<double>(r), 0.0};
            point.skin = point.place;
            point.weights[kTrunk] = 1.0F;
            points.push_back(point);
        }
    }
    ClothSheet sheet = grid_sheet(points, count, false);
    for (SheetPoint& point : sheet.points) {
        if (point.normal.z < 0.0) ADD_FAILURE() << "the sheet faces away";
    }
    return sheet;
}

double volume(const SkinnedMesh& mesh) {
    double sum = 0.0;
    for (const auto& t : mesh.triangles) {
        sum += glm::dot(mesh.positions[t[0]], glm::cross(mesh.positions[t[1]], mesh.positions[t[2]])) / 6.0;
    }
    return sum;
}

// Euler: a closed surface has every edge between two triangles, once in each direction.
void expect_closed(const SkinnedMesh& mesh) {
    std::map<std::pair<std::uint32_t, std::uint32_t>, int> edges;
    for (const auto& t : mesh.triangles) {
        for (std::size_t k = 0; k < 3; ++k) ++edges[{t.at(k), t.at((k + 1) % 3)}];
    }
    for (const auto& [edge, count] : edges) {
        ASSERT_EQ(count, 1);
        ASSERT_EQ(edges.count({edge.second, edge.first}), 1U);
    }
}

// A square of 10 cm and 2 mm is 20 cm³, and its rounded edge half a rod of 1 mm round it: π/2 · 1 mm² · 40 cm. The
// rounding is a polygon of six sides: a little less.
TEST(Sheet, IsSewnToABodyWithThickness) {
    SkinnedMesh mesh;
    sew(mesh, square_sheet(11), 0.002, Zone::kTop, 1.0);
    expect_closed(mesh);
    const double expected = 0.1 * 0.1 * 0.002 + 0.5 * kPiDouble * 1e-6 * 0.4;
    EXPECT_NEAR(volume(mesh), expected, 0.004 * expected);
}

TEST(Sheet, IsCutAlongItsOutline) {
    const double radius = 0.03;
    const ClothSheet round = cut(square_sheet(41), [radius](const SheetPoint& point) {
        return glm::distance(point.skin, Double3(0.2, 0.2, 0.0)) - radius;
    });
    double area = 0.0;
    for (const auto& t : round.triangles) {
        const Double3& a = round.points[t[0]].place;
        area += 0.5 * glm::length(glm::cross(round.points[t[1]].place - a, round.points[t[2]].place - a));
    }
    // A circle's area, less what straight cuts of at most 14 mm leave out: 1 − (14 / 30)² / 6 at worst.
    EXPECT_LT(area, kPiDouble * radius * radius);
    EXPECT_GT(area, 0.96 * kPiDouble * radius * radius);
    for (const SheetPoint& point : round.points) {
        EXPECT_LT(glm::distance(point.place, Double3(0.2, 0.2, 0.0)), radius + 1e-4);
    }
}

// A sitter seen from the front: what lies one behind the other.
class FromTheFront {
  public:
    explicit FromTheFront(const SitterMesh& mesh) : mesh_(mesh), cells_(static_cast<std::size_t>(kAcross) * kAcross) {
        for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
            Vec3 low(1e9F);
            Vec3 high(-1e9F);
            for (const auto v : mesh.triangles[t]) {
                low = glm::min(low, mesh.positions[v]);
                high = glm::max(high, mesh.positions[v]);
            }
            for (int column = cell(low.x + 0.5F); column <= cell(high.x + 0.5F); ++column) {
                for (int row = cell(low.y - 0.6F); row <= cell(high.y - 0.6F); ++row) at(column, row).push_back(t);
            }
        }
    }

    struct Met {
        double z;
        Zone zone;
    };
    // Foremost first. Barycentric coordinates in the picture's plane.
    std::vector<Met> along(double x, double y) {
        std::vector<Met> met;
        for (const auto t : at(cell(static_cast<float>(x) + 0.5F), cell(static_cast<float>(y) - 0.6F))) {
            const auto& k = mesh_.triangles[t];
            const Double3 a(mesh_.positions[k[0]]);
            const Double3 ab = Double3(mesh_.positions[k[1]]) - a;
            const Double3 ac = Double3(mesh_.positions[k[2]]) - a;
            const double area = ab.x * ac.y - ab.y * ac.x;
            const double u = ((x - a.x) * ac.y - (y - a.y) * ac.x) / area;
            const double v = (ab.x * (y - a.y) - ab.y * (x - a.x)) / area;
            if (u >= 0.0 && v >= 0.0 && u + v <= 1.0) met.push_back({a.z + u * ab.z + v * ac.z, mesh_.zones[t]});
        }
        std::sort(met.begin(), met.end(), [](const Met& one, const Met& other) { return one.z > other.z; });
        return met;
    }

  private:
    static constexpr int kAcross = 128;
    static int cell(float metres) { return std::clamp(static_cast<int>(metres * kAcross), 0, kAcross - 1); }
    std::vector<std::uint32_t>& at(int column, int row) {
        const int place = row * kAcross + column;
        return cells_.at(static_cast<std::size_t>(place));
    }

    const SitterMesh& mesh_;
    std::vector<std::vector<std::uint32_t>> cells_;
};

// From a hand's breadth under the base of the neck all outfits cover the trunk. Nowhere does skin stand out of cloth:
// whoever goes in through skin does not meet cloth before he comes out of it, unless the neck's opening is deep.
void expect_hidden(const Sitter& sitter, const std::string& name) {
    constexpr double kDeep = 0.02;
    FromTheFront front(sitter.mesh);
    const double neck = sitter.straight_neck.y + SitterSettings{}.eye_height_m;
    for (double y = neck - 0.27; y < neck + 0.02; y += 0.0041) {
        for (double x = -0.20; x < 0.20; x += 0.0053) {
            const auto met = front.along(x, y);
            if (y < neck - 0.2 && std::abs(x) < 0.08) {
                ASSERT_TRUE(!met.empty() && is_worn(met[0].zone)) << name << " at " << x << ' ' << y;
            }
            if (met.size() < 2 || met[0].zone > Zone::kNeck || !is_worn(met[1].zone)) continue;
            EXPECT_GT(met[0].z - met[1].z, kDeep) << name << " at " << x << ' ' << y;
        }
    }
}

TEST(Clothes, HideTheSkinUnderThem) {
    for (const Outfit outfit : kOutfits) {
        expect_hidden(aspen_in(outfit), "aspen " + std::to_string(static_cast<int>(outfit)));
    }
    expect_hidden(dressed(wearing("rowan", Outfit::kJacket)), "rowan");
}

TEST(Clothes, ReachAsFarUpAsTheirNames) {
    const auto highest = [](Outfit outfit) {
        const Sitter& sitter = aspen_in(outfit);
        float top = 0.0F;
        for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
            if (!is_worn(sitter.mesh.zones[t])) continue;
            for (const auto v : sitter.mesh.triangles[t]) top = std::max(top, sitter.mesh.positions[v].y);
        }
        return top;
    };
    EXPECT_GT(highest(Outfit::kHighNeck), highest(Outfit::kCrewNeck) + 0.02F);
    EXPECT_LT(highest(Outfit::kBareShoulders), highest(Outfit::kCrewNeck) - 0.08F);
    EXPECT_GT(highest(Outfit::kOpenCollar), highest(Outfit::kCrewNeck));
}

Double3 cornea_apex(const Eye& eye) { return eye.centre + kApexAhead * eye.axis; }

// Opticians set lenses 12 to 14 mm from the cornea; noses and brows push them out to some 20 (common practice, no
// source). No part of a frame may stand in the skin.
TEST(Glasses, StandBeforeTheEyesAndOutsideTheSkin) {
    constexpr std::array kFrames = {GlassesFrame::kRound, GlassesFrame::kSquare, GlassesFrame::kHalfRim};
    for (std::size_t n = 1; n < kLibraryHeads.size(); n += 2) {
        const char* name = kLibraryHeads.at(n);
        SitterSettings settings = bald(name);
        settings.glasses = GlassesSettings{};
        settings.glasses->frame = kFrames.at(n % kFrames.size());
        const Sitter sitter = dressed(settings);
        ASSERT_EQ(sitter.lenses.size(), 2U);
        for (std::size_t e = 0; e < 2; ++e) {
            const Double3 apex = cornea_apex(sitter.eyes->at(e));
            const SpectacleLens& lens = sitter.lenses[e];
            const Double3 away = apex - lens.centre;
            const double x = glm::dot(away, lens.right);
            const double y = glm::dot(away, lens.up);
            EXPECT_LT(std::abs(x), 0.5 * lens.half_width_m) << name << ": looks past the lens's middle";
            const double distance = glm::distance(lens_point(lens, x, y), apex);
            EXPECT_GT(distance, 0.010) << name;
            EXPECT_LT(distance, 0.024) << name;
            // Straight ahead of each place of the lens is air, straight behind it the face.
            for (const double along : {-0.9, 0.0, 0.9}) {
                const Double3 at = lens_point(lens, along * lens.half_width_m, 0.0);
                EXPECT_GT(first_hit(sitter.mesh, at, {0.0, 0.0, 1.0}).distance, 1e8)
                    << name << ' ' << e << ' ' << along;
            }
        }
    }
}

// The whole frame turns with the skull.
TEST(Glasses, FollowTheHead) {
    SitterSettings settings = bald("aspen");
    settings.glasses = GlassesSettings{};
    const auto head = loaded(settings);
    ASSERT_TRUE(head);
    const Sitter straight = pose_head(*head, settings, std::nullopt);
    settings.turn_deg = 30.0;
    const Sitter turned = pose_head(*head, settings, std::nullopt);
    const Double3& axis = straight.lenses[0].axis;
    const double turn = radians(30.0);
    EXPECT_NEAR(turned.lenses[0].axis.x, std::cos(turn) * axis.x + std::sin(turn) * axis.z, 1e-9);
    EXPECT_NEAR(turned.lenses[0].axis.y, axis.y, 1e-9);
    EXPECT_NEAR(glm::distance(cornea_apex(straight.eyes->at(0)), straight.lenses[0].centre),
                glm::distance(cornea_apex(turned.eyes->at(0)), turned.lenses[0].centre), 0.02);
}

// The brim's front edge is its width before the crown, and the hat is larger than the head under it.
TEST(Hat, HasItsBrimAndHoldsTheHead) {
    for (const char* name : {"aspen", "rowan"}) {
        const auto reach = [&](double brim) {
            SitterSettings settings = bald(name);
            settings.hat = HatSettings{};
            settings.hat->brim_m = brim;
            const Sitter sitter = dressed(settings);
            float far = -1.0F;
            float top_hat = 0.0F;
            float top_head = 0.0F;
            for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
                for (const auto v : sitter.mesh.triangles[t]) {
                    const Vec3& p = sitter.mesh.positions[v];
                    if (sitter.mesh.zones[t] == Zone::kHat) {
                        far = std::max(far, p.z);
                        top_hat = std::max(top_hat, p.y);
                    } else {
                        top_head = std::max(top_head, p.y);
                    }
                }
            }
            EXPECT_GT(top_hat, top_head + 0.005F) << name;
            return far;
        };
        const auto wider = static_cast<double>(reach(0.08) - reach(0.05));
        EXPECT_NEAR(wider, 0.03, 0.004) << name;
    }
}

}  // namespace
}  // namespace understudy
