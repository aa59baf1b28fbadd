// The one place that hands pixels to OpenImageIO for writing.
#pragma once

#include <OpenImageIO/imageio.h>

#include <filesystem>
#include <vector>

#include "base/expected.h"
#include "film/picture_file.h"

namespace understudy {

struct ImagePart {
    OIIO::ImageSpec spec;
    OIIO::TypeDesc type;  // of the data; converted to what spec says
    const void* data = nullptr;
};

// Writes the parts whole or not at all; more than one only where the format can.
Expected<Done> write_image_file(const std::filesystem::path& path, const std::vector<ImagePart>& parts);

// A PNG's bytes. By way of memory, because OpenImageIO 2.4 reports no failure to write a PNG to a full disk.
Expected<std::vector<unsigned char>> encode_png(const std::filesystem::path& path, const ImagePart& part);

// The camera's settings in the terms of EXIF 2.3; what is 0 is not known and left out.
void set_tags(OIIO::ImageSpec* spec, const PictureTags& tags);

}  // namespace understudy
