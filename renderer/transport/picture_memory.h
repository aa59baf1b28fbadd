// What the sitter answered to the first few paths of every pixel, so that light can be traced along them again without
// asking: see stage/ray_memory.h.
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

#include "stage/ray_memory.h"

namespace understudy {

class PictureMemory {
  public:
    // So many paths a pixel are remembered: more would take memory, and are only asked for when there is time.
    static constexpr int kSamples = 4;

    // Forgets everything: another sitter, or another place to see it from.
    void clear(std::size_t tile_count) {
        tiles_.clear();
        tiles_.resize(tile_count);
    }
    // Each tile by one thread at a time.
    RayMemory& of_tile(std::size_t index) {
        if (!tiles_[index]) tiles_[index] = std::make_unique<RayMemory>();
        return *tiles_[index];
    }
    std::size_t bytes() const {
        std::size_t sum = 0;
        for (const auto& tile : tiles_) sum += tile ? tile->bytes() : 0;
        return sum;
    }

  private:
    std::vector<std::unique_ptr<RayMemory>> tiles_;
};

}  // namespace understudy
