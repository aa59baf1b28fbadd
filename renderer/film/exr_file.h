// OpenEXR files of one part or several: the one place that hands pixels to that library.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

// What a part's header says beside the size and the channels.
struct ExrNotes {
    std::map<std::string, std::string> texts{};
    std::map<std::string, float> numbers{};
    std::map<std::string, int> counts{};
};

struct ExrPart {
    std::string name;  // "": a file of this part alone, which needs none
    int width = 0;
    int height = 0;
    std::vector<std::string> channels;
    const float* pixels = nullptr;  // the channels of a pixel side by side, row by row from the top left
    bool as_half = false;           // half floats; else 32 bits, exactly
    ExrNotes notes{};
};

// Loses nothing but what half floats do. Needs a part at least; their names have to differ.
Expected<std::vector<unsigned char>> encode_exr(const std::filesystem::path& path, const std::vector<ExrPart>& parts);

struct ReadExrPart {
    std::string name;
    int width = 0;
    int height = 0;
    std::vector<std::string> channels;  // in the order in which they were written
    bool as_half = false;
    ExrNotes notes;
    std::vector<float> pixels;
};

// Every part; why not, where a file is none of OpenEXR's or has other pixels than floats.
struct ReadExr {
    std::vector<ReadExrPart> parts;
    std::string trouble;
};
ReadExr read_exr(const std::filesystem::path& path);

}  // namespace understudy
