// Where everything on a sheet goes.
#pragma once

#include <memory>
#include <vector>

#include "sheet/lettering.h"
#include "sheet/sheet.h"

namespace understudy {

// Pixels from the sheet's top left corner.
struct Box {
    int x = 0;
    int y = 0;
    int width = 0;
    int height = 0;
};

struct PlacedText {
    Box box;  // what the text takes, not what it was given
    std::shared_ptr<const TextBlock> block;
    bool reversed = false;  // white on black
};

struct PlacedPicture {
    Box box;
    const DisplayPicture* picture = nullptr;  // of the sheet, which has to outlive this
};

struct SheetLayout {
    int width = 0;
    int height = 0;
    std::vector<PlacedText> texts;
    std::vector<PlacedPicture> pictures;
    std::vector<Box> frames;  // round the pictures of cells with a mark
};

SheetLayout lay_out(const ContactSheet& sheet);

}  // namespace understudy
