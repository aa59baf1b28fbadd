// A prepared head that is damaged is told, with the file and what is wrong with it, and never read past its end.
#include <unistd.h>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>

#include "sitter/head_data.h"
#include "sitter/head_for_test.h"

namespace understudy {
namespace {

using Json = nlohmann::json;

class HeadDataTest : public testing::Test {
  protected:
    HeadDataTest() : folder_(std::filesystem::temp_directory_path() / ("head-data-" + std::to_string(getpid()))) {
        std::filesystem::copy(test_library().head_mesh, folder_);
    }
    ~HeadDataTest() override { std::filesystem::remove_all(folder_); }

    std::string problem_after(const std::function<void(Json&)>& damage) const {
        std::ifstream whole(test_library().head_mesh / "head.rig.json");
        Json rig = Json::parse(whole);
        damage(rig);
        std::ofstream(folder_ / "head.rig.json") << rig;
        const auto data = read_head_data(folder_);
        return data ? "" : data.problems().front().text;
    }

    void expect_told(const std::string& what, const std::function<void(Json&)>& damage) const {
        const std::string told = problem_after(damage);
        EXPECT_NE(told.find("head.rig.json"), std::string::npos) << told;
        EXPECT_NE(told.find(what), std::string::npos) << told;
    }

  private:
    std::filesystem::path folder_;
};

TEST_F(HeadDataTest, IsReadWhenWhole) {
    EXPECT_EQ(problem_after([](Json&) {}), "");
}

TEST_F(HeadDataTest, TellsWhatIsWrongWithItsMarks) {
    expect_told("lips_meet", [](Json& rig) { rig.erase("lips_meet"); });
    expect_told("not closed", [](Json& rig) { rig["lips_meet"] = {5}; });
    expect_told("not of the mesh", [](Json& rig) { rig["lips_meet"].erase(3); });
    expect_told("out of range", [](Json& rig) { rig["lips_meet"][0] = rig["weights"].size(); });
    expect_told("out of range", [](Json& rig) { rig["eyes"][1]["inner_margin"][2] = 999999; });
    expect_told("do not match", [](Json& rig) { rig["arches"][1]["root"].erase(0); });
    expect_told("different marks", [](Json& rig) { rig["arches"][0]["edge"][1] = rig["arches"][0]["edge"][0]; });
    expect_told("past the skin weights", [](Json& rig) { rig["weights"].erase(0); });
}

}  // namespace
}  // namespace understudy
