#include "kit/photometric_opening.h"

#include <cmath>

#include <fmt/format.h>

namespace understudy {

// LM-63-2002, as its users' documentation quotes it: a negative size is a diameter. The lying cylinders and the sphere
// are from memory, as is the 1991 edition's circle with no length.
OpeningKind opening_kind(const PhotometricOpening& opening) {
    const double width = opening.width_m;
    const double length = opening.length_m;
    const double height = opening.height_m;
    const auto both = [](double a, double b) { return std::abs(a - b) <= 1e-9; };
    if (width == 0.0 && length == 0.0 && height == 0.0) return OpeningKind::kPoint;
    if (width > 0.0 && length > 0.0 && height >= 0.0) {
        return height == 0.0 ? OpeningKind::kRectangle : OpeningKind::kBox;
    }
    if (width < 0.0 && length < 0.0) {
        const bool round = both(width, length);
        if (height == 0.0) return round ? OpeningKind::kCircle : OpeningKind::kEllipse;
        if (height > 0.0) return round ? OpeningKind::kUprightCylinder : OpeningKind::kUprightEllipticCylinder;
        return round && both(width, height) ? OpeningKind::kSphere : OpeningKind::kUnknown;
    }
    if (width < 0.0 && length == 0.0 && height == 0.0) return OpeningKind::kCircle;
    if (width < 0.0 && length > 0.0 && both(width, height)) return OpeningKind::kCylinderAlongLength;
    if (width > 0.0 && length < 0.0 && both(length, height)) return OpeningKind::kCylinderAcrossLength;
    return OpeningKind::kUnknown;
}

std::string describe_opening(const PhotometricOpening& opening) {
    const double width = std::abs(opening.width_m);
    const double length = std::abs(opening.length_m);
    const double height = std::abs(opening.height_m);
    switch (opening_kind(opening)) {
        case OpeningKind::kPoint:
            return "a point";
        case OpeningKind::kRectangle:
            return fmt::format("a rectangle, {:.4g} m wide and {:.4g} m long", width, length);
        case OpeningKind::kBox:
            return fmt::format("a box with luminous sides, {:.4g} m wide, {:.4g} m long, {:.4g} m high", width, length,
                               height);
        case OpeningKind::kCircle:
            return fmt::format("a circle of {:.4g} m", width);
        case OpeningKind::kEllipse:
            return fmt::format("an ellipse, {:.4g} m wide and {:.4g} m long", width, length);
        case OpeningKind::kUprightCylinder:
            return fmt::format("an upright cylinder of {:.4g} m, {:.4g} m high", width, height);
        case OpeningKind::kUprightEllipticCylinder:
            return fmt::format("an upright cylinder, {:.4g} m wide, {:.4g} m long, {:.4g} m high", width, length,
                               height);
        case OpeningKind::kCylinderAlongLength:
            return fmt::format("a lying cylinder of {:.4g} m, {:.4g} m long", width, length);
        case OpeningKind::kCylinderAcrossLength:
            return fmt::format("a cylinder of {:.4g} m that lies across, {:.4g} m wide", length, width);
        case OpeningKind::kSphere:
            return fmt::format("a sphere of {:.4g} m", width);
        case OpeningKind::kUnknown:
            break;
    }
    return fmt::format("of no known form ({:.4g}, {:.4g}, {:.4g} m)", opening.width_m, opening.length_m,
                       opening.height_m);
}

}  // namespace understudy
