// Where hair and beard grow: the roots, found on any head of the library by its eyes, its crown and its zones.
#pragma once

#include <functional>
#include <vector>

#include "sitter/hair/growing_head.h"

namespace understudy {

struct Root {
    Vec3 place;           // in the head's axes
    Vec3 normal;          // unit
    float inside = 0.0F;  // metres from the edge of what is grown over
    std::uint32_t key = 0;
};

// Degrees round the skull's middle, to either side alike: 0 over the nose, 180 over the nape.
float turn_of(const Vec3& place);

// How far above the hairline a place of the usual head lies, metres, negative below it; a smooth line round the head.
float above_hairline(const Vec3& place);
// The same for the beard's upper edge on the cheek and its lower one on the neck.
float inside_beard(const Vec3& place);

// Roots, evenly spread, a square metre, wherever `inside` is above 0; the edge thins out over `soft` metres.
std::vector<Root> spread_roots(const GrowingHead& head, double a_square_metre, float soft, std::uint32_t seed,
                               const std::function<float(const Vec3&)>& inside, const std::function<bool(Zone)>& on);

// The triangles of these zones.
inline bool may_be_scalp(Zone zone) {
    return zone == Zone::kScalp || zone == Zone::kForehead || zone == Zone::kFace || zone == Zone::kNeck ||
           zone == Zone::kCheek;
}
inline bool may_be_beard(Zone zone) {
    return zone == Zone::kFace || zone == Zone::kCheek || zone == Zone::kChin || zone == Zone::kNeck;
}

}  // namespace understudy
