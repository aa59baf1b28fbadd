// A contact sheet as plain data: pictures in rows, each with a title over it and its lines under it.
#pragma once

#include <string>
#include <vector>

#include "base/expected.h"
#include "film/display_picture.h"

namespace understudy {

struct SheetCell {
    std::string title;
    DisplayPicture picture;
    std::vector<DisplayPicture> insets;  // under the picture, side by side; no wider than it in sum
    std::vector<std::string> lines;
    std::string mark;  // a word or two that set this picture apart, such as "no light"; empty: nothing does
};

struct ContactSheet {
    std::string title;
    std::string note;                 // under the title
    std::vector<std::string> labels;  // what the lines of every cell are, told once at the left; may be empty
    int columns = 1;
    std::vector<SheetCell> cells;  // row by row
};

// Pixels. Sheets of four and more columns are 2000 wide, others as wide as their pictures call for.
inline constexpr int kSheetWidth = 2000;

// How wide a cell is, which is the widest that a picture in it may be.
int cell_width(int columns, bool labelled);

// Before tracing for minutes: is there a font on this machine? Without one there is a problem that says so.
Expected<Done> check_fonts();

// The sheet as a picture: mid-grey round the photographs, letters of at least 22 pixels' capitals in black, nothing
// told by colour. All text is UTF-8.
Expected<DisplayPicture> draw_sheet(const ContactSheet& sheet);

}  // namespace understudy
