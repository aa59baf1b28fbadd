// A sheet's words and pictures: each in its own place, whatever they are called.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "sheet/layout.h"

namespace understudy {
namespace {

DisplayPicture plain(int width, int height, std::uint8_t grey) {
    const auto count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    return {width, height, std::vector<DisplayPixel>(count, {grey, grey, grey})};
}

std::string repeated(const std::string& text, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) all += text;
    return all;
}

// Names of all lengths, among them one without a place to break it, and other alphabets.
const std::vector<std::string> kNames{"key modifier octa-120",
                                      "panel modifier_with_a_name_that_nobody_would_break_anywhere_at_all 12",
                                      repeated("a long name ", 20),
                                      "Schlüssellicht größer\nzweite Zeile",
                                      "ключевой свет 1,5 м",
                                      "\xff not UTF-8",
                                      ""};

ContactSheet sheet_of(int columns, std::size_t count, bool labelled) {
    ContactSheet sheet;
    sheet.title = repeated("A title of some length, ", 6);
    sheet.note = "A note.";
    sheet.columns = columns;
    if (labelled) sheet.labels = {"meter at the face", "a label that takes more than a single line", "last"};
    const int width = cell_width(columns, labelled);
    for (std::size_t i = 0; i < count; ++i) {
        SheetCell cell;
        cell.title = kNames[i % kNames.size()];
        cell.picture = plain(i % 3 == 0 ? width : width / 2, 90 + static_cast<int>(i % 4) * 10, 200);
        if (i % 2 == 0) cell.insets = {plain(width / 4, 20, 150), plain(width / 4 - 6, 30, 150)};
        cell.lines = {"5.6 + 3/10", kNames[(i + 2) % kNames.size()], "camera-left 10:30, 15 x 34 %, 89 % seen"};
        if (i % 3 == 1) cell.mark = kNames[(i + 1) % 3];
        sheet.cells.push_back(std::move(cell));
    }
    return sheet;
}

bool overlap(const Box& a, const Box& b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

bool within(const Box& box, int width, int height) {
    return box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
}

struct Form {
    int columns;
    std::size_t count;
    bool labelled;
};

class SheetForms : public testing::TestWithParam<Form> {};

TEST_P(SheetForms, NothingOverlapsOrRunsOut) {
    const auto [columns, count, labelled] = GetParam();
    const ContactSheet sheet = sheet_of(columns, count, labelled);
    const SheetLayout layout = lay_out(sheet);
    std::vector<Box> boxes;
    for (const PlacedText& text : layout.texts) boxes.push_back(text.box);
    for (const PlacedPicture& picture : layout.pictures) boxes.push_back(picture.box);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        EXPECT_TRUE(within(boxes[i], layout.width, layout.height)) << i;
        for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(overlap(boxes[i], boxes[k])) << i << " and " << k;
    }
    for (const Box& frame : layout.frames) {
        EXPECT_TRUE(within(frame, layout.width, layout.height));
        for (const PlacedText& text : layout.texts) EXPECT_FALSE(overlap(frame, text.box));
    }
    // A cell's words end within its column; the sheet's own title and note, which come first, run over all of them.
    const int first_column = layout.pictures.front().box.x;
    for (std::size_t i = 2; i < layout.texts.size(); ++i) {
        const Box& box = layout.texts[i].box;
        const int room = box.x < first_column ? first_column - box.x : cell_width(columns, labelled);
        EXPECT_LE(box.width, room) << i;
    }
    EXPECT_LE(layout.width, kSheetWidth);
}

INSTANTIATE_TEST_SUITE_P(All, SheetForms,
                         testing::Values(Form{1, 1, true}, Form{3, 3, true}, Form{3, 6, true}, Form{4, 16, true},
                                         Form{5, 9, true}, Form{6, 48, true}, Form{4, 12, false}, Form{6, 7, false}));

// What is drawn stays in its box too: beyond all boxes the sheet is the surround's grey, letters and all.
TEST(ContactSheet, IsGreyBeyondItsBoxes) {
    const ContactSheet sheet = sheet_of(4, 7, true);
    const SheetLayout layout = lay_out(sheet);
    const auto drawn = draw_sheet(sheet);
    ASSERT_TRUE(drawn);
    ASSERT_EQ(drawn->width, layout.width);
    ASSERT_EQ(drawn->height, layout.height);
    std::vector<bool> taken(drawn->pixels.size());
    const auto take = [&](const Box& box) {
        // Letters such as j reach a little beyond the place that a line is reckoned to take.
        for (int y = std::max(0, box.y); y < std::min(layout.height, box.y + box.height); ++y) {
            for (int x = std::max(0, box.x - 4); x < std::min(layout.width, box.x + box.width + 4); ++x) {
                const int place = y * layout.width + x;
                taken[static_cast<std::size_t>(place)] = true;
            }
        }
    };
    for (const PlacedText& text : layout.texts) take(text.box);
    for (const PlacedPicture& picture : layout.pictures) take(picture.box);
    for (const Box& frame : layout.frames) take(frame);
    std::size_t strays = 0;
    std::size_t coloured = 0;
    for (std::size_t i = 0; i < taken.size(); ++i) {
        const DisplayPixel& pixel = drawn->pixels[i];
        if (!taken[i] && pixel != DisplayPixel{119, 119, 119}) ++strays;
        if (pixel[0] != pixel[1] || pixel[1] != pixel[2]) ++coloured;
    }
    EXPECT_EQ(strays, 0U);
    EXPECT_EQ(coloured, 0U);  // letters have grey edges
}

// L* of the surround: IEC 61966-2-1 and CIE 15. ISO 3664 as from memory: a neutral surround of middle lightness.
TEST(ContactSheet, SurroundIsMidGrey) {
    const auto drawn = draw_sheet(sheet_of(1, 1, true));
    ASSERT_TRUE(drawn);
    const double code = static_cast<double>(drawn->pixels.front()[0]) / 255.0;
    const double linear = std::pow((code + 0.055) / 1.055, 2.4);
    EXPECT_NEAR(116.0 * std::cbrt(linear) - 16.0, 50.0, 0.3);
}

TEST(ContactSheet, PicturesComePixelForPixel) {
    ContactSheet sheet = sheet_of(3, 1, false);
    for (std::size_t i = 0; i < sheet.cells[0].picture.pixels.size(); ++i) {
        sheet.cells[0].picture.pixels[i] = {static_cast<std::uint8_t>(i % 251), static_cast<std::uint8_t>(i % 83), 7};
    }
    const auto drawn = draw_sheet(sheet);
    ASSERT_TRUE(drawn);
    const SheetLayout layout = lay_out(sheet);
    const Box& box = layout.pictures.front().box;
    for (int y = 0; y < box.height; ++y) {
        for (int x = 0; x < box.width; ++x) {
            ASSERT_EQ(drawn->pixels[static_cast<std::size_t>((box.y + y) * drawn->width + box.x + x)],
                      sheet.cells[0].picture.pixels[static_cast<std::size_t>(y * box.width + x)]);
        }
    }
}

// The wish: capitals of 22 pixels on a sheet of 2000. An H has nothing under the line and nothing over its capitals.
TEST(ContactSheet, LettersAreLargeEnough) {
    ContactSheet sheet;
    sheet.title = "H";
    sheet.columns = 4;
    sheet.cells = {{"", plain(10, 10, 119), {}, {"H"}, ""}};
    const auto drawn = draw_sheet(sheet);
    ASSERT_TRUE(drawn);
    const SheetLayout layout = lay_out(sheet);
    const Box& box = layout.texts.back().box;
    int inked = 0;
    for (int y = box.y; y < box.y + box.height; ++y) {
        bool ink = false;
        for (int x = box.x; x < box.x + box.width; ++x) {
            const int place = y * drawn->width + x;
            ink = ink || drawn->pixels[static_cast<std::size_t>(place)][0] < 60;
        }
        inked += ink ? 1 : 0;
    }
    EXPECT_GE(inked, 22);
    EXPECT_LE(inked, 26);
}

// Lines with the same name are at one height over a row, however much others wrap.
TEST(ContactSheet, LinesOfARowAreLevel) {
    const ContactSheet sheet = sheet_of(3, 3, true);
    const SheetLayout layout = lay_out(sheet);
    std::vector<int> tops;
    for (const PlacedText& text : layout.texts) {
        if (text.box.y > layout.pictures.front().box.y) tops.push_back(text.box.y);
    }
    std::sort(tops.begin(), tops.end());
    tops.erase(std::unique(tops.begin(), tops.end()), tops.end());
    EXPECT_EQ(tops.size(), 3U + 1U);  // three lines, and the mark of the middle picture
}

}  // namespace
}  // namespace understudy
