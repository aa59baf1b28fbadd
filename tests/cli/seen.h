// A picture file read back, as plain numbers.
#pragma once

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include <OpenImageIO/imageio.h>

namespace understudy {

struct Seen {
    int width = 0;
    int height = 0;
    int channels = 0;
    OIIO::ImageSpec spec;
    std::vector<float> values;  // 8-bit files: codes 0 … 255; others as they are

    float at(int x, int y, int channel) const {
        const int place = (y * width + x) * channels + channel;
        return values[static_cast<std::size_t>(place)];
    }
    // Of the picture itself: an OpenEXR file has the lights and features behind it in further channels.
    double mean() const {
        const int colours = std::min(channels, 3);
        double sum = 0.0;
        for (int y = 0; y < height; ++y) {
            for (int x = 0; x < width; ++x) {
                for (int channel = 0; channel < colours; ++channel) sum += static_cast<double>(at(x, y, channel));
            }
        }
        return sum / (static_cast<double>(width) * height * colours);
    }
};

inline Seen seen(const std::filesystem::path& path) {
    Seen picture;
    const auto input = OIIO::ImageInput::open(path.string());
    if (!input) return picture;
    picture.spec = input->spec();
    picture.width = picture.spec.width;
    picture.height = picture.spec.height;
    picture.channels = picture.spec.nchannels;
    const int values = picture.width * picture.height * picture.channels;
    picture.values.resize(static_cast<std::size_t>(values));
    input->read_image(0, 0, 0, picture.channels, OIIO::TypeDesc::FLOAT, picture.values.data());
    if (picture.spec.format == OIIO::TypeDesc::UINT8) {
        for (float& value : picture.values) value *= 255.0F;
    }
    return picture;
}

}  // namespace understudy
