#include "report/json_file.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "report/sample_report.h"

namespace understudy {
namespace {

namespace fs = std::filesystem;

class JsonFile : public testing::Test {
  protected:
    void SetUp() override {
        const std::string name = testing::UnitTest::GetInstance()->current_test_info()->name();
        folder_ = fs::temp_directory_path() / ("understudy-report-" + name + "-" + std::to_string(getpid()));
        fs::create_directory(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::size_t file_count() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }

    fs::path folder_;
};

std::string contents(const fs::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

TEST_F(JsonFile, WritesTheReportAndNothingElse) {
    ASSERT_TRUE(write_report_file(folder_ / "report.json", filled_report()));
    EXPECT_EQ(nlohmann::json::parse(contents(folder_ / "report.json"))["title"], "Side strip");
    EXPECT_EQ(file_count(), 1U);
}

TEST_F(JsonFile, ReplacesAnOldFile) {
    ASSERT_TRUE(write_whole_file(folder_ / "a", "old and long"));
    ASSERT_TRUE(write_whole_file(folder_ / "a", "new"));
    EXPECT_EQ(contents(folder_ / "a"), "new");
    EXPECT_EQ(file_count(), 1U);
}

TEST_F(JsonFile, LeavesSomebodyElsesPartFileAlone) {
    std::ofstream(folder_ / "a.part0") << "not ours";
    ASSERT_TRUE(write_whole_file(folder_ / "a", "ours"));
    EXPECT_EQ(contents(folder_ / "a.part0"), "not ours");
    EXPECT_EQ(contents(folder_ / "a"), "ours");
    EXPECT_EQ(file_count(), 2U);
}

TEST_F(JsonFile, WritesThroughALinkAndKeepsIt) {
    std::ofstream(folder_ / "real") << "old";
    fs::create_symlink("real", folder_ / "link");
    ASSERT_TRUE(write_whole_file(folder_ / "link", "new"));
    EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
    EXPECT_EQ(contents(folder_ / "real"), "new");
}

TEST_F(JsonFile, AFolderIsWrongInput) {
    const auto written = write_whole_file(folder_, "text");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.problems().front().blame, Blame::kWrongInput);
    EXPECT_NE(written.problems().front().text.find(folder_.string()), std::string::npos);
    EXPECT_EQ(file_count(), 0U);
}

TEST_F(JsonFile, AMissingFolderIsNamedAndNothingIsMade) {
    const auto written = write_whole_file(folder_ / "missing" / "a.json", "text");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.problems().front().blame, Blame::kFailed);
    EXPECT_NE(written.problems().front().text.find("a.json"), std::string::npos);
    EXPECT_EQ(file_count(), 0U);
}

// The system's own device that is always full.
TEST_F(JsonFile, AFullDiskIsReported) {
    if (!fs::exists("/dev/full")) GTEST_SKIP() << "no /dev/full here";
    const auto written = write_whole_file("/dev/full", "text");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.problems().front().blame, Blame::kFailed);
    EXPECT_TRUE(fs::is_character_file("/dev/full"));
}

TEST_F(JsonFile, ADeviceIsWrittenToAndNotReplaced) {
    ASSERT_TRUE(write_whole_file("/dev/null", "text"));
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

}  // namespace
}  // namespace understudy
