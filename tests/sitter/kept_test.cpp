// Strands and clothes that are kept are those that would be made again, and a damaged file is no file.
#include <chrono>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <unistd.h>

#include "sitter/hair/kept_strands.h"
#include "sitter/head_for_test.h"
#include "sitter/kept.h"

namespace understudy {
namespace {

namespace fs = std::filesystem;

class Kept : public ::testing::Test {
  protected:
    void SetUp() override {
        folder_ = fs::temp_directory_path() / ("understudy-kept-" + std::to_string(::getpid()));
        fs::remove_all(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::vector<fs::path> files() const {
        std::vector<fs::path> all;
        for (const auto& entry : fs::directory_iterator(folder_)) all.push_back(entry.path());
        return all;
    }

    fs::path folder_;
};

void expect_same(const Strands& one, const Strands& other) {
    ASSERT_EQ(one.points.size(), other.points.size());
    ASSERT_EQ(one.strands.size(), other.strands.size());
    EXPECT_EQ(std::memcmp(one.points.data(), other.points.data(), one.points.size() * sizeof(StrandPoint)), 0);
    EXPECT_EQ(std::memcmp(one.strands.data(), other.strands.data(), one.strands.size() * sizeof(Strand)), 0);
    ASSERT_EQ(one.shades.size(), other.shades.size());
    for (std::size_t i = 0; i < one.shades.size(); ++i) {
        EXPECT_EQ(one.shades[i].eumelanin, other.shades[i].eumelanin);
        EXPECT_EQ(one.shades[i].pheomelanin, other.shades[i].pheomelanin);
    }
}

TEST_F(Kept, StrandsAreThoseThatWouldGrow) {
    const Sitter sitter = posed("rowan");
    const StrandDetail detail{0.0006};
    const Strands grown = grow_strands(sitter, detail);
    expect_same(kept_strands(sitter, detail, folder_), grown);
    ASSERT_EQ(files().size(), 1U);
    const auto written = fs::last_write_time(files()[0]);
    fs::last_write_time(files()[0], written - std::chrono::hours(1));
    expect_same(kept_strands(sitter, detail, folder_), grown);
    EXPECT_EQ(files().size(), 1U);
    // What is used is marked as used, and not what makes room.
    EXPECT_GT(fs::last_write_time(files()[0]), written - std::chrono::minutes(30));
}

TEST_F(Kept, OtherHairIsNeverTakenForIt) {
    Sitter sitter = posed("rowan");
    const StrandDetail detail{0.0006};
    kept_strands(sitter, detail, folder_);
    sitter.growth->look.colour.eumelanin += 0.1;
    expect_same(kept_strands(sitter, detail, folder_), grow_strands(sitter, detail));
    EXPECT_EQ(files().size(), 2U);
    sitter.mesh.positions[0].x += 1e-6F;
    kept_strands(sitter, detail, folder_);
    kept_strands(sitter, {0.0007}, folder_);
    EXPECT_EQ(files().size(), 4U);
}

TEST_F(Kept, DamagedFilesAreMadeAgain) {
    const Sitter sitter = posed("rowan");
    const StrandDetail detail{0.0006};
    const Strands grown = grow_strands(sitter, detail);
    kept_strands(sitter, detail, folder_);
    const fs::path file = files().at(0);
    const auto size = fs::file_size(file);
    fs::resize_file(file, size / 2);
    expect_same(kept_strands(sitter, detail, folder_), grown);
    EXPECT_EQ(fs::file_size(file), size);
    {
        std::fstream stream(file, std::ios::binary | std::ios::in | std::ios::out);
        stream.seekp(static_cast<std::streamoff>(size / 2));
        stream.put('x').put('y').put('z');
    }
    expect_same(kept_strands(sitter, detail, folder_), grown);
    fs::resize_file(file, 0);
    expect_same(kept_strands(sitter, detail, folder_), grown);
}

// A folder that cannot be written costs time and says so; the hair is the same.
TEST_F(Kept, SaysWhenItCannotKeep) {
    EXPECT_EQ(trouble_keeping(folder_), "");
    EXPECT_TRUE(files().empty());
    fs::remove_all(folder_);
    std::ofstream(folder_) << "a file where the folder should be";
    EXPECT_NE(trouble_keeping(folder_), "");
    const Sitter sitter = posed("rowan");
    expect_same(kept_strands(sitter, {0.0006}, folder_), grow_strands(sitter, {0.0006}));
    EXPECT_EQ(trouble_keeping(""), "");
}

TEST_F(Kept, AHeadIsTheSameInClothesThatWereKept) {
    Library library = test_library();
    library.cache = folder_;
    const SitterSettings settings = library_head("rowan");
    const Sitter& expected = posed("rowan");
    for (int round = 0; round < 2; ++round) {
        const auto head = load_head(settings, library);
        ASSERT_TRUE(head);
        const Sitter sitter = pose_head(**head, settings, std::nullopt);
        EXPECT_TRUE(sitter.mesh.positions == expected.mesh.positions) << round;
        EXPECT_TRUE(sitter.mesh.triangles == expected.mesh.triangles) << round;
        EXPECT_TRUE(sitter.mesh.zones == expected.mesh.zones) << round;
    }
}

}  // namespace
}  // namespace understudy
