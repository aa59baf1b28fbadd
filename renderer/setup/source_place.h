#pragma once

#include <string>

namespace understudy {

// Where in a file a thing was said, for messages about it.
struct SourcePlace {
    std::string file;
    int line = 0;
    int column = 0;
};

}  // namespace understudy
