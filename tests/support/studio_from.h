// A placed studio from a scene file's text, for tests.
#pragma once

#include <stdexcept>
#include <string>

#include "setup/read_setup.h"
#include "stage/studio.h"

namespace understudy {

inline Library source_library() {
    const std::filesystem::path source = UNDERSTUDY_SOURCE_DIR;
    const std::filesystem::path build = UNDERSTUDY_BUILD_DIR;
    return {source / "assets/kit", source / "assets/heads", build / "head/prepared", build / "kit"};
}

// Throws with the problems' text: a test whose scene cannot be read has failed.
template <class T>
T value_of(Expected<T> expected) {
    if (expected) return std::move(expected.value());
    std::string all;
    for (const Problem& problem : expected.problems()) all += problem.text + '\n';
    throw std::runtime_error(all);
}

inline Setup setup_from(const std::string& toml) { return value_of(parse_setup(toml, "test.toml", source_library())); }

inline Studio studio_from(const std::string& toml) {
    return value_of(place_studio(setup_from(toml), source_library()));
}

}  // namespace understudy
