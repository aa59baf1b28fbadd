#include "film/encode_picture.h"

#include <cstdint>
#include <memory>
#include <string_view>

#include <png.h>
#include <turbojpeg.h>
#include <zlib.h>

#include "film/exif.h"
#include "film/pending_file.h"

namespace understudy {
namespace {

using Bytes = std::vector<unsigned char>;

void put_big_endian(Bytes& bytes, std::uint32_t value, int count) {
    for (int i = count - 1; i >= 0; --i) bytes.push_back(static_cast<unsigned char>(value >> (8 * i)));
}

// Length, name, content and the checksum of the last two.
Bytes png_chunk(std::string_view name, const Bytes& content) {
    Bytes chunk;
    put_big_endian(chunk, static_cast<std::uint32_t>(content.size()), 4);
    chunk.insert(chunk.end(), name.begin(), name.end());
    chunk.insert(chunk.end(), content.begin(), content.end());
    const uLong checksum = crc32(0, chunk.data() + 4, static_cast<uInt>(chunk.size() - 4));
    put_big_endian(chunk, static_cast<std::uint32_t>(checksum), 4);
    return chunk;
}

const unsigned char* bytes_of(const DisplayPicture& picture) { return picture.pixels.front().data(); }

constexpr std::size_t kBeforePngChunks = 33;  // the signature and the header's chunk

}  // namespace

Expected<std::vector<unsigned char>> encode_png(const std::filesystem::path& path, const DisplayPicture& picture,
                                                const PictureTags& tags, Packing packing) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(picture.width);
    image.height = static_cast<png_uint_32>(picture.height);
    image.format = PNG_FORMAT_RGB;
    if (packing == Packing::kQuick) image.flags = PNG_IMAGE_FLAG_FAST;
    png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(image);
    Bytes bytes(size);
    const bool done = png_image_write_to_memory(&image, bytes.data(), &size, 0, bytes_of(picture), 0, nullptr) != 0;
    png_image_free(&image);
    if (!done) return write_problem(path, image.message);
    bytes.resize(size);
    // The library itself says sRGB; readers that do not know it go by the gamma.
    Bytes gamma;
    put_big_endian(gamma, 45455, 4);
    for (const Bytes& chunk : {png_chunk("eXIf", exif_block(tags)), png_chunk("gAMA", gamma)}) {
        bytes.insert(bytes.begin() + kBeforePngChunks, chunk.begin(), chunk.end());
    }
    return bytes;
}

Expected<std::vector<unsigned char>> encode_jpeg(const std::filesystem::path& path, const DisplayPicture& picture,
                                                 const PictureTags& tags) {
    constexpr int kQuality = 95;
    const std::unique_ptr<void, int (*)(void*)> encoder(tjInitCompress(), tjDestroy);
    if (!encoder) return write_problem(path, tjGetErrorStr2(nullptr));
    unsigned char* encoded = nullptr;
    unsigned long size = 0;
    const int status = tjCompress2(encoder.get(), bytes_of(picture), picture.width, 0, picture.height, TJPF_RGB,
                                   &encoded, &size, TJSAMP_444, kQuality, TJFLAG_ACCURATEDCT);
    const std::unique_ptr<unsigned char, void (*)(unsigned char*)> owner(encoded, tjFree);
    if (status != 0) return write_problem(path, tjGetErrorStr2(encoder.get()));
    // Application segment 1, right behind the start of the image.
    Bytes segment{'E', 'x', 'i', 'f', 0, 0};
    const Bytes exif = exif_block(tags);
    segment.insert(segment.end(), exif.begin(), exif.end());
    Bytes bytes(encoded, encoded + 2);
    put_big_endian(bytes, 0xFFE1, 2);
    put_big_endian(bytes, static_cast<std::uint32_t>(segment.size() + 2), 2);
    bytes.insert(bytes.end(), segment.begin(), segment.end());
    bytes.insert(bytes.end(), encoded + 2, encoded + size);
    return bytes;
}

}  // namespace understudy
