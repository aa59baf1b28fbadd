// Developing a film into the file that was asked for.
#pragma once

#include <filesystem>

#include "cli/film_card.h"

namespace understudy {

// Says what could not be shown: clipped highlights, numbers that are none.
Expected<Done> deliver_picture(const std::filesystem::path& path, const Film& film, const FilmCard& card);

}  // namespace understudy
