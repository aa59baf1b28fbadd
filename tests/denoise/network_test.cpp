// The network's arithmetic against convolutions, pooling and doubling written out plainly.
#include <array>
#include <random>
#include <string>
#include <tuple>
#include <vector>

#include <gtest/gtest.h>

#include "denoise/network.h"
#include "denoise/transfer.h"

namespace understudy {
namespace {

struct Planes {
    int channels = 0, width = 0, height = 0;
    std::vector<float> values;
    float at(int c, int x, int y) const {
        if (x < 0 || y < 0 || x >= width || y >= height) return 0.0F;
        const int place = (c * height + y) * width + x;
        return values[static_cast<std::size_t>(place)];
    }
};

Planes convolved(const Planes& in, const Weights& weights, const std::string& name) {
    const Tensor& kernel = weights.at(name + ".weight");
    Planes out{static_cast<int>(kernel.sizes[0]), in.width, in.height, {}};
    for (int o = 0; o < out.channels; ++o) {
        for (int y = 0; y < in.height; ++y) {
            for (int x = 0; x < in.width; ++x) {
                float sum = weights.at(name + ".bias").values[static_cast<std::size_t>(o)];
                for (int i = 0; i < in.channels; ++i) {
                    for (int k = 0; k < 9; ++k) {
                        const int w = (o * in.channels + i) * 9 + k;
                        sum += kernel.values[static_cast<std::size_t>(w)] * in.at(i, x + k % 3 - 1, y + k / 3 - 1);
                    }
                }
                out.values.push_back(std::max(0.0F, sum));
            }
        }
    }
    return out;
}

Planes halved(const Planes& in) {
    Planes out{in.channels, in.width / 2, in.height / 2, {}};
    for (int c = 0; c < out.channels; ++c) {
        for (int y = 0; y < out.height; ++y) {
            for (int x = 0; x < out.width; ++x) {
                float most = in.at(c, 2 * x, 2 * y);
                for (int k = 1; k < 4; ++k) most = std::max(most, in.at(c, 2 * x + k % 2, 2 * y + k / 2));
                out.values.push_back(most);
            }
        }
    }
    return out;
}

Planes doubled_beside(const Planes& in, const Planes& like) {
    Planes out{in.channels + like.channels, like.width, like.height, {}};
    for (int c = 0; c < in.channels; ++c) {
        for (int y = 0; y < out.height; ++y) {
            for (int x = 0; x < out.width; ++x) out.values.push_back(in.at(c, x / 2, y / 2));
        }
    }
    out.values.insert(out.values.end(), like.values.begin(), like.values.end());
    return out;
}

// Few channels, so that the plain way takes no time; the widths differ, so that none can be taken for another.
Weights small_weights(unsigned seed) {
    constexpr int kIn = 9;
    const std::vector<std::tuple<std::string, int, int>> shapes{
        {"enc_conv0", kIn, 4}, {"enc_conv1", 4, 5},   {"enc_conv2", 5, 6},   {"enc_conv3", 6, 7},
        {"enc_conv4", 7, 8},   {"enc_conv5a", 8, 9},  {"enc_conv5b", 9, 10}, {"dec_conv4a", 17, 8},
        {"dec_conv4b", 8, 7},  {"dec_conv3a", 13, 6}, {"dec_conv3b", 6, 5},  {"dec_conv2a", 10, 6},
        {"dec_conv2b", 6, 4},  {"dec_conv1a", 13, 6}, {"dec_conv1b", 6, 5},  {"dec_conv0", 5, 3}};
    std::mt19937 random(seed);
    Weights weights;
    for (const auto& [name, in, out] : shapes) {
        std::normal_distribution<float> spread(0.0F, std::sqrt(2.0F / (9.0F * static_cast<float>(in))));
        Tensor kernel{{static_cast<std::uint32_t>(out), static_cast<std::uint32_t>(in), 3, 3}, "oihw", {}};
        for (int i = 0; i < 9 * in * out; ++i) kernel.values.push_back(spread(random));
        Tensor bias{{static_cast<std::uint32_t>(out)}, "x", {}};
        for (int i = 0; i < out; ++i) bias.values.push_back(0.1F * spread(random) + 0.05F);
        weights[name + ".weight"] = kernel;
        weights[name + ".bias"] = bias;
    }
    return weights;
}

// The order of the convolutions and what is joined to what: as training/model.py of Open Image Denoise has them
// (Apache-2.0), told from its description.
Planes plainly(const Planes& input, const Weights& weights) {
    const auto by = [&](const Planes& in, const char* name) { return convolved(in, weights, name); };
    const Planes level1 = halved(by(by(input, "enc_conv0"), "enc_conv1"));
    const Planes level2 = halved(by(level1, "enc_conv2"));
    const Planes level3 = halved(by(level2, "enc_conv3"));
    const Planes level4 = halved(by(level3, "enc_conv4"));
    Planes x = by(by(level4, "enc_conv5a"), "enc_conv5b");
    x = by(by(doubled_beside(x, level3), "dec_conv4a"), "dec_conv4b");
    x = by(by(doubled_beside(x, level2), "dec_conv3a"), "dec_conv3b");
    x = by(by(doubled_beside(x, level1), "dec_conv2a"), "dec_conv2b");
    return by(by(by(doubled_beside(x, input), "dec_conv1a"), "dec_conv1b"), "dec_conv0");
}

// The high ones go through in two strips and in three, of which the last has fewer rows to itself; the first size comes
// again when all have been through the same room.
TEST(Network, IsTheConvolutionsWrittenOut) {
    const Weights weights = small_weights(7);
    const auto network = Network::of(weights, "weights");
    ASSERT_TRUE(network);
    ASSERT_EQ(network->inputs(), 9);
    std::mt19937 random(11);
    std::uniform_real_distribution<float> even(0.0F, 1.0F);
    for (const auto& [width, height] : {std::pair(48, 32), std::pair(32, 272), std::pair(32, 464), std::pair(48, 32)}) {
        Planes input{9, width, height, {}};
        for (int i = 0; i < 9 * width * height; ++i) input.values.push_back(even(random));
        const Planes wanted = plainly(input, weights);
        const std::vector<float> told = network->run(input.values, width, height);
        ASSERT_EQ(told.size(), wanted.values.size());
        float most = 0.0F;
        for (const float value : wanted.values) most = std::max(most, value);
        EXPECT_GT(most, 0.01F) << "or this would prove nothing";
        for (std::size_t i = 0; i < told.size(); ++i) {
            ASSERT_NEAR(told[i], wanted.values[i], 1e-4F * most) << height << " rows, number " << i;
        }
    }
}

TEST(Network, WeightsOfAnotherShapeAreAProblem) {
    Weights narrow = small_weights(7);
    narrow["dec_conv2a.weight"].sizes = {6, 9, 3, 3};
    narrow["dec_conv2a.weight"].values.resize(std::size_t{6} * 9 * 9);
    EXPECT_NE(Network::of(narrow, "w.tza").problems().front().text.find("does not fit together"), std::string::npos);
    Weights without = small_weights(7);
    without.erase("enc_conv3.bias");
    EXPECT_NE(Network::of(without, "w.tza").problems().front().text.find("w.tza: has no enc_conv3"), std::string::npos);
    Weights flat = small_weights(7);
    flat["enc_conv0.weight"].sizes = {4, 9, 1, 9};
    EXPECT_NE(Network::of(flat, "w.tza").problems().front().text.find("enc_conv0 has another shape"),
              std::string::npos);
}

// The curve has three pieces: they meet, rise, and are undone by the inverse.
TEST(Transfer, RisesWithoutAStepAndComesBack) {
    float before = -1.0F;
    for (float light = 1e-8F; light < 60000.0F; light *= 1.01F) {
        const float code = coded(light);
        EXPECT_GT(code, before) << light;
        EXPECT_NEAR(decoded(code) / light, 1.0F, 2e-4F) << light;
        before = code;
    }
    EXPECT_EQ(coded(0.0F), 0.0F);
    EXPECT_EQ(decoded(0.0F), 0.0F);
    EXPECT_NEAR(coded(kBrightestCoded), 1.0F, 1e-6F);
    for (const float at : {perceptual::kFirst, perceptual::kSecond}) {
        EXPECT_NEAR(coded(at * 1.000001F), coded(at * 0.999999F), 1e-4F) << at;
    }
    EXPECT_EQ(decoded(-0.5F), 0.0F);
}

}  // namespace
}  // namespace understudy
