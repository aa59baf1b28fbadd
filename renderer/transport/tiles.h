// A picture cut into squares, each traced by one thread.
#pragma once

#include <algorithm>
#include <cstddef>

namespace understudy {

struct Tile {
    int left = 0, top = 0;      // its first pixel
    int right = 0, bottom = 0;  // past its last
    std::size_t pixel_count() const {
        return static_cast<std::size_t>(right - left) * static_cast<std::size_t>(bottom - top);
    }
};

class Tiles {
  public:
    Tiles(int width, int height) : width_(width), height_(height) {}

    std::size_t count() const { return static_cast<std::size_t>(across()) * static_cast<std::size_t>(down()); }
    Tile operator[](std::size_t index) const {
        const auto i = static_cast<int>(index);
        const int left = kSide * (i % across());
        const int top = kSide * (i / across());
        return {left, top, std::min(left + kSide, width_), std::min(top + kSide, height_)};
    }

  private:
    static constexpr int kSide = 16;
    int across() const { return (width_ + kSide - 1) / kSide; }
    int down() const { return (height_ + kSide - 1) / kSide; }

    int width_, height_;
};

}  // namespace understudy
