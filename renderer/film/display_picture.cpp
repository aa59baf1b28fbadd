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

using Pixel = std::array<std::uint8_t, 3>;

// A pixel that is no number must be seen, not pass for black: magenta.
constexpr Pixel kNotANumber = {255, 0, 255};

Pixel encode(const Vec3& linear) {
    Pixel pixel{};
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

Expected<Done> write_png(const std::filesystem::path& path, const OIIO::ImageSpec& spec, const void* pixels) {
    const auto png = encode_png(path, {spec, OIIO::TypeDesc::UINT8, pixels});
    if (!png) return png.problems();
    Expected<PendingFile> pending = PendingFile::beside(path);
    if (!pending) return pending.problems();
    const Expected<Done> filled = pending->fill(with_exif(*png, spec));
    return filled ? pending->publish() : filled;
}

}  // namespace

Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const Picture& picture,
                                     const PictureTags& tags) {
    assert(kind != PictureKind::kExr);
    std::vector<Pixel> pixels;
    pixels.reserve(picture.pixels.size());
    for (const Vec3& linear : picture.pixels) pixels.push_back(encode(linear));
    OIIO::ImageSpec spec(picture.width, picture.height, 3, OIIO::TypeDesc::UINT8);
    spec.attribute("oiio:ColorSpace", "sRGB");  // PNG's chunks sRGB and gAMA
    spec.attribute("Exif:ColorSpace", 1);       // sRGB, EXIF 2.3 table 4
    set_tags(&spec, tags);
    if (kind == PictureKind::kPng) return write_png(path, spec, pixels.data());
    spec.attribute("Compression", "jpeg:95");
    spec.attribute("jpeg:subsampling", "4:4:4");
    return write_image_file(path, {{spec, OIIO::TypeDesc::UINT8, pixels.data()}});
}

}  // namespace understudy
