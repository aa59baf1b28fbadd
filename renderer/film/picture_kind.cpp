#include <algorithm>
#include <cctype>

#include "film/picture_file.h"

namespace understudy {

Expected<PictureKind> picture_kind(const std::filesystem::path& path) {
    std::string ending = path.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    if (ending == ".png") return PictureKind::kPng;
    if (ending == ".jpg" || ending == ".jpeg") return PictureKind::kJpeg;
    if (ending == ".exr") return PictureKind::kExr;
    return Problem{Blame::kWrongInput,
                   path.string() + ": unknown kind of picture \"" + ending + "\"; expected .png, .jpg, .jpeg or .exr"};
}

}  // namespace understudy
