#include "denoise/learned.h"

#include <algorithm>
#include <cmath>

#include <tbb/parallel_for.h>

#include "denoise/transfer.h"

namespace understudy {

namespace {

int rounded_up(int size) { return (size + Network::kStep - 1) / Network::kStep * Network::kStep; }

// A part of the picture, on the network's grid; what of it is kept lies inside.
struct Tile {
    int x = 0, y = 0, width = 0, height = 0;                      // that is worked on
    int kept_x = 0, kept_y = 0, kept_width = 0, kept_height = 0;  // of the picture
};

struct Span {
    int from, size, kept_from, kept_size;
};

// Along one side: as few parts as there can be, each with the network's reach round what is kept of it.
std::vector<Span> spans(int length, int largest) {
    if (length <= largest) return {{0, length, 0, length}};
    const int kept = std::max(Network::kStep, largest - 2 * Network::kReach) / Network::kStep * Network::kStep;
    std::vector<Span> parts;
    for (int at = 0; at < length; at += kept) {
        const int from = std::max(0, at - Network::kReach);
        const int to = std::min(length, at + kept + Network::kReach);
        parts.push_back({from, to - from, at, std::min(kept, length - at)});
    }
    return parts;
}

std::vector<Tile> tiles_of(const Picture& picture, int largest) {
    std::vector<Tile> tiles;
    for (const Span& y : spans(picture.height, largest)) {
        for (const Span& x : spans(picture.width, largest)) {
            tiles.push_back({x.from, y.from, x.size, y.size, x.kept_from, y.kept_from, x.kept_size, y.kept_size});
        }
    }
    return tiles;
}

// The channels in the order of the training: light, albedo, normals. Beyond the picture there is nothing.
std::vector<float> planes_of(const Tile& tile, int inputs, const Picture& picture, const Features& features) {
    const auto width = static_cast<std::size_t>(rounded_up(tile.width));
    const auto height = static_cast<std::size_t>(rounded_up(tile.height));
    std::vector<float> planes(static_cast<std::size_t>(inputs) * width * height, 0.0F);
    const auto put = [&](std::size_t channel, std::size_t at, const Vec3& value) {
        for (std::size_t c = 0; c < 3; ++c) {
            planes[(channel + c) * width * height + at] = value[static_cast<glm::length_t>(c)];
        }
    };
    tbb::parallel_for(0, tile.height, [&](int v) {
        for (int u = 0; u < tile.width; ++u) {
            const int place = (tile.y + v) * picture.width + tile.x + u;
            const auto from = static_cast<std::size_t>(place);
            const std::size_t at = static_cast<std::size_t>(v) * width + static_cast<std::size_t>(u);
            const Vec3& light = picture.pixels[from];
            if (is_number(light)) put(0, at, {coded(light.x), coded(light.y), coded(light.z)});
            if (inputs >= 6) put(3, at, glm::clamp(features.albedo.pixels[from], 0.0F, 1.0F));
            if (inputs >= 9) put(6, at, 0.5F * features.normals[from] + 0.5F);
        }
    });
    return planes;
}

}  // namespace

Picture denoise_learned(const Network& network, const Picture& picture, const Features& features, int largest_tile) {
    Picture result = picture;
    for (const Tile& tile : tiles_of(picture, largest_tile)) {
        const int width = rounded_up(tile.width);
        const int height = rounded_up(tile.height);
        const std::vector<float> planes =
            network.run(planes_of(tile, network.inputs(), picture, features), width, height);
        const std::size_t plane = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
        tbb::parallel_for(0, tile.kept_height, [&](int v) {
            for (int u = 0; u < tile.kept_width; ++u) {
                const int x = tile.kept_x + u;
                const int y = tile.kept_y + v;
                const int to = y * picture.width + x;
                Vec3& pixel = result.pixels[static_cast<std::size_t>(to)];
                if (!is_number(pixel)) continue;
                const auto at = static_cast<std::size_t>((y - tile.y) * width + x - tile.x);
                pixel = {decoded(planes[at]), decoded(planes[plane + at]), decoded(planes[2 * plane + at])};
            }
        });
    }
    return result;
}

}  // namespace understudy
