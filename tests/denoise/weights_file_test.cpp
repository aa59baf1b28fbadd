// The container of trained weights: what is written comes back, and whatever is wrong is said.
#include <cstring>
#include <filesystem>
#include <fstream>

#include <unistd.h>

#include <gtest/gtest.h>

#include "denoise/weights_file.h"

namespace understudy {
namespace {

// A file as core/tza.cpp of Open Image Denoise describes it.
class Tza {
  public:
    Tza() { put<std::uint16_t>(0x41D7), put<std::uint8_t>(2), put<std::uint8_t>(0), put<std::uint64_t>(0); }

    template <class T>
    void put(T value) {
        bytes.append(reinterpret_cast<const char*>(&value), sizeof(T));
    }
    std::string with_table(std::uint64_t data_at, char type) {
        const std::uint64_t table = bytes.size();
        std::memcpy(bytes.data() + 4, &table, sizeof(table));
        put<std::uint32_t>(1);
        put<std::uint16_t>(3);
        bytes += "a.b";
        put<std::uint8_t>(1);
        put<std::uint32_t>(2);
        bytes += "x";
        put(type);
        put(data_at);
        return bytes;
    }
    std::string bytes;
};

class WeightsFile : public testing::Test {
  protected:
    WeightsFile() {
        std::string name = (std::filesystem::temp_directory_path() / "understudy-weights-XXXXXX").string();
        folder_ = mkdtemp(name.data());
    }
    ~WeightsFile() override { std::filesystem::remove_all(folder_); }

    Expected<Weights> read(const std::string& bytes) const {
        std::ofstream(folder_ / "some.tza", std::ios::binary) << bytes;
        return read_weights(folder_ / "some.tza");
    }
    std::filesystem::path folder_;
};

TEST_F(WeightsFile, HalvesAndSinglesComeBack) {
    Tza half;
    half.put<std::uint16_t>(0x3C00);  // 1 in IEEE 754's binary16
    half.put<std::uint16_t>(0xC100);  // -2.5
    const auto halves = read(half.with_table(12, 'h'));
    ASSERT_TRUE(halves);
    EXPECT_EQ(halves->at("a.b").values, (std::vector<float>{1.0F, -2.5F}));
    EXPECT_EQ(halves->at("a.b").sizes, std::vector<std::uint32_t>{2});
    Tza single;
    single.put(0.125F);
    single.put(-3.0F);
    const auto singles = read(single.with_table(12, 'f'));
    ASSERT_TRUE(singles);
    EXPECT_EQ(singles->at("a.b").values, (std::vector<float>{0.125F, -3.0F}));
}

TEST_F(WeightsFile, WhatIsWrongIsSaid) {
    Tza good;
    good.put(0.125F);
    good.put(-3.0F);
    const std::string bytes = good.with_table(12, 'f');
    EXPECT_NE(read("").problems().front().text.find("of another kind"), std::string::npos);
    std::string other = bytes;
    other[2] = 3;
    EXPECT_NE(read(other).problems().front().text.find("of another version"), std::string::npos);
    for (std::size_t length = 0; length < bytes.size(); ++length) EXPECT_FALSE(read(bytes.substr(0, length))) << length;
    EXPECT_FALSE(read(Tza(good).with_table(1U << 30U, 'f'))) << "data beyond the file";
    EXPECT_FALSE(read(Tza(good).with_table(12, 'q'))) << "a type that there is not";
    EXPECT_FALSE(read_weights(folder_ / "none.tza"));
}

}  // namespace
}  // namespace understudy
