// A picture as screens show it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "film/develop.h"

namespace understudy {

using DisplayPixel = std::array<std::uint8_t, 3>;

// 8-bit sRGB (IEC 61966-2-1), row by row from the top left.
struct DisplayPicture {
    int width = 0;
    int height = 0;
    std::vector<DisplayPixel> pixels;
};

// Over 1 is cut off; a pixel that is no number must be seen, not pass for black: magenta.
DisplayPicture display_picture(const Picture& picture);

}  // namespace understudy
