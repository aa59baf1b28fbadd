#include "film/display_picture.h"

#include <OpenImageIO/platform.h>
#include <zlib.h>

#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>

#include "film/image_output.h"
#include "film/pending_file.h"
#include "film/picture_file.h"
#include "spectrum/colour.h"

// As in OpenImageIO/tiffutils.h, which cannot be included without the TIFF library's headers.
OIIO_NAMESPACE_BEGIN
OIIO_API void encode_exif(const ImageSpec& spec, std::vector<char>& blob, OIIO::endian endianreq);
OIIO_NAMESPACE_END

namespace understudy {
namespace {

constexpr DisplayPixel kNotANumber = {255, 0, 255};

DisplayPixel encode(const Vec3& linear) {
    DisplayPixel pixel{};
    for (std::size_t channel = 0; channel < 3; ++channel) {
        const float value = linear[static_cast<int>(channel)];
        if (!std::isfinite(value)) return kNotANumber;
        pixel[channel] = srgb_code(static_cast<double>(value));
    }
    return pixel;
}

std::array<unsigned char, 4> big_endian(std::uint32_t value) {
    return {static_cast<unsigned char>(value >> 24), static_cast<unsigned char>(value >> 16),
            static_cast<unsigned char>(value >> 8), static_cast<unsigned char>(value)};
}

// Chunk eXIf of the PNG specification (third edition, 11.3.4.5): OpenImageIO 2.4 writes none. It goes behind the
// header.
std::vector<unsigned char> with_exif(const std::vector<unsigned char>& png, const OIIO::ImageSpec& spec) {
    constexpr std::ptrdiff_t kHeader = 8 + 25;  // the signature and chunk IHDR
    std::vector<char> exif;
    OIIO::encode_exif(spec, exif, OIIO::endian::big);
    std::vector<unsigned char> body = {'e', 'X', 'I', 'f'};
    body.insert(body.end(), exif.begin(), exif.end());
    std::vector<unsigned char> result(png.begin(), png.begin() + kHeader);
    const auto length = big_endian(static_cast<std::uint32_t>(exif.size()));
    const auto check = big_endian(static_cast<std::uint32_t>(crc32(0, body.data(), static_cast<uInt>(body.size()))));
    result.insert(result.end(), length.begin(), length.end());
    result.insert(result.end(), body.begin(), body.end());
    result.insert(result.end(), check.begin(), check.end());
    result.insert(result.end(), png.begin() + kHeader, png.end());
    return result;
}

Expected<Done> write_bytes(const std::filesystem::path& path, const std::vector<unsigned char>& bytes) {
    Expected<PendingFile> pending = PendingFile::beside(path);
    if (!pending) return pending.problems();
    const Expected<Done> filled = pending->fill(bytes);
    return filled ? pending->publish() : filled;
}

}  // namespace

DisplayPicture display_picture(const Picture& picture) {
    DisplayPicture shown{picture.width, picture.height, {}};
    shown.pixels.reserve(picture.pixels.size());
    for (const Vec3& linear : picture.pixels) shown.pixels.push_back(encode(linear));
    return shown;
}

Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const DisplayPicture& picture,
                                     const PictureTags& tags) {
    assert(kind != PictureKind::kExr);
    OIIO::ImageSpec spec(picture.width, picture.height, 3, OIIO::TypeDesc::UINT8);
    spec.attribute("oiio:ColorSpace", "sRGB");  // PNG's chunks sRGB and gAMA
    spec.attribute("Exif:ColorSpace", 1);       // sRGB, EXIF 2.3 table 4
    set_tags(&spec, tags);
    const bool is_png = kind == PictureKind::kPng;
    if (!is_png) {
        spec.attribute("Compression", "jpeg:95");
        spec.attribute("jpeg:subsampling", "4:4:4");
    }
    const auto bytes =
        encode_image(path, is_png ? "png" : "jpeg", {spec, OIIO::TypeDesc::UINT8, picture.pixels.data()});
    if (!bytes) return bytes.problems();
    return write_bytes(path, is_png ? with_exif(*bytes, spec) : *bytes);
}

Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const Picture& picture,
                                     const PictureTags& tags) {
    return write_display_picture(path, kind, display_picture(picture), tags);
}

}  // namespace understudy
