// A modifier: the shape of what shines, and what it is built of.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <variant>

#include "setup/construction.h"
#include "setup/lit_shapes.h"

namespace understudy {

struct RectangleShape {
    double width_m = 0.0;
    double height_m = 0.0;
};
struct DiscShape {
    double diameter_m = 0.0;
};
struct RingShape {
    double diameter_m = 0.0;
    double inner_m = 0.0;
};
struct PolygonShape {
    int sides = 8;
    double diameter_m = 0.0;  // across the corners
};
struct SphereShape {
    double diameter_m = 0.0;
};
struct DomeShape {  // the inside of an umbrella's canopy
    double diameter_m = 0.0;
    double depth_m = 0.0;  // from the rim's plane to the canopy's middle, at most half the diameter
};
struct PointShape {};  // no size at all: the light of a photometric file from one place
using ModifierShape = std::variant<RectangleShape, DiscShape, RingShape, PolygonShape, SphereShape, DomeShape,
                                   UmbrellaShape, FrameShape, WindowShape, PointShape>;

struct PhotometricFile;

struct ModifierSettings {
    std::string name;  // of the kit, or the shape's name for one's own
    ModifierShape shape;
    double efficiency = 1.0;  // light out of the front over light out of the tube; not used with a construction
    std::optional<Construction> construction;              // none: the front shines evenly
    std::shared_ptr<const PhotometricFile> photometric{};  // its light over direction, where a file says it
};

}  // namespace understudy
