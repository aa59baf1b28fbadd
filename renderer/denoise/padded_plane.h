// One number a pixel, with room round the picture, so that a filter may look beyond its edge without asking; four
// pixels of a row at a time.
#pragma once

#include <cstring>
#include <vector>

#include "base/four.h"

namespace understudy {

class PaddedPlane {
  public:
    // Filled with `outside`.
    PaddedPlane(int width, int height, int reach, float outside = 0.0F)
        : reach_(reach),
          stride_((width + 3) / 4 * 4 + 2 * reach),
          values_(static_cast<std::size_t>(stride_) * static_cast<std::size_t>(height + 2 * reach), outside) {}

    // x and y from −reach on.
    float& at(int x, int y) { return values_[index(x, y)]; }
    float at(int x, int y) const { return values_[index(x, y)]; }
    // Of this pixel and the three to its right.
    Four four(int x, int y) const {
        Four v;
        std::memcpy(&v, &values_[index(x, y)], sizeof v);
        return v;
    }
    void set_four(int x, int y, const Four& v) { std::memcpy(&values_[index(x, y)], &v, sizeof v); }

  private:
    std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y + reach_) * static_cast<std::size_t>(stride_) +
               static_cast<std::size_t>(x + reach_);
    }

    int reach_;
    int stride_;
    std::vector<float> values_;
};

}  // namespace understudy
