// What a layer of the network is made of.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace understudy {

// 3 × 3, with a rectifier behind it.
struct Convolution {
    int out = 0;
    int in = 0;
    std::vector<float> weights;  // out, in, row, column; the last goes first
    std::vector<float> biases;   // out
};

using Convolutions = std::map<std::string, Convolution>;

}  // namespace understudy
