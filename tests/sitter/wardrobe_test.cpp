// What a sitter wears: it has thickness, lies outside the skin, follows the bones, and glasses rest where they should.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "head_for_test.h"
#include "sitter/eye.h"
#include "sitter/wardrobe/glasses.h"
#include "sitter/wardrobe/hat.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {
namespace {

SitterSettings wearing(const std::string& head, Outfit outfit) {
    SitterSettings settings = library_head(head);
    settings.clothes.outfit = outfit;
    return settings;
}

Sitter dressed(const SitterSettings& settings) {
    const auto head = loaded(settings);
    return head ? pose_head(*head, settings, std::nullopt) : Sitter{};
}

constexpr std::array kOutfits = {Outfit::kCrewNeck, Outfit::kHighNeck, Outfit::kOpenCollar, Outfit::kJacket,
                                 Outfit::kBareShoulders};

// A flat sheet of points a centimetre apart.
Sheet square_sheet(std::size_t count) {
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
    Sheet sheet = grid_sheet(points, count, false);
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
    const Sheet round = cut(square_sheet(41), [radius](const SheetPoint& point) {
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

// Seen from outside, no skin shows through cloth: whatever lies beyond the first cloth from the front is not before it.
TEST(Clothes, HideTheSkinUnderThem) {
    for (const char* name : {"aspen", "birch", "juniper"}) {
        for (const Outfit outfit : kOutfits) {
            const Sitter sitter = dressed(wearing(name, outfit));
            int cloth = 0;
            for (int i = 0; i < 14; ++i) {
                for (int j = 0; j < 6; ++j) {
                    const Double3 origin(-0.13 + 0.02 * i, 0.94 + 0.015 * j, 1.0);
                    const auto hit = first_hit(sitter.mesh, origin, {0.0, 0.0, -1.0});
                    ASSERT_LT(hit.distance, 1e8);
                    cloth += sitter.mesh.zones[hit.triangle] > Zone::kNeck ? 1 : 0;
                }
            }
            // The shirt's opening and a strapless edge leave some skin; nothing else does so far down.
            EXPECT_GE(cloth, outfit == Outfit::kBareShoulders ? 50 : 82) << name << ' ' << static_cast<int>(outfit);
        }
    }
}

TEST(Clothes, ReachAsFarUpAsTheirNames) {
    const auto highest = [](Outfit outfit) {
        const Sitter sitter = dressed(wearing("aspen", outfit));
        float top = 0.0F;
        for (std::size_t t = 0; t < sitter.mesh.triangles.size(); ++t) {
            if (sitter.mesh.zones[t] <= Zone::kNeck) continue;
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
    for (const char* name : kLibraryHeads) {
        for (const GlassesFrame frame : {GlassesFrame::kRound, GlassesFrame::kSquare, GlassesFrame::kHalfRim}) {
            SitterSettings settings = library_head(name);
            settings.glasses = GlassesSettings{};
            settings.glasses->frame = frame;
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
                    EXPECT_GT(first_hit(sitter.mesh, at, {0.0, 0.0, 1.0}).distance, 1e8) << name;
                }
            }
        }
    }
}

// The whole frame turns with the skull.
TEST(Glasses, FollowTheHead) {
    SitterSettings settings = library_head("aspen");
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
    for (const char* name : kLibraryHeads) {
        const auto reach = [&](double brim) {
            SitterSettings settings = library_head(name);
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
        const double wider = static_cast<double>(reach(0.08) - reach(0.05));
        EXPECT_NEAR(wider, 0.03, 0.004) << name;
    }
}

}  // namespace
}  // namespace understudy
