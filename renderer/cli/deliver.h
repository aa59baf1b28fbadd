// Developing a film into the file that was asked for.
#pragma once

#include <filesystem>

#include "cli/finish.h"
#include "rehearsal/film_card.h"

namespace understudy {

// Says what could not be shown: clipped highlights, numbers that are none.
// An .exr is left as it was traced: its layers add up.
Expected<Done> deliver_picture(const std::filesystem::path& path, const Film& film, const FilmCard& card,
                               const Finisher& finisher);

// The same words for a picture that was written before.
void tell_picture(const std::filesystem::path& path, const Picture& picture);

}  // namespace understudy
