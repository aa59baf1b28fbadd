#include "report/table.h"

#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace understudy {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

TEST(Table, ColumnsStartAtTheSamePlaceWhateverTheNames) {
    Table table({{"light"}, {"reads"}});
    table.add_row({"key", "@"});
    table.add_row({"a name longer than any column was ever meant to be, with 100 % more of it", "@"});
    table.add_row({"Führungslicht", "@"});
    table.add_row({"主光", "@"});
    const auto lines = lines_of(table.text());
    ASSERT_EQ(lines.size(), 6U);
    const std::size_t place = display_width(lines[3].substr(0, lines[3].find('@')));
    for (std::size_t i = 2; i < lines.size(); ++i) {
        EXPECT_EQ(display_width(lines[i].substr(0, lines[i].find('@'))), place) << lines[i];
    }
    EXPECT_EQ(lines[0].find("reads"), place);
}

TEST(Table, NumbersEndAtTheSamePlace) {
    Table table({{"what"}, {"stops", Align::kRight}});
    table.add_row({"a", "-10.5"});
    table.add_row({"b", "no light at all"});
    const auto lines = lines_of(table.text());
    EXPECT_EQ(lines[0].size(), lines[2].size());
    EXPECT_EQ(lines[2].size(), lines[3].size());
}

// Unicode standard annex 11: ideographs are wide, combining marks take no room.
TEST(Table, WidthOnScreen) {
    EXPECT_EQ(display_width("key"), 3U);
    EXPECT_EQ(display_width("ü"), 1U);
    EXPECT_EQ(display_width("u\xCC\x88"), 1U);
    EXPECT_EQ(display_width("主光"), 4U);
    EXPECT_EQ(display_width("\xE4\xB8"), 2U);  // cut short: its bytes one by one, and no reading past the end
}

TEST(Table, ControlCharactersNeverReachTheScreen) {
    Table table({{"light"}});
    table.add_row({"\x1B[5mkey\a\nline\xC2\x9B"});
    const std::string text = table.text();
    EXPECT_EQ(text.find('\x1B'), std::string::npos);
    EXPECT_EQ(text.find('\a'), std::string::npos);
    EXPECT_EQ(text.find("\xC2\x9B"), std::string::npos);
    EXPECT_EQ(lines_of(text).size(), 3U);
}

}  // namespace
}  // namespace understudy
