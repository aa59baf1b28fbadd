#pragma once

#include <string>

namespace understudy {

// Where in a file a thing was said, for messages about it.
struct SourcePlace {
    std::string file;
    int line = 0;  // from 1; 0: it was not said in a file, and `file` holds in words where it was
    int column = 0;
};

// "file:line:column", as messages begin.
inline std::string place_text(const SourcePlace& place) {
    if (place.line == 0) return place.file;
    return place.file + ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
}

}  // namespace understudy
