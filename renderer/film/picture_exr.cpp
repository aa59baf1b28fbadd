#include <algorithm>
#include <array>
#include <set>

#include "film/image_output.h"
#include "film/picture_file.h"

namespace understudy {
namespace {

// Channels of one pixel side by side, collected one after another.
struct Channels {
    std::vector<std::string> names;
    std::vector<std::vector<float>> values;

    void add(const std::string& name, std::vector<float> channel) {
        names.push_back(name);
        values.push_back(std::move(channel));
    }

    void add(const std::string& prefix, const std::array<const char*, 3>& axes, const std::vector<Vec3>& pixels) {
        for (int axis = 0; axis < 3; ++axis) {
            std::vector<float> channel;
            channel.reserve(pixels.size());
            for (const Vec3& pixel : pixels) channel.push_back(pixel[axis]);
            add(prefix + axes[static_cast<std::size_t>(axis)], std::move(channel));
        }
    }

    std::vector<float> interleaved(std::size_t pixel_count) const {
        std::vector<float> result(pixel_count * values.size());
        for (std::size_t channel = 0; channel < values.size(); ++channel) {
            for (std::size_t i = 0; i < pixel_count; ++i) result[i * values.size() + channel] = values[channel][i];
        }
        return result;
    }
};

constexpr std::array<const char*, 3> kColourAxes = {"R", "G", "B"};
constexpr std::array<const char*, 3> kSpaceAxes = {"X", "Y", "Z"};

Channels collect(const Film& film, const Developing& developing) {
    Channels channels;
    channels.add("", kColourAxes, develop(film, developing).pixels);
    for (std::size_t layer = 0; layer < film.layers.size(); ++layer) {
        channels.add(film.layers[layer].light + ".", kColourAxes, develop_layer(film, developing, layer).pixels);
    }
    if (!film.features.albedo.empty()) channels.add("albedo.", kColourAxes, develop_albedo(film, developing).pixels);
    if (!film.features.normal.empty()) channels.add("normal.", kSpaceAxes, film.features.normal);
    if (!film.features.depth_m.empty()) channels.add("depth.Z", film.features.depth_m);
    return channels;
}

}  // namespace

Expected<Done> write_exr(const std::filesystem::path& path, const Film& film, const Developing& developing,
                         const PictureTags& tags) {
    const Channels channels = collect(film, developing);
    const std::set<std::string> distinct(channels.names.begin(), channels.names.end());
    if (distinct.size() != channels.names.size()) {
        return Problem{Blame::kWrongInput, path.string() +
                                               ": two layers would have one name; no light may be called \"albedo\", "
                                               "\"normal\" or \"depth\", and none like another"};
    }
    OIIO::ImageSpec spec(film.width, film.height, static_cast<int>(channels.names.size()), OIIO::TypeDesc::HALF);
    spec.channelnames = channels.names;
    spec.attribute("oiio:ColorSpace", "Linear");  // BT.709 primaries, which is what OpenEXR means by default
    spec.attribute("compression", "zip");
    set_tags(&spec, tags);
    const std::vector<float> pixels = channels.interleaved(film.pixel_count());
    return write_exr_file(path, {{spec, OIIO::TypeDesc::FLOAT, pixels.data()}});
}

}  // namespace understudy
