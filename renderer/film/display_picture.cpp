#include "film/display_picture.h"

#include <cassert>
#include <cmath>

#include <tbb/blocked_range.h>
#include <tbb/parallel_for.h>

#include "film/encode_picture.h"
#include "film/pending_file.h"
#include "film/picture_file.h"
#include "spectrum/colour.h"

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

}  // namespace

DisplayPicture display_picture(const Picture& picture) {
    DisplayPicture shown{picture.width, picture.height, std::vector<DisplayPixel>(picture.pixels.size())};
    constexpr std::size_t kTogether = 8192;
    tbb::parallel_for(tbb::blocked_range<std::size_t>(0, shown.pixels.size(), kTogether), [&](const auto& some) {
        for (std::size_t i = some.begin(); i < some.end(); ++i) shown.pixels[i] = encode(picture.pixels[i]);
    });
    return shown;
}

Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const DisplayPicture& picture,
                                     const PictureTags& tags, Packing packing) {
    assert(kind != PictureKind::kExr);
    const auto bytes =
        kind == PictureKind::kPng ? encode_png(path, picture, tags, packing) : encode_jpeg(path, picture, tags);
    return bytes ? write_bytes(path, *bytes) : bytes.problems();
}

Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const Picture& picture,
                                     const PictureTags& tags) {
    return write_display_picture(path, kind, display_picture(picture), tags);
}

}  // namespace understudy
