// What is wrong with the text of an .obj file, with the line it stands on, before a library reads it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/expected.h"

namespace understudy {

inline constexpr std::size_t kMostObjFaces = 5'000'000;
inline constexpr std::size_t kMostObjBytes = 2'000'000'000;

// `name` is the file as messages call it.
Expected<Done> check_obj(std::string_view text, const std::string& name);

}  // namespace understudy
