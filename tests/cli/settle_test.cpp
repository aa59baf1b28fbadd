// A disputed claim from the command line.
#include <nlohmann/json.hpp>

#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

TEST(Settle, ListsTheClaimsWithTheirOpposites) {
    const Workplace place;
    const Outcome outcome = place.run({"settle", "--list"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    for (const char* name : {"feathering\n", "inverse-square\n", "dark-skin\n"}) {
        EXPECT_NE(outcome.out.find(name), std::string::npos) << outcome.out;
    }
    EXPECT_NE(outcome.out.find("  opposite: "), std::string::npos);
}

// An even disc against the inverse square, in numbers only: no picture unless it is asked for.
TEST(Settle, TellsNumbersOutcomeAndTheSceneFiles) {
    const Workplace place;
    const Outcome outcome = place.run({"settle", "inverse-square", "--json", "settled.json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("scenes/claims/inverse-square.toml with light.key.distance = 0.3 m"), std::string::npos)
        << outcome.out;
    EXPECT_NE(outcome.out.find("It depends"), std::string::npos) << outcome.out;
    EXPECT_EQ(place.names(), std::vector<std::string>{"settled.json"});
    const auto json = nlohmann::json::parse(contents(place.path("settled.json")));
    EXPECT_EQ(json["outcome"], "depends");
    EXPECT_EQ(json["cases"].size(), 6U);
    EXPECT_NEAR(json["cases"][1]["numbers"]["over_inverse_square_stops"], -0.32, 0.02);
}

TEST(Settle, MisuseWritesNothing) {
    const Workplace place;
    const std::vector<std::pair<std::vector<std::string>, std::string>> misuses{
        {{}, "--list"},
        {{"inverse-sqare"}, "did you mean \"inverse-square\"?"},
        {{"inverse-square", "--list"}, "--list"},
        {{"--list", "--json", "a.json"}, "no other option"},
        {{"inverse-square", "-o", "sheet.exr"}, ".png or .jpg"},
        {{"inverse-square", "-o", "no/such/sheet.png"}, "no folder"},
        {{"inverse-square", "--json", "no/such/a.json"}, "no folder"},
        {{"inverse-square", "--samples", "8"}, "-o FILE"},
        {{"inverse-square", "-o", "a.png", "--samples", "0"}, "samples"}};
    for (const auto& [arguments, words] : misuses) {
        std::vector<std::string> all{"settle"};
        all.insert(all.end(), arguments.begin(), arguments.end());
        const Outcome outcome = place.run(all);
        EXPECT_EQ(outcome.status, 2) << words << outcome.err;
        EXPECT_NE(outcome.err.find(words), std::string::npos) << words << '\n' << outcome.err;
        EXPECT_TRUE(outcome.out.empty()) << outcome.out;
    }
    EXPECT_TRUE(place.names().empty());
}

TEST(Settle, DrawsASheetWhenAskedTo) {
    const Workplace place;
    const Outcome outcome = place.run({"settle", "inverse-square", "-o", "sheet.png", "--samples", "1"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(place.names(), std::vector<std::string>{"sheet.png"});
    EXPECT_GT(seen(place.path("sheet.png")).width, 900);
}

}  // namespace
}  // namespace understudy
