#include "film/enlarge.h"

#include <algorithm>

#include <glm/common.hpp>

namespace understudy {

Picture enlarged(const Picture& thin, int every, int width, int height) {
    Picture whole{width, height, {}};
    whole.pixels.reserve(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    const auto pixel = [&](int x, int y) {
        const int column = std::min(x, thin.width - 1);
        const int row = std::min(y, thin.height - 1);
        return thin.pixels[static_cast<std::size_t>(row) * static_cast<std::size_t>(thin.width) +
                           static_cast<std::size_t>(column)];
    };
    const auto share = [&](int place) { return static_cast<float>(place % every) / static_cast<float>(every); };
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const int left = x / every;
            const int top = y / every;
            const Vec3 above = glm::mix(pixel(left, top), pixel(left + 1, top), share(x));
            const Vec3 below = glm::mix(pixel(left, top + 1), pixel(left + 1, top + 1), share(x));
            whole.pixels.push_back(glm::mix(above, below, share(y)));
        }
    }
    return whole;
}

}  // namespace understudy
