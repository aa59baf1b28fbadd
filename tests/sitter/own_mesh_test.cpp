#include <unistd.h>
#include <chrono>
#include <cmath>
#include <fstream>

#include "sitter/head_for_test.h"

namespace understudy {
namespace {

class OwnMeshTest : public testing::Test {
  protected:
    void SetUp() override {
        folder_ = std::filesystem::temp_directory_path() / ("own_mesh_test_" + std::to_string(getpid()));
        std::filesystem::create_directories(folder_);
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    std::filesystem::path write(const std::string& name, const std::string& text) const {
        std::ofstream(folder_ / name) << text;
        return folder_ / name;
    }

    static Expected<HeadPointer> load(const OwnMesh& own) {
        SitterSettings settings;
        settings.head = own;
        return load_head(settings, test_library());
    }
    static Expected<HeadPointer> load_path(const std::filesystem::path& path) {
        OwnMesh own;
        own.path = path;
        return load(own);
    }

    static void expect_problem(const std::filesystem::path& path, const std::string& place, const std::string& words) {
        const auto head = load_path(path);
        ASSERT_FALSE(head);
        const auto& problem = head.problems().front();
        EXPECT_EQ(problem.blame, Blame::kWrongInput);
        EXPECT_TRUE(problem.text.starts_with(path.string() + place)) << problem.text;
        EXPECT_NE(problem.text.find(words), std::string::npos) << problem.text;
    }

    std::filesystem::path folder_;
};

constexpr const char* kTetrahedron = "v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n";

TEST_F(OwnMeshTest, SoundMeshIsPlacedByItsEyes) {
    OwnMesh own;
    own.path = write("sound.obj", kTetrahedron);
    own.scale_m = 0.1;
    own.up = {0.0, 0.0, 1.0};
    own.front = {0.0, -1.0, 0.0};
    own.left_eye = Double3(0.8, 0.0, 0.5);
    own.right_eye = Double3(0.2, 0.0, 0.5);
    const auto head = load(own);
    ASSERT_TRUE(head) << head.problems().front().text;
    SitterSettings settings;
    settings.gaze = GazeAngles{};
    const Sitter sitter = pose_head(**head, settings, std::nullopt);
    ASSERT_TRUE(sitter.eyes);
    EXPECT_EQ(sitter.mesh.triangles.size(), 4U);
    EXPECT_NEAR(sitter.eyes->at(0).centre.x, -0.03, 1e-9);
    EXPECT_NEAR(sitter.eyes->at(1).centre.x, 0.03, 1e-9);
    EXPECT_NEAR(sitter.eyes->at(0).centre.y, 1.25, 1e-9);
    EXPECT_FALSE(sitter.landmarks);
}

TEST_F(OwnMeshTest, MissingFile) { expect_problem(folder_ / "none.obj", ": ", "no such file"); }
TEST_F(OwnMeshTest, Folder) { expect_problem(folder_, ": ", "a folder"); }
TEST_F(OwnMeshTest, Empty) { expect_problem(write("a.obj", ""), ": ", "empty"); }
TEST_F(OwnMeshTest, NoFaces) { expect_problem(write("a.obj", "v 0 0 0\n"), ": ", "no faces"); }
TEST_F(OwnMeshTest, CutShort) { expect_problem(write("a.obj", "v 0 0 0\nv 1 0 0\nv 0 1"), ":3: ", "cut short"); }
TEST_F(OwnMeshTest, NotANumber) { expect_problem(write("a.obj", "v 0 0 0\nv nan 0 0\n"), ":2: ", "nan"); }
TEST_F(OwnMeshTest, NotFinite) { expect_problem(write("a.obj", "v 0 0 inf\n"), ":1: ", "inf"); }
TEST_F(OwnMeshTest, TooSmallAFace) { expect_problem(write("a.obj", "v 0 0 0\nf 1 1\n"), ":2: ", "corners"); }
TEST_F(OwnMeshTest, OutOfRange) {
    expect_problem(write("a.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n"), ":4: ", "vertex 4 does not exist");
    expect_problem(write("b.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -4\n"), ":4: ", "vertex -4 does not exist");
    expect_problem(write("c.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 0\n"), ":4: ", "vertex 0 does not exist");
}
TEST_F(OwnMeshTest, Degenerate) {
    expect_problem(write("a.obj", "v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n"), ": ", "without area");
}
TEST_F(OwnMeshTest, EyesOnTopOfEachOther) {
    OwnMesh own;
    own.path = write("a.obj", kTetrahedron);
    own.left_eye = own.right_eye = Double3(0.5);
    EXPECT_FALSE(load(own));
}

TEST_F(OwnMeshTest, TenMillionFacesAreRefusedQuickly) {
    const auto path = folder_ / "huge.obj";
    {
        std::ofstream file(path, std::ios::binary);
        file << "v 0 0 0\nv 1 0 0\nv 0 1 0\n";
        std::string block;
        for (int i = 0; i < 10'000; ++i) block += "f 1 2 3\n";
        for (int i = 0; i < 1'000; ++i) file << block;
    }
    const auto begin = std::chrono::steady_clock::now();
    expect_problem(path, ":", "too large");
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(3));
}

}  // namespace
}  // namespace understudy
