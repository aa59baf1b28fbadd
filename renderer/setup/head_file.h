// A head of the library as its TOML file says it: what the face is like, and the skin.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "base/expected.h"
#include "scatter/iris_colour.h"
#include "setup/face_settings.h"
#include "setup/hair_settings.h"

namespace understudy {

// By how much each shape of the head package is taken: 1 is the whole of it.
using ShapeAmounts = std::map<std::string, double>;

struct HeadFile {
    std::string sitter;     // who this is, in a few words
    FaceSettings face;      // age, sex and ancestry are there
    ShapeAmounts shapes;    // on top of the face
    double melanin = 0.02;  // volume fraction of melanosomes in the epidermis, 0 … 0.5
    HairSettings hair;
    double blood = 0.02;  // volume fraction of blood in the dermis, 0 … 0.2
    double lids = 1.0;    // how far the eyes are open, of what is natural, 0 … kWidestLids
    IrisColour iris = IrisColour::kBrown;
};

// All problems of the file in one go, each with its line and column.
Expected<HeadFile> read_head_file(const std::filesystem::path& path);

}  // namespace understudy
