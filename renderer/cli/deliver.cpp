#include "cli/deliver.h"

#include <fmt/format.h>

namespace understudy {

Expected<Done> deliver_picture(const std::filesystem::path& path, const Film& film, const FilmCard& card,
                               const Finisher& finisher) {
    const auto kind = picture_kind(path);
    if (!kind) return kind.problems();
    const Developing developing = developing_of(card);
    if (*kind == PictureKind::kExr) return write_exr(path, film, developing, tags_of(card));
    const Picture picture = finisher.finish(film, developing);
    auto written = write_display_picture(path, *kind, picture, tags_of(card));
    if (!written) return written;
    tell_picture(path, picture);
    return Done{};
}

void tell_picture(const std::filesystem::path& path, const Picture& picture) {
    const double clipped = clipped_share(picture);
    fmt::print("{}: {} × {}", path.string(), picture.width, picture.height);
    if (clipped >= 0.0005) fmt::print(", {:.1f} % of it brighter than white", 100.0 * clipped);
    fmt::print("\n");
}

}  // namespace understudy
