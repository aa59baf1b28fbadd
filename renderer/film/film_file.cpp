#include <cstring>
#include <optional>
#include <set>

#include "film/exr_file.h"
#include "film/pending_file.h"
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
constexpr const char* kGlints = "feature glints ";  // and the number of the layer

// "380-429" and so on, nm.
std::vector<std::string> band_names() {
    std::vector<std::string> names;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        names.push_back(std::to_string(static_cast<int>(kBandEdges[band])) + "-" +
                        std::to_string(static_cast<int>(kBandEdges[band + 1])));
    }
    return names;
}

bool is_glints(const std::string& name) { return name.starts_with(kGlints); }

std::vector<std::string> channels_of_part(const std::string& name) {
    if (name == kNormal) return {"X", "Y", "Z"};
    if (name == kDepth) return {"Z"};
    if (is_glints(name)) return {"Y"};
    return band_names();
}

template <class Pixel>
ExrPart make_part(const Film& film, const std::string& name, const std::vector<Pixel>& pixels) {
    return {name, film.width, film.height, channels_of_part(name), reinterpret_cast<const float*>(pixels.data())};
}

std::vector<ExrPart> parts_of(const Film& film) {
    std::vector<ExrPart> parts;
    for (const FilmLayer& layer : film.layers) parts.push_back(make_part(film, layer.light, layer.pixels));
    const FilmFeatures& features = film.features;
    if (!features.albedo.empty()) parts.push_back(make_part(film, kAlbedo, features.albedo));
    if (!features.normal.empty()) parts.push_back(make_part(film, kNormal, features.normal));
    if (!features.depth_m.empty()) parts.push_back(make_part(film, kDepth, features.depth_m));
    for (std::size_t l = 0; l < film.layers.size(); ++l) {
        const std::vector<float>& glints = film.layers[l].glints;
        if (!glints.empty()) parts.push_back(make_part(film, kGlints + std::to_string(l), glints));
    }
    return parts;
}

Problem not_a_film(const std::filesystem::path& path, const std::string& reason) {
    return {Blame::kWrongInput, path.string() + ": cannot be used as a film: " + reason};
}

// Pixel being as many floats as the part has channels.
template <class Pixel>
void take_pixels(const ReadExrPart& part, std::vector<Pixel>& pixels) {
    pixels.resize(part.pixels.size() * sizeof(float) / sizeof(Pixel));
    std::memcpy(static_cast<void*>(pixels.data()), part.pixels.data(), pixels.size() * sizeof(Pixel));
}

// They come after all layers. None: there is no such layer.
std::optional<std::size_t> layer_of_glints(const std::string& name, const Film& film) {
    for (std::size_t l = 0; l < film.layers.size(); ++l) {
        if (name == kGlints + std::to_string(l)) return l;
    }
    return std::nullopt;
}

void add_part(const ReadExrPart& part, Film& film) {
    if (part.name == kNormal) {
        take_pixels(part, film.features.normal);
    } else if (part.name == kDepth) {
        take_pixels(part, film.features.depth_m);
    } else if (part.name == kAlbedo) {
        take_pixels(part, film.features.albedo);
    } else if (const auto layer = layer_of_glints(part.name, film)) {
        take_pixels(part, film.layers[*layer].glints);
    } else {
        take_pixels(part, film.layers.emplace_back(FilmLayer{part.name, {}}).pixels);
    }
}

// Empty if the part can be taken into the film, or else why not.
std::string objection(const ReadExrPart& part, const Film& film) {
    if (part.width != film.width || part.height != film.height) return "its parts differ in size";
    if (part.name.empty()) return "a part has no name";
    if (part.channels != channels_of_part(part.name)) {
        return "part \"" + part.name + "\" has other bands or channels than this program's";
    }
    if (is_glints(part.name) && !layer_of_glints(part.name, film)) {
        return "part \"" + part.name + "\" belongs to no light before it";
    }
    if (part.as_half) return "part \"" + part.name + "\" is not of 32-bit floats";
    return "";
}

int count_in(const ExrNotes& notes, const char* key) {
    const auto found = notes.counts.find(key);
    return found == notes.counts.end() ? -1 : found->second;
}

Expected<SavedFilm> film_of(const std::filesystem::path& path, const std::vector<ReadExrPart>& parts) {
    const ReadExrPart& first = parts.front();
    const int samples = count_in(first.notes, kSampleCount);
    const auto text = first.notes.texts.find(kSceneText);
    if (count_in(first.notes, kPartCount) < 1 || samples < 0 || text == first.notes.texts.end()) {
        return not_a_film(path, "it was not saved by this program");
    }
    if (count_in(first.notes, kPartCount) != static_cast<int>(parts.size())) {
        return not_a_film(path, "parts are missing at its end");
    }
    SavedFilm saved;
    saved.scene_text = text->second;
    saved.film.width = first.width;
    saved.film.height = first.height;
    saved.film.samples = samples;
    saved.film.features.samples = samples;
    for (const ReadExrPart& part : parts) {
        if (const std::string reason = objection(part, saved.film); !reason.empty()) return not_a_film(path, reason);
        add_part(part, saved.film);
    }
    return saved;
}

}  // namespace

Expected<Done> write_film(const std::filesystem::path& path, const Film& film, const std::string& scene_text) {
    std::vector<ExrPart> parts = parts_of(film);
    std::set<std::string> names;
    for (const ExrPart& part : parts) names.insert(part.name);
    if (parts.empty() || names.size() != parts.size()) {
        return Problem{Blame::kWrongInput, path.string() + ": a film needs layers, each with a name of its own"};
    }
    ExrNotes& notes = parts.front().notes;
    notes.texts[kSceneText] = scene_text;
    notes.counts[kSampleCount] = film.samples;
    notes.counts[kPartCount] = static_cast<int>(parts.size());
    auto bytes = encode_exr(path, parts);
    if (!bytes) return bytes.problems();
    const std::string seal = seal_of(*bytes);
    bytes->insert(bytes->end(), seal.begin(), seal.end());
    return write_bytes(path, *bytes);
}

Expected<SavedFilm> read_film(const std::filesystem::path& path) {
    if (const std::string reason = broken_seal(path); !reason.empty()) return not_a_film(path, reason);
    const ReadExr read = read_exr(path);
    if (read.parts.empty() || !read.trouble.empty()) return not_a_film(path, read.trouble);
    return film_of(path, read.parts);
}

}  // namespace understudy
