// The camera's settings as picture files carry them.
#pragma once

#include <vector>

#include "film/picture_file.h"

namespace understudy {

// A block of EXIF 2.3 (CIPA DC-008-2012): a TIFF header with what is known of the picture, and sRGB as its colour
// space. What is 0 or empty is not known and left out.
std::vector<unsigned char> exif_block(const PictureTags& tags);

}  // namespace understudy
