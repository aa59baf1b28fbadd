// What leaves a modifier's luminous surface: radiance over place and direction for 1 lm out of the modifier.
//
// Places in metres from the front's centre and unit directions away from the surface, both in the front's own axes: x
// right, y up, z along the axis.
#pragma once

#include <memory>
#include <optional>
#include <variant>

#include "kit/emission_table.h"
#include "kit/head_lit.h"
#include "kit/sky_light.h"
#include "kit/web_emission.h"
#include "setup/placement.h"
#include "setup/setup.h"

namespace understudy {

struct EvenEmission {  // the same everywhere and in every direction
    bool operator==(const EvenEmission&) const = default;
};

using Emission = std::variant<EvenEmission, std::shared_ptr<const EmissionTable>, std::shared_ptr<const HeadLit>,
                              std::shared_ptr<const SkyLight>, std::shared_ptr<const WebEmission>>;

inline bool is_even(const Emission& emission) { return std::holds_alternative<EvenEmission>(emission); }

// Of an uneven one, 1/(sr·m²).
inline float radiance_of(const Emission& emission, const Vec3& place, const Vec3& direction) {
    if (const auto* table = std::get_if<std::shared_ptr<const EmissionTable>>(&emission)) {
        return (*table)->radiance(place, direction);
    }
    if (const auto* head = std::get_if<std::shared_ptr<const HeadLit>>(&emission)) {
        return (*head)->radiance(place, direction);
    }
    if (const auto* sky = std::get_if<std::shared_ptr<const SkyLight>>(&emission)) {
        return (*sky)->radiance(place, direction);
    }
    if (const auto* web = std::get_if<std::shared_ptr<const WebEmission>>(&emission)) {
        return (*web)->radiance(direction);
    }
    return 0.0F;
}

// What a shape emits of itself: an umbrella, a frame, a window. The others are even unless a table says more.
Emission emission_of(const ModifierShape& shape, const PlacedFront& front);

// lm out for each lm of the bare tube, of a shape that a head shines at: none otherwise.
std::optional<double> efficiency_of_lit(const ModifierShape& shape);

}  // namespace understudy
