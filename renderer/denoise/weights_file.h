// Trained weights from a TZA file, the container in which Open Image Denoise publishes its networks (its core/tza.cpp,
// Apache-2.0, describes it): a table of named tensors, each with its sizes, layout, type and place.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

struct Tensor {
    std::vector<std::uint32_t> sizes;  // "oihw" for a convolution's kernels: out, in, height, width; "x" for its biases
    std::string layout;
    std::vector<float> values;
};

using Weights = std::map<std::string, Tensor>;

// A file that is missing, cut short, of another kind or version, or whose table points outside it is a problem that
// says so.
Expected<Weights> read_weights(const std::filesystem::path& path);

}  // namespace understudy
