#include <algorithm>
#include <array>
#include <set>

#include "film/exr_file.h"
#include "film/pending_file.h"
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

// Under OpenEXR's own names for them.
ExrNotes notes_of(const PictureTags& tags) {
    constexpr double kMillimetres = 1000.0;
    ExrNotes notes;
    notes.texts["software"] = "understudy";
    if (!tags.title.empty()) notes.texts["comments"] = tags.title;
    const auto note = [&](const char* key, double value) {
        if (value > 0.0) notes.numbers[key] = static_cast<float>(value);
    };
    note("expTime", tags.shutter_s);
    note("aperture", tags.aperture);
    note("isoSpeed", tags.iso);
    note("nominalFocalLength", tags.focal_length_m * kMillimetres);
    return notes;
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
    const std::vector<float> pixels = channels.interleaved(film.pixel_count());
    // BT.709 primaries are what OpenEXR means by default.
    const auto bytes =
        encode_exr(path, {{"", film.width, film.height, channels.names, pixels.data(), true, notes_of(tags)}});
    return bytes ? write_bytes(path, *bytes) : bytes.problems();
}

}  // namespace understudy
