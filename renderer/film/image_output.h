// The one place that hands pixels to OpenImageIO for writing.
#pragma once

#include <OpenImageIO/imageio.h>

#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"
#include "film/picture_file.h"

namespace understudy {

struct ImagePart {
    OIIO::ImageSpec spec;
    OIIO::TypeDesc type;  // of the data; converted to what spec says
    const void* data = nullptr;
};

// Writes an EXR file of these parts, whole or not at all; sealed: with film/seal.h's checksum.
Expected<Done> write_exr_file(const std::filesystem::path& path, const std::vector<ImagePart>& parts,
                              bool sealed = false);

// The bytes of a file of OpenImageIO's format of that name. Display pictures go by way of memory, because on a full
// disk OpenImageIO 2.4 reports success for a PNG and its JPEG library ends the process.
Expected<std::vector<unsigned char>> encode_image(const std::filesystem::path& path, const std::string& format,
                                                  const ImagePart& part);

// The camera's settings in the terms of EXIF 2.3; what is 0 is not known and left out.
void set_tags(OIIO::ImageSpec* spec, const PictureTags& tags);

}  // namespace understudy
