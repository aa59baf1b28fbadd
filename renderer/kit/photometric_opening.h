// What the signs of a photometric file's sizes say of its luminous opening.
#pragma once

#include <string>

#include "setup/photometric_file.h"

namespace understudy {

enum class OpeningKind {
    kPoint,
    kRectangle,
    kBox,  // with luminous sides
    kCircle,
    kEllipse,
    kUprightCylinder,
    kUprightEllipticCylinder,
    kCylinderAlongLength,
    kCylinderAcrossLength,
    kSphere,
    kUnknown,  // signs that the standard gives no meaning
};

OpeningKind opening_kind(const PhotometricOpening& opening);

// "a circle of 0.3 m".
std::string describe_opening(const PhotometricOpening& opening);

}  // namespace understudy
