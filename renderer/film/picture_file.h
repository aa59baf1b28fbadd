// Pictures and films on disk. A file appears whole or not at all: it is written beside its place, then renamed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"
#include "film/develop.h"
#include "film/display_picture.h"
#include "setup/setup.h"
#include "transport/film.h"

namespace understudy {

// What is written into the file besides the pixels.
struct PictureTags {
    std::string title;
    double aperture = 0.0;
    double shutter_s = 0.0;
    double iso = 0.0;
    double focal_length_m = 0.0;
};

enum class PictureKind { kPng, kJpeg, kExr };

// From the name's ending; an unknown one is a problem that lists those known.
Expected<PictureKind> picture_kind(const std::filesystem::path& path);

// Before tracing for minutes: can a file be made here? A folder, a missing folder or no permission is a problem.
Expected<Done> check_writable(const std::filesystem::path& path);

// How a PNG is packed: quickly is five times as quick, and the file half as large again.
enum class Packing { kSmall, kQuick };

// 8-bit sRGB, tagged as such, with the camera's settings as EXIF.
Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const DisplayPicture& picture,
                                     const PictureTags& tags, Packing packing = Packing::kSmall);
Expected<Done> write_display_picture(const std::filesystem::path& path, PictureKind kind, const Picture& picture,
                                     const PictureTags& tags);

// Linear half floats: R G B, then "<light>.R" and so on of each light, albedo.R/G/B, normal.X/Y/Z, depth.Z (metres). No
// light may be called "albedo", "normal" or "depth".
Expected<Done> write_exr(const std::filesystem::path& path, const Film& film, const Developing& developing,
                         const PictureTags& tags);

// A film as a multi-part EXR, a part a layer and a channel a band, with the scene file's text and a checksum at its
// end. Read back exactly; a file that was changed, cut short or saved by another program is a problem.
Expected<Done> write_film(const std::filesystem::path& path, const Film& film, const std::string& scene_text);

struct SavedFilm {
    Film film;
    std::string scene_text;
};
Expected<SavedFilm> read_film(const std::filesystem::path& path);

}  // namespace understudy
