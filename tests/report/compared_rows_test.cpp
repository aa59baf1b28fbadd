// What is told under compared pictures, in the words that the report has for it.
#include "report/compared_rows.h"

#include <map>

#include <gtest/gtest.h>

#include "sample_report.h"

namespace understudy {
namespace {

std::map<std::string, std::string> told(const MeterReport& report, double developed_f_number) {
    std::map<std::string, std::string> all;
    for (const ComparedRow& row : compared_rows()) all[row.name] = row.words({report, developed_f_number});
    return all;
}

TEST(ComparedRows, SayWhatTheMeterFound) {
    const auto rows = told(filled_report(), 4.0);
    EXPECT_EQ(rows.at("meter at the face"), "8 + 0/10");
    EXPECT_EQ(rows.at("from camera"), "+2.0 stops");
    EXPECT_EQ(rows.at("cheek over cheek"), "2.9:1, 1.5 stops");  // the training text's ratio, log2 2.89
    EXPECT_EQ(rows.at("key to fill, K:F"), "1.9:1");
    EXPECT_EQ(rows.at("eye at left"), "lit, -0.5 from cheek");
    EXPECT_EQ(rows.at("eye at right"), "dark, -4.2 from cheek");
    EXPECT_EQ(rows.at("catchlight at left"), "key 10:00, 25 x 50 %, 75 % seen (upper lid)");
    EXPECT_EQ(rows.at("catchlight at right"), "none");
    EXPECT_EQ(rows.at("warnings"), "in-picture, key-cut, ambient");
}

// Of the backdrop only what is seen counts, as bright as the picture is developed: f/8 for f/4 is two stops less.
TEST(ComparedRows, BackdropIsAsThePictureShowsIt) {
    EXPECT_EQ(told(filled_report(), 4.0).at("backdrop, from grey"), "+3.0 stops, clipped");
    EXPECT_EQ(told(filled_report(), 8.0).at("backdrop, from grey"), "+1.0 stops");
}

TEST(ComparedRows, WhatIsHiddenHasAReason) {
    MeterReport report = filled_report();
    report.catchlights->front().visible = 0.0;
    EXPECT_EQ(told(report, 4.0).at("catchlight at left"), "key hidden: upper lid");
    for (const char* name : {"second", "third", "fourth", "fifth"}) {
        Catchlight light = sample_catchlight();
        light.light = name;
        report.catchlights->push_back(light);
    }
    const std::string many = told(report, 4.0).at("catchlight at left");
    EXPECT_TRUE(many.starts_with("second 10:00")) << many;
    EXPECT_TRUE(many.ends_with("; 2 more")) << many;
}

TEST(ComparedRows, SayNothingOfWhatIsNotThere) {
    const auto rows = told(empty_report(), 4.0);
    for (const char* name : {"cheek over cheek", "forehead over throat", "key to fill, K:F", "eye at left",
                             "catchlight at right", "backdrop, from grey"}) {
        EXPECT_EQ(rows.at(name), "") << name;
    }
    EXPECT_EQ(rows.at("warnings"), "none");
}

}  // namespace
}  // namespace understudy
