// A display picture as the bytes of a file.
#pragma once

#include <vector>

#include "base/expected.h"
#include "film/picture_file.h"

namespace understudy {

// PNG with its chunks sRGB, gAMA and eXIf (PNG specification, third edition, 11.3.2). path: for messages.
Expected<std::vector<unsigned char>> encode_png(const std::filesystem::path& path, const DisplayPicture& picture,
                                                const PictureTags& tags, Packing packing);

// JPEG of hardly any loss, its colours as fine as its light and dark, with the settings as EXIF.
Expected<std::vector<unsigned char>> encode_jpeg(const std::filesystem::path& path, const DisplayPicture& picture,
                                                 const PictureTags& tags);

}  // namespace understudy
