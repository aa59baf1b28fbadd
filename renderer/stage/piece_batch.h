// Sixteen pieces of hairs at once against one ray, each a ribbon that faces the ray: straight between two points, as
// wide as they say, with round ends.
#pragma once

#include "base/wide.h"
#include "sitter/strands.h"

namespace understudy {

// The points of sixteen pieces, their numbers side by side.
struct WidePoints {
    Wide3 place;
    Wide radius{};

    // pieces: the number of each one's point.
    static WidePoints of(const StrandPoint* points, const std::array<std::uint32_t, kLanes>& pieces) {
        std::array<Quad, kLanes> read;
        for (std::size_t i = 0; i < kLanes; ++i) __builtin_memcpy(&read[i], points + pieces[i], sizeof(Quad));
        const auto every_fourth = [&](std::size_t i) { return joined(read[i], read[i + 4], read[i + 8], read[i + 12]); };
        const Wide a = every_fourth(0);
        const Wide b = every_fourth(1);
        const Wide c = every_fourth(2);
        const Wide d = every_fourth(3);
        const Wide ab_xy = by_fours<0, 16, 1, 17>(a, b);
        const Wide cd_xy = by_fours<0, 16, 1, 17>(c, d);
        const Wide ab_zr = by_fours<2, 18, 3, 19>(a, b);
        const Wide cd_zr = by_fours<2, 18, 3, 19>(c, d);
        return {{by_fours<0, 1, 16, 17>(ab_xy, cd_xy), by_fours<2, 3, 18, 19>(ab_xy, cd_xy),
                 by_fours<0, 1, 16, 17>(ab_zr, cd_zr)},
                by_fours<2, 3, 18, 19>(ab_zr, cd_zr)};
    }

  private:
    using Quad = float __attribute__((vector_size(16)));
    static_assert(sizeof(StrandPoint) == sizeof(Quad));

    static Wide joined(const Quad& a, const Quad& b, const Quad& c, const Quad& d) {
        const auto ab = __builtin_shufflevector(a, b, 0, 1, 2, 3, 4, 5, 6, 7);
        const auto cd = __builtin_shufflevector(c, d, 0, 1, 2, 3, 4, 5, 6, 7);
        return __builtin_shufflevector(ab, cd, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15);
    }
    template <int A, int B, int C, int D>
    static Wide by_fours(const Wide& u, const Wide& v) {
        return __builtin_shufflevector(u, v, A, B, C, D, A + 4, B + 4, C + 4, D + 4, A + 8, B + 8, C + 8, D + 8, A + 12,
                                       B + 12, C + 12, D + 12);
    }
};

struct PieceMeetings {
    LaneBits met = 0;
    Wide distance{};
    Wide along{};  // the piece, 0 … 1
};

// ray: its own axes, the direction being the normal. Nearer than a hair's width nothing is met: the ray leaves it.
inline PieceMeetings meet_pieces(const WidePoints& from, const WidePoints& to, const Ray& ray, const Frame& axes) {
    struct Seen {
        Wide x, y, away;
    };
    const auto seen = [&](const WidePoints& points) {
        const Wide3 place = points.place - ray.origin;
        return Seen{dot(place, axes.tangent), dot(place, axes.bitangent), dot(place, axes.normal)};
    };
    const Seen a = seen(from);
    const Seen b = seen(to);
    const Wide x = b.x - a.x;
    const Wide y = b.y - a.y;
    const Wide none = everywhere(0.0F);
    const Wide nearest = -(a.x * x + a.y * y) / larger(x * x + y * y, everywhere(1e-20F));
    PieceMeetings result;
    result.along = smaller(larger(nearest, none), everywhere(1.0F));
    const Wide aside = a.x + result.along * x;
    const Wide above = a.y + result.along * y;
    const Wide radius = from.radius + result.along * (to.radius - from.radius);
    result.distance = a.away + result.along * (b.away - a.away);
    result.met = lanes_of((aside * aside + above * above <= radius * radius) &
                          (result.distance > larger(everywhere(ray.near), 2.0F * radius)) &
                          (result.distance < everywhere(ray.far)));
    return result;
}

}  // namespace understudy
