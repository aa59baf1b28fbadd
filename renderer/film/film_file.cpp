#include <OpenImageIO/imageio.h>

#include <algorithm>
#include <exception>
#include <memory>
#include <optional>
#include <set>

#include "film/image_output.h"
#include "film/picture_file.h"
#include "film/seal.h"

namespace understudy {
namespace {

constexpr const char* kSceneText = "understudyScene";
constexpr const char* kSampleCount = "understudySamples";
constexpr const char* kPartCount = "understudyParts";
constexpr const char* kAlbedo = "feature albedo";
constexpr const char* kNormal = "feature normal";
constexpr const char* kDepth = "feature depth";

// "380-429" and so on, nm.
std::vector<std::string> band_names() {
    std::vector<std::string> names;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        names.push_back(std::to_string(static_cast<int>(kBandEdges[band])) + "-" +
                        std::to_string(static_cast<int>(kBandEdges[band + 1])));
    }
    return names;
}

std::vector<std::string> channels_of_part(const std::string& name) {
    if (name == kNormal) return {"X", "Y", "Z"};
    if (name == kDepth) return {"Z"};
    return band_names();
}

ImagePart make_part(const Film& film, const std::string& name, const void* data) {
    const std::vector<std::string> channels = channels_of_part(name);
    OIIO::ImageSpec spec(film.width, film.height, static_cast<int>(channels.size()), OIIO::TypeDesc::FLOAT);
    spec.channelnames = channels;
    spec.attribute("oiio:subimagename", name);
    spec.attribute("compression", "zip");
    return {spec, OIIO::TypeDesc::FLOAT, data};
}

std::vector<ImagePart> parts_of(const Film& film) {
    std::vector<ImagePart> parts;
    for (const FilmLayer& layer : film.layers) parts.push_back(make_part(film, layer.light, layer.pixels.data()));
    const FilmFeatures& features = film.features;
    if (!features.albedo.empty()) parts.push_back(make_part(film, kAlbedo, features.albedo.data()));
    if (!features.normal.empty()) parts.push_back(make_part(film, kNormal, features.normal.data()));
    if (!features.depth_m.empty()) parts.push_back(make_part(film, kDepth, features.depth_m.data()));
    return parts;
}

Problem not_a_film(const std::filesystem::path& path, const std::string& reason) {
    return {Blame::kWrongInput, path.string() + ": cannot be used as a film: " + reason};
}

// One part's pixels, T being as many floats as the part has channels; empty if they cannot be read.
template <class T>
std::vector<T> read_pixels(OIIO::ImageInput* input, int part) {
    const OIIO::ImageSpec& spec = input->spec();
    std::vector<T> pixels(static_cast<std::size_t>(spec.width) * static_cast<std::size_t>(spec.height));
    if (!input->read_image(part, 0, 0, spec.nchannels, OIIO::TypeDesc::FLOAT, pixels.data())) return {};
    return pixels;
}

// The film with one part more; none if its pixels cannot be read.
std::optional<Film> add_part(Film film, const std::string& name, OIIO::ImageInput* input, int part) {
    const auto read = [&](auto& place) {
        place = read_pixels<typename std::decay_t<decltype(place)>::value_type>(input, part);
        return !place.empty();
    };
    bool good = false;
    if (name == kNormal) {
        good = read(film.features.normal);
    } else if (name == kDepth) {
        good = read(film.features.depth_m);
    } else if (name == kAlbedo) {
        good = read(film.features.albedo);
    } else {
        good = read(film.layers.emplace_back(FilmLayer{name, {}}).pixels);
    }
    if (!good) return std::nullopt;
    return film;
}

// Empty if the part can be read into the film, or else why not.
std::string objection(const OIIO::ImageSpec& spec, const std::string& name, const Film& film) {
    if (spec.width != film.width || spec.height != film.height) return "its parts differ in size";
    if (name.empty()) return "a part has no name";
    if (spec.channelnames != channels_of_part(name))
        return "part \"" + name + "\" has other bands or channels than this program's";
    if (spec.format != OIIO::TypeDesc::FLOAT) return "part \"" + name + "\" is not of 32-bit floats";
    return "";
}

Expected<SavedFilm> read_parts(const std::filesystem::path& path, OIIO::ImageInput* input) {
    const OIIO::ImageSpec first = input->spec(0);
    const int parts = first.get_int_attribute(kPartCount, -1);
    const int samples = first.get_int_attribute(kSampleCount, -1);
    if (parts < 1 || samples < 0) return not_a_film(path, "it was not saved by this program");
    SavedFilm saved;
    saved.scene_text = first.get_string_attribute(kSceneText);
    saved.film.width = first.width;
    saved.film.height = first.height;
    saved.film.samples = samples;
    for (int part = 0; part < parts; ++part) {
        if (!input->seek_subimage(part, 0)) return not_a_film(path, "parts are missing at its end");
        const OIIO::ImageSpec& spec = input->spec();
        const std::string name = spec.get_string_attribute("oiio:subimagename");
        if (const std::string reason = objection(spec, name, saved.film); !reason.empty())
            return not_a_film(path, reason);
        std::optional<Film> more = add_part(std::move(saved.film), name, input, part);
        if (!more) return not_a_film(path, input->geterror());
        saved.film = std::move(*more);
    }
    return saved;
}

}  // namespace

Expected<Done> write_film(const std::filesystem::path& path, const Film& film, const std::string& scene_text) {
    std::vector<ImagePart> parts = parts_of(film);
    std::set<std::string> names;
    for (const ImagePart& part : parts) names.emplace(part.spec.get_string_attribute("oiio:subimagename"));
    if (parts.empty() || names.size() != parts.size()) {
        return Problem{Blame::kWrongInput, path.string() + ": a film needs layers, each with a name of its own"};
    }
    OIIO::ImageSpec& first = parts.front().spec;
    first.attribute(kSceneText, scene_text);
    first.attribute(kSampleCount, film.samples);
    first.attribute(kPartCount, static_cast<int>(parts.size()));
    return write_exr_file(path, parts, true);
}

Expected<SavedFilm> read_film(const std::filesystem::path& path) {
    if (const std::string reason = broken_seal(path); !reason.empty()) return not_a_film(path, reason);
    try {
        const std::unique_ptr<OIIO::ImageInput> input = OIIO::ImageInput::open(path.string());
        if (!input) return not_a_film(path, OIIO::geterror());
        if (std::string(input->format_name()) != "openexr") return not_a_film(path, "it is not an EXR file");
        return read_parts(path, input.get());
    } catch (const std::exception& error) {
        return not_a_film(path, error.what());
    }
}

}  // namespace understudy
