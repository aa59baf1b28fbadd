#include "spectrum/band_weights.h"

#include <cmath>

namespace understudy {
namespace {

using Shares = std::array<double, kBandCount>;

double width(std::size_t band) { return static_cast<double>(kBandEdges[band + 1] - kBandEdges[band]); }

void add(Shares& to, const Shares& shares, double factor) {
    for (std::size_t band = 0; band < kBandCount; ++band) to[band] += factor * shares[band];
}

// How much of each band's mean is in the value at an inner edge: on the straight line between the middles of the two
// bands beside it.
Shares at_edge(std::size_t edge) {
    Shares shares{};
    const double both = width(edge - 1) + width(edge);
    shares[edge - 1] = width(edge) / both;
    shares[edge] = width(edge - 1) / both;
    return shares;
}

// The same at the two ends of a band. Outermost, where there is no neighbour, the course is straight.
struct BandEnds {
    Shares low{};
    Shares high{};
};

BandEnds ends_of(std::size_t band) {
    BandEnds ends;
    if (band > 0) ends.low = at_edge(band);
    if (band + 1 < kBandCount) ends.high = at_edge(band + 1);
    if (band == 0) {
        ends.low[band] = 2.0;
        add(ends.low, ends.high, -1.0);
    }
    if (band + 1 == kBandCount) {
        ends.high[band] = 2.0;
        add(ends.high, ends.low, -1.0);
    }
    return ends;
}

// ∫ response · (what each band's mean adds to the parabola) over one band. The response is straight between its 5 nm
// rows and the edges are whole nanometres, so Gauss's two points a nanometre are exact for the cubic.
Shares weights_within(const Spectrum& response, std::size_t band) {
    const BandEnds ends = ends_of(band);
    const double half_gap = 0.5 / std::sqrt(3.0);
    double from_low = 0.0;
    double from_high = 0.0;
    double from_mean = 0.0;
    const auto first = static_cast<int>(kBandEdges[band]);
    const auto last = static_cast<int>(kBandEdges[band + 1]);
    for (int whole = first; whole < last; ++whole) {
        for (const double offset : {0.5 - half_gap, 0.5 + half_gap}) {
            const double t = (whole - first + offset) / width(band);
            const double weight = 0.5 * static_cast<double>(response.at(static_cast<float>(whole + offset)));
            const double bulge = 3.0 * t * (1.0 - t);  // low·(1−t) + high·t + 2·bulge·(mean − (low + high)/2)
            from_low += weight * (1.0 - t - bulge);
            from_high += weight * (t - bulge);
            from_mean += weight * 2.0 * bulge;
        }
    }
    Shares shares{};
    shares[band] = from_mean;
    add(shares, ends.low, from_low);
    add(shares, ends.high, from_high);
    return shares;
}

}  // namespace

Bands band_weights(const Spectrum& response) {
    Shares sum{};
    for (std::size_t band = 0; band < kBandCount; ++band) add(sum, weights_within(response, band), 1.0);
    Bands weights{};
    for (std::size_t band = 0; band < kBandCount; ++band) weights[band] = static_cast<float>(sum[band]);
    return weights;
}

}  // namespace understudy
