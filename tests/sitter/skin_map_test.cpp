#include "sitter/skin_map.h"

#include "sitter/head_for_test.h"

namespace understudy {
namespace {

// A mean over the vertices of a zone.
template <class Value>
double mean_in(const SitterMesh& mesh, Zone zone, const Value& value) {
    double sum = 0.0;
    double count = 0.0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] != zone) continue;
        for (const auto v : mesh.triangles[t]) {
            sum += static_cast<double>(value(mesh.skin[v]));
            count += 1.0;
        }
    }
    return sum / count;
}

double blood_in(const SitterMesh& mesh, Zone zone) {
    return mean_in(mesh, zone, [](const SkinVertex& vertex) { return vertex.spot.blood; });
}

// Every library head gets its regions where they belong: what is redder and what is oilier on faces is common practice,
// no source.
TEST(SkinMap, FitsEveryHead) {
    for (const char* name : kLibraryHeads) {
        SCOPED_TRACE(name);
        const SitterMesh& mesh = posed(name).mesh;
        ASSERT_EQ(mesh.skin.size(), mesh.positions.size());
        const double forehead = blood_in(mesh, Zone::kForehead);
        EXPECT_GT(blood_in(mesh, Zone::kLips), 3.0 * forehead);
        for (const Zone redder : {Zone::kNose, Zone::kCheek, Zone::kEar})
            EXPECT_GT(blood_in(mesh, redder), 1.1 * forehead);
        const auto roughness = [](const SkinVertex& vertex) { return vertex.spot.roughness; };
        EXPECT_LT(mean_in(mesh, Zone::kNose, roughness), mean_in(mesh, Zone::kNeck, roughness));
        EXPECT_LT(mean_in(mesh, Zone::kLips, roughness), mean_in(mesh, Zone::kCheek, roughness));
        for (const SkinVertex& vertex : mesh.skin) {
            ASSERT_TRUE(vertex.spot.melanin > 0.0F && vertex.spot.melanin <= 0.5F);
            ASSERT_TRUE(vertex.spot.blood > 0.0F && vertex.spot.blood <= 0.2F);
            ASSERT_TRUE(vertex.spot.roughness >= kLeastSkinRoughness && vertex.spot.roughness <= kMostSkinRoughness);
            ASSERT_TRUE(vertex.spot.coat > 0.0F && vertex.spot.coat <= 1.0F);
        }
    }
}

// A zone's border runs along edges of the mesh; the lips' red must not show it.
TEST(SkinMap, HasNoEdgesRoundTheLips) {
    const SitterMesh& mesh = posed("aspen").mesh;
    double steepest = 0.0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (std::size_t k = 0; k < 3; ++k) {
            const SkinVertex& a = mesh.skin[mesh.triangles[t][k]];
            const SkinVertex& b = mesh.skin[mesh.triangles[t][(k + 1) % 3]];
            steepest = std::max(steepest, static_cast<double>(std::abs(a.lip - b.lip)));
        }
    }
    EXPECT_LT(steepest, 0.5);
    EXPECT_GT(mean_in(mesh, Zone::kLips, [](const SkinVertex& vertex) { return vertex.lip; }), 0.7);
}

TEST(SkinMap, ShinesAsItIsTold) {
    const SkinCast cast;
    const SkinSpot powdered = spot_of(cast, 0.02, 0.02, 0.0);
    const SkinSpot clean = spot_of(cast, 0.02, 0.02, 0.5);
    const SkinSpot glossy = spot_of(cast, 0.02, 0.02, 1.0);
    EXPECT_GT(powdered.roughness, clean.roughness);
    EXPECT_GT(clean.roughness, glossy.roughness);
    EXPECT_LT(powdered.coat, clean.coat);
    // Clean skin is a boundary of index 1.4 with the roughness measured on faces.
    EXPECT_FLOAT_EQ(clean.roughness, kSkinRoughness);
    EXPECT_FLOAT_EQ(clean.coat, 1.0F);
    EXPECT_FLOAT_EQ(glossy.melanin, 0.02F);
}

}  // namespace
}  // namespace understudy
