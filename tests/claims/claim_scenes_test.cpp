// The experiments as they are written down: every claim complete, every scene file read and used.
#include <set>

#include <gtest/gtest.h>

#include "claims/claim_text.h"
#include "setup/kit_files.h"
#include "setup/read_setup.h"
#include "setup/vary_scene.h"
#include "stage/stage.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

const std::filesystem::path kScenes = std::filesystem::path(UNDERSTUDY_SOURCE_DIR) / "scenes/claims";

// Practice's list of what is disputed has fourteen rows.
TEST(Claims, AreFourteenEachWithItsOpposite) {
    std::set<std::string> names;
    for (const Claim& claim : all_claims()) {
        names.insert(claim.name);
        EXPECT_FALSE(claim.claim.empty()) << claim.name;
        EXPECT_FALSE(claim.opposite.empty()) << claim.name;
        EXPECT_FALSE(claim.experiment.empty()) << claim.name;
        EXPECT_GE(claim.cases.size(), 2U) << claim.name;
        EXPECT_GE(claim.quantities.size(), 2U) << claim.name;
        ASSERT_NE(claim.settle, nullptr) << claim.name;
        EXPECT_EQ(find_claim(claim.name), &claim);
        EXPECT_NE(claim_list_text().find(claim.name + "\n"), std::string::npos);
    }
    EXPECT_EQ(names.size(), 14U);
    EXPECT_EQ(find_claim("closer-contras"), nullptr);
}

TEST(Claims, QuantitiesHaveKeysOfTheirOwn) {
    for (const Claim& claim : all_claims()) {
        std::set<std::string> keys;
        for (const ToldQuantity& quantity : claim.quantities) {
            EXPECT_TRUE(keys.insert(quantity.key).second) << claim.name << ": " << quantity.key;
            EXPECT_TRUE(quantity.words != nullptr || (quantity.of != nullptr && quantity.told != nullptr))
                << claim.name << ": " << quantity.key;
        }
    }
}

// Every case can be read, and no two of one claim are the same setup said twice.
TEST(Claims, EveryCaseIsAScene) {
    for (const Claim& claim : all_claims()) {
        std::set<std::string> sources;
        for (const ClaimCase& one : claim.cases) {
            const auto setup = changed_scene(kScenes / (one.scene + ".toml"), one.changes, source_library());
            ASSERT_TRUE(setup) << claim.name << ", " << one.title << ": " << setup.problems().front().text;
            EXPECT_TRUE(sources.insert(case_source(one, kScenes)).second) << claim.name << ", " << one.title;
        }
    }
}

// A light before the lens would make a black picture of it.
TEST(Claims, NothingStandsBetweenTheLensAndTheFace) {
    for (const Claim& claim : all_claims()) {
        for (const ClaimCase& one : claim.cases) {
            const auto setup = value_of(changed_scene(kScenes / (one.scene + ".toml"), one.changes, source_library()));
            const Studio studio = value_of(place_studio(setup, source_library(), Growing::kNothing));
            const Stage stage(studio, Stage::With::kNobody);
            for (const Double3& point : {studio.points.face, studio.points.chest, studio.points.crown}) {
                const Double3 way = point - studio.camera.centre;
                const auto distance = static_cast<float>(glm::length(way));
                EXPECT_FALSE(stage.blocks({Vec3(studio.camera.centre), Vec3(glm::normalize(way)), 0.0F, distance}))
                    << claim.name << ", " << one.title;
            }
        }
    }
}

TEST(Claims, EverySceneFileIsUsedAndCanBeRenderedByItself) {
    std::set<std::string> used;
    for (const Claim& claim : all_claims()) {
        for (const ClaimCase& one : claim.cases) used.insert(one.scene);
    }
    std::set<std::string> there;
    for (const std::string& name : toml_names_in(kScenes)) {
        there.insert(name);
        const auto setup = read_setup(kScenes / (name + ".toml"), source_library());
        ASSERT_TRUE(setup) << setup.problems().front().text;
        EXPECT_TRUE(setup->text.starts_with("# Settles: ")) << name << " does not say what it is for";
        EXPECT_FALSE(setup->title.empty()) << name;
    }
    EXPECT_EQ(used, there);
}

std::string text(const Expected<Setup>& setup) { return setup ? "" : setup.problems().front().text; }

double distance(const Setup& setup) {
    return std::get<StandPlacement>(setup.lights.front().placement.where).distance_m;
}

TEST(ChangedScene, SaysWhatIsWrongWithAChange) {
    const auto file = kScenes / "closer.toml";
    EXPECT_NE(text(changed_scene(file, {"light.kye.distance=1"}, source_library())).find("did you mean \"key\"?"),
              std::string::npos);
    EXPECT_NE(text(changed_scene(file, {"light.key.distance=1 m,2 m"}, source_library())).find("gives 2 values"),
              std::string::npos);
    EXPECT_NE(text(changed_scene(file, {"light.key.distance"}, source_library())), "");
    EXPECT_NE(text(changed_scene(kScenes / "farther.toml", {}, source_library())), "");
}

TEST(ChangedScene, ChangesWhatItSaysAndNothingElse) {
    const auto as_it_is = value_of(changed_scene(kScenes / "closer.toml", {}, source_library()));
    const auto nearer =
        value_of(changed_scene(kScenes / "closer.toml", {"light.key.distance=0.6 m"}, source_library()));
    EXPECT_DOUBLE_EQ(distance(as_it_is), 1.0);
    EXPECT_DOUBLE_EQ(distance(nearer), 0.6);
    EXPECT_EQ(nearer.title, as_it_is.title);
}

}  // namespace
}  // namespace understudy
