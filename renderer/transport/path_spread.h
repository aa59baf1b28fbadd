// How many paths each tile takes in a pass: more where the picture is noisy, fewer where they are dear.
//
// The least noise for all the work comes of counts in proportion to the root of the noise over the cost (Neyman's
// optimum allocation, 1934: https://doi.org/10.2307/2342192). What a pass brings weighs the same in every tile, by the
// pass's mean count, and never by the tile's own: so the picture is right on the mean although the counts follow what
// was found before. (Were all of a tile's paths weighed alike, a rare bright one would call for more paths and be
// thinned out by them.)
//
// Noise and cost are counted, not timed: the same for any number of threads.
#pragma once

#include <cstddef>
#include <vector>

namespace understudy {

class PathSpread {
  public:
    // pixels: of each tile.
    explicit PathSpread(std::vector<std::size_t> pixels);

    // Of a tile's pixels in this pass: the first path's number, and how many.
    struct Share {
        int first = 0;
        int count = 0;
    };
    const Share& operator[](std::size_t tile) const { return shares_[tile]; }

    // The next pass, of so many paths a pixel on the mean: of so much work, that is. Evenly until all tiles have told
    // what they found.
    void plan(int mean);

    // From a tile's own thread. noise: the squared difference of a path to the mean, over the squared light, as a
    // pixel's mean; work: of the whole tile, in this pass, in rays.
    void learn(std::size_t tile, double noise, double work);

  private:
    struct Found {
        double paths = 0.0;
        double noise = 0.0;  // times paths
        double work = 0.0;
    };
    bool knows() const;
    std::vector<int> counts_by_noise(int mean) const;

    std::vector<std::size_t> pixels_;
    std::vector<Found> found_;
    std::vector<Share> shares_;
};

}  // namespace understudy
