// Eight pieces of hairs at once against one ray, each a ribbon that faces the ray: straight between two points, as wide
// as they say, with round ends.
//
// Eight and not sixteen: a cell has about as many, and they fit one register of most processors.
#pragma once

#include <array>
#include <bit>
#include <cstring>

#ifdef __AVX__
#include <immintrin.h>
#endif

#include "base/geometry.h"
#include "sitter/strands.h"

namespace understudy {

inline constexpr std::size_t kPiecesAtOnce = 8;
using Eight = float __attribute__((vector_size(4 * kPiecesAtOnce)));
using EightTruth = std::int32_t __attribute__((vector_size(4 * kPiecesAtOnce)));

// Where something is true: piece i's is bit i.
inline std::uint32_t pieces_of(const EightTruth& truth) {
#ifdef __AVX__
    return static_cast<std::uint32_t>(_mm256_movemask_ps(reinterpret_cast<__m256>(truth)));
#else
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < kPiecesAtOnce; ++i) bits |= truth[i] != 0 ? 1U << i : 0U;
    return bits;
#endif
}

// Eight points as a ray sees them: aside and above it, and how far along it.
struct SeenPoints {
    Eight x, y, away, radius;
};

class RayView {
  public:
    explicit RayView(const Ray& ray)
        : axes_(Frame::around(ray.direction)),
          aside_(glm::dot(ray.origin, axes_.tangent)),
          above_(glm::dot(ray.origin, axes_.bitangent)),
          along_(glm::dot(ray.origin, axes_.normal)) {}

    // The points with these numbers.
    SeenPoints seen(const StrandPoint* points, const std::uint32_t* numbers) const {
        std::array<Quad, kPiecesAtOnce> read;
        for (std::size_t i = 0; i < kPiecesAtOnce; ++i) std::memcpy(&read[i], points + numbers[i], sizeof(Quad));
        const Eight a = joined(read[0], read[4]);
        const Eight b = joined(read[1], read[5]);
        const Eight c = joined(read[2], read[6]);
        const Eight d = joined(read[3], read[7]);
        const Eight ab_xy = by_fours<0, 8, 1, 9>(a, b);
        const Eight cd_xy = by_fours<0, 8, 1, 9>(c, d);
        const Eight ab_zr = by_fours<2, 10, 3, 11>(a, b);
        const Eight cd_zr = by_fours<2, 10, 3, 11>(c, d);
        const Eight x = by_fours<0, 1, 8, 9>(ab_xy, cd_xy);
        const Eight y = by_fours<2, 3, 10, 11>(ab_xy, cd_xy);
        const Eight z = by_fours<0, 1, 8, 9>(ab_zr, cd_zr);
        const auto along = [&](const Vec3& axis, float origin) {
            return x * axis.x + y * axis.y + z * axis.z - origin;
        };
        return {along(axes_.tangent, aside_), along(axes_.bitangent, above_), along(axes_.normal, along_),
                by_fours<2, 3, 10, 11>(ab_zr, cd_zr)};
    }

  private:
    using Quad = float __attribute__((vector_size(16)));
    static_assert(sizeof(StrandPoint) == sizeof(Quad));

    static Eight joined(const Quad& low, const Quad& high) {
        return __builtin_shufflevector(low, high, 0, 1, 2, 3, 4, 5, 6, 7);
    }
    template <int A, int B, int C, int D>
    static Eight by_fours(const Eight& u, const Eight& v) {
        return __builtin_shufflevector(u, v, A, B, C, D, A + 4, B + 4, C + 4, D + 4);
    }

    Frame axes_;
    float aside_, above_, along_;
};

struct PieceMeetings {
    std::uint32_t met = 0;  // bits, one a piece
    Eight distance{};
    Eight along{};  // the piece, 0 … 1
};

// Between near and far; nearer than a hair's width nothing is met: the ray leaves it.
inline PieceMeetings meet_pieces(const SeenPoints& from, const SeenPoints& to, float near, float far) {
    const Eight none{};
    const Eight x = to.x - from.x;
    const Eight y = to.y - from.y;
    const Eight square = x * x + y * y + 1e-20F;
    const Eight nearest = -(from.x * x + from.y * y) / square;
    const Eight above_none = nearest > none ? nearest : none;
    PieceMeetings result;
    result.along = above_none < none + 1.0F ? above_none : none + 1.0F;
    const Eight aside = from.x + result.along * x;
    const Eight above = from.y + result.along * y;
    const Eight radius = from.radius + result.along * (to.radius - from.radius);
    const Eight least = radius + radius;
    result.distance = from.away + result.along * (to.away - from.away);
    result.met = pieces_of((aside * aside + above * above <= radius * radius) & (result.distance > least) &
                           (result.distance > none + near) & (result.distance < none + far));
    return result;
}

}  // namespace understudy
