// A modifier's parts one by one: sheets, grid cells, and the files that keep what was traced.
#include <filesystem>
#include <fstream>
#include <iterator>

#include <gtest/gtest.h>
#include <unistd.h>

#include "interior_cases.h"
#include "kit/built_modifier.h"
#include "kit/emission_cache.h"
#include "kit/grid_cells.h"
#include "kit/sheet.h"
#include "kit/walk_numbers.h"
#include "scatter/microfacet.h"

namespace understudy {
namespace {

// 2 · atan(width / depth), by arithmetic: 6.35 mm by 35 mm 20.57°, by 18 mm 38.86°.
TEST(GridCells, CutOffFollowsFromTheCells) {
    EXPECT_NEAR(degrees(grid_cut_off({Grid::Cells::kRound, 0.00635, 0.035})), 20.57, 0.005);
    EXPECT_NEAR(degrees(grid_cut_off({Grid::Cells::kRound, 0.00635, 0.018})), 38.86, 0.005);
}

// Against straight lines through random places of a cell.
TEST(GridCells, PassTheShareOfLinesThatMissTheWalls) {
    WalkNumbers random(1);
    for (const auto cells : {Grid::Cells::kRound, Grid::Cells::kSquare}) {
        const Grid grid{cells, 0.02, 0.05};
        const auto inside = [&](float x, float y) {
            return cells == Grid::Cells::kSquare ? std::abs(x) < 0.01F && std::abs(y) < 0.01F
                                                 : x * x + y * y < 0.01F * 0.01F;
        };
        for (const Vec3& aim : {Vec3(0.0F, 0.0F, 1.0F), Vec3(0.1F, 0.0F, 1.0F), Vec3(0.15F, 0.2F, 1.0F)}) {
            int passed = 0;
            int all = 0;
            for (int i = 0; i < 40000; ++i) {
                const float x = 0.02F * (random.next() - 0.5F);
                const float y = 0.02F * (random.next() - 0.5F);
                if (!inside(x, y)) continue;
                ++all;
                if (inside(x + 0.05F * aim.x, y + 0.05F * aim.y)) ++passed;
            }
            const double share = static_cast<double>(passed) / all;
            const double error = std::sqrt(std::max(1e-6, share * (1.0 - share)) / all);
            EXPECT_NEAR(static_cast<double>(grid_passes(grid, glm::normalize(aim))), share, 4.0 * error);
        }
    }
}

std::vector<Sheet> sheets() {
    return {Sheet::wall({false, 0.9, 0.3}), Sheet::wall({true, 0.88, 0.25}), Sheet::cloth(DiffusingCloth{})};
}

Vec3 random_direction(WalkNumbers& random, bool through) {
    const float u = random.next();
    const float v = random.next();
    const Vec3 w = sample_cosine(u, v);
    return through ? Vec3(w.x, w.y, -w.z) : w;
}

// Light may be followed either way.
TEST(Sheet, IsReciprocal) {
    WalkNumbers random(2);
    for (const Sheet& sheet : sheets()) {
        for (int i = 0; i < 200; ++i) {
            const Vec3 wo = random_direction(random, false);
            const Vec3 back = random_direction(random, false);
            EXPECT_NEAR(sheet.value(wo, back) / sheet.value(back, wo), 1.0F, 1e-3F);
            const Vec3 through = random_direction(random, true);
            // From the other side the sheet is mirrored.
            const Vec3 from_there(through.x, through.y, -through.z);
            const Vec3 to_here(wo.x, wo.y, -wo.z);
            EXPECT_NEAR(sheet.value(wo, through), sheet.value(from_there, to_here),
                        1e-3F + 1e-3F * sheet.value(wo, through));
        }
    }
}

// What its samples weigh on average is the integral of its value, and no more than all.
TEST(Sheet, SamplesWhatItsValueSays) {
    WalkNumbers random(3);
    for (const Sheet& sheet : sheets()) {
        const Vec3 wo = glm::normalize(Vec3(0.5F, 0.1F, 0.8F));
        constexpr int kSamples = 100000;
        double sampled = 0.0;
        double integral = 0.0;
        double squares = 0.0;
        for (int i = 0; i < kSamples; ++i) {
            const float u = random.next();
            const float v = random.next();
            const float w = random.next();
            sampled += static_cast<double>(sheet.sample(wo, u, v, w).weight) / kSamples;
            const auto both = static_cast<double>(kPi * (sheet.value(wo, random_direction(random, false)) +
                                                         sheet.value(wo, random_direction(random, true))));
            integral += both / kSamples;
            squares += both * both / kSamples;
        }
        const double error = std::sqrt((squares - integral * integral) / kSamples);
        EXPECT_NEAR(sampled, integral, 5.0 * error);
        EXPECT_LT(sampled, 1.0);
    }
}

class EmissionCache : public testing::Test {
  protected:
    EmissionCache()
        : folder_(std::filesystem::temp_directory_path() / ("understudy-kit-" + std::to_string(getpid()))) {}
    ~EmissionCache() override {
        std::error_code error;
        std::filesystem::remove_all(folder_, error);
    }
    std::filesystem::path folder_;
};

TEST_F(EmissionCache, GivesBackWhatItKept) {
    const InteriorCase c = interior_cases().front();
    const std::string key = emission_key(c.construction, c.front);
    const auto file = emission_file(folder_, key);
    EXPECT_FALSE(read_emission(file, key));
    const auto traced = trace_emission(c.construction, c.front, 0.01);
    ASSERT_EQ(write_emission(file, key, *traced), "");
    const auto kept = read_emission(file, key);
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->efficiency, traced->efficiency);
    EXPECT_EQ(kept->table.values().size(), traced->table.values().size());
    // Scaled to a flux of 1 a second time: by what rounding to float left.
    EXPECT_NEAR(kept->table.values().front() / traced->table.values().front(), 1.0F, 1e-5F);
    EXPECT_FALSE(read_emission(file, key + "another"));
}

// Every byte of it counts: one changed, or the end missing, and the file is as good as none.
TEST_F(EmissionCache, TakesNoDamagedFile) {
    const InteriorCase c = interior_cases().back();
    const std::string key = emission_key(c.construction, c.front);
    const auto file = emission_file(folder_, key);
    ASSERT_EQ(write_emission(file, key, *trace_emission(c.construction, c.front, 0.01)), "");
    std::ifstream stream(file, std::ios::binary);
    const std::string good{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    const auto with = [&](const std::string& bytes) {
        std::ofstream(file, std::ios::binary) << bytes;
        return read_emission(file, key).has_value();
    };
    EXPECT_TRUE(with(good));
    for (std::size_t i = 0; i < good.size(); i += 97) {
        std::string bad = good;
        bad[i] = static_cast<char>(bad[i] ^ 4);
        EXPECT_FALSE(with(bad)) << i;
    }
    EXPECT_FALSE(with(good.substr(0, good.size() - 1)));
    EXPECT_FALSE(with(""));
}

// The very same table, by which a light that is moved knows its own (Emitter's `before`); an equal one once nobody has
// it.
TEST_F(EmissionCache, WhatIsInUseIsGivenOutAgain) {
    const ModifierSettings snoot{"snoot", interior_cases()[5].front, 1.0, interior_cases()[5].construction};
    std::vector<float> values;
    {
        const auto built = build_modifier(snoot, folder_);
        const auto again = build_modifier(snoot, folder_);
        ASSERT_TRUE(built && again && built->table);
        EXPECT_EQ(built->table, again->table);
        EXPECT_EQ(built->efficiency, again->efficiency);
        values = built->table->values();
    }
    const auto later = build_modifier(snoot, folder_);
    ASSERT_TRUE(later);
    ASSERT_EQ(later->table->values().size(), values.size());
    EXPECT_NEAR(later->table->values().front() / values.front(), 1.0F, 1e-5F);
}

// A folder that cannot be written costs time and says so; the light is the same.
TEST_F(EmissionCache, SaysWhenItCannotKeep) {
    std::ofstream(folder_) << "a file where the folder should be";
    const ModifierSettings snoot{"snoot", interior_cases()[5].front, 1.0, interior_cases()[5].construction};
    const auto built = build_modifier(snoot, folder_);
    ASSERT_TRUE(built);
    EXPECT_NE(built->not_kept, "");
    EXPECT_TRUE(built->table);
}

}  // namespace
}  // namespace understudy
