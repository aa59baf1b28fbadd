#include "setup/units.h"

#include <gtest/gtest.h>

#include "setup/nearest_name.h"

namespace understudy {
namespace {

// The international yard and pound agreement of 1959: 1 in = 25.4 mm exactly, 1 ft = 304.8 mm exactly.
TEST(Units, LengthsInEveryUnitAreMetres) {
    EXPECT_DOUBLE_EQ(*read_measure("1.3 m", kLength), 1.3);
    EXPECT_DOUBLE_EQ(*read_measure("130 cm", kLength), 1.3);
    EXPECT_DOUBLE_EQ(*read_measure("51 in", kLength), 1.2954);
    EXPECT_DOUBLE_EQ(*read_measure("4 ft 3 in", kLength), 1.2954);
    EXPECT_DOUBLE_EQ(*read_measure("4ft3in", kLength), 1.2954);
    EXPECT_DOUBLE_EQ(*read_measure("5 ft", kLength), 1.524);
    EXPECT_DOUBLE_EQ(*read_measure("-4 ft 3 in", kLength), -1.2954);
    EXPECT_DOUBLE_EQ(*read_measure("85mm", kFilmLength), 0.085);
    EXPECT_DOUBLE_EQ(*read_measure("  85 mm  ", kLength), 0.085);
}

// 1 W s = 1 J (SI brochure, 9th edition, table 4).
TEST(Units, EnergyFluxIlluminanceTemperature) {
    EXPECT_DOUBLE_EQ(*read_measure("120 J", kEnergy), 120.0);
    EXPECT_DOUBLE_EQ(*read_measure("120 Ws", kEnergy), 120.0);
    EXPECT_DOUBLE_EQ(*read_measure("2000 lm", kLuminousFlux), 2000.0);
    EXPECT_DOUBLE_EQ(*read_measure("2e3 lm", kLuminousFlux), 2000.0);
    EXPECT_DOUBLE_EQ(*read_measure("200 lx", kIlluminance), 200.0);
    EXPECT_DOUBLE_EQ(*read_measure("5600 K", kTemperature), 5600.0);
}

TEST(Units, ShutterTimes) {
    EXPECT_DOUBLE_EQ(*read_shutter("1/200"), 0.005);
    EXPECT_DOUBLE_EQ(*read_shutter("1/200 s"), 0.005);
    EXPECT_DOUBLE_EQ(*read_shutter("0.5 s"), 0.5);
    EXPECT_DOUBLE_EQ(*read_shutter("2"), 2.0);
    for (const char* text :
         {"", "1/", "1/0", "/200", "1/200 m", "1/2/3", "1/-200", "fast", "1/200 s s", "nan", "1/inf"}) {
        EXPECT_FALSE(read_shutter(text)) << text;
    }
}

TEST(Units, WhatIsNoLengthIsRefused) {
    for (const char* text :
         {"", "m", "1.3", "1.3 kg", "1.3 M", "1,3 m", "1.3 m 2", "4 ft 3", "4 ft 13 in", "4 ft -3 in", "3 in 4 ft",
          "nan m", "inf m", "1e999 m", "one m", "0x10 m", "4 ft 3 in 2"}) {
        EXPECT_FALSE(read_measure(text, kLength)) << text;
    }
    EXPECT_NE(read_measure("30 deg", kAngle).problems().front().text.find("a number of degrees"), std::string::npos);
}

TEST(Units, ValuesAreShownInTheFilesOwnUnit) {
    EXPECT_EQ(show_measure(0.085, kFilmLength), "85 mm");
    EXPECT_EQ(show_measure(1.3, kLength), "1.3 m");
    EXPECT_EQ(show_measure(4.0, kFNumber), "4");
}

// The textbook pair: kitten → sitting is 3 (Wagner and Fischer, 1974, give the method); swapped
// neighbours are one slip (Damerau, 1964).
TEST(NearestName, EditDistance) {
    EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
    EXPECT_EQ(edit_distance("", "abc"), 3U);
    EXPECT_EQ(edit_distance("abc", "abc"), 0U);
    EXPECT_EQ(edit_distance("widht", "width"), 1U);
    EXPECT_EQ(edit_distance("ca", "abc"), 3U);  // no letter is edited twice
    EXPECT_EQ(nearest_name("widht", {"height", "width"}), "width");
    EXPECT_EQ(nearest_name("zebra", {"height", "width"}), "");
}

}  // namespace
}  // namespace understudy
