#include "sitter/hair/grow_strands.h"

#include "sitter/hair/beard.h"
#include "sitter/hair/brows.h"
#include "sitter/hair/hair.h"
#include "sitter/hair/lashes.h"

namespace understudy {

Strands grow_strands(const Sitter& sitter, const StrandDetail& detail) {
    if (!sitter.growth || !sitter.eyes) return {};
    const GrowingHead head(sitter);
    Strands strands = grow_lashes(head);
    strands.add(grow_brows(head));
    strands.add(grow_beard(head, detail));
    strands.add(grow_hair(head, detail));
    for (StrandPoint& point : strands.points) point.place = head.in_studio(point.place);
    return strands;
}

namespace {

// A meter's dome is some 4 cm wide and is held a little before the hair. Its place stays the skin's where none is.
void clear(const Strands& strands, Landmark& landmark) {
    constexpr double kAside = 0.008;
    constexpr double kHighest = 0.15;
    constexpr double kBefore = 0.005;
    double height = 0.0;
    for (const Strand& strand : strands.strands) {
        if (strand.kind == StrandKind::kBrow || strand.kind == StrandKind::kLash) continue;
        for (std::uint32_t k = 0; k < strand.count; ++k) {
            const Double3 away = Double3(strands.points[strand.first + k].place) - landmark.position;
            const double up = glm::dot(away, landmark.normal);
            const bool near = glm::length(away - up * landmark.normal) < kAside;
            if (near && up < kHighest) height = std::max(height, up);
        }
    }
    if (height > 0.0) landmark.position += (height + kBefore) * landmark.normal;
}

}  // namespace

Landmarks clear_of(const Strands& strands, const Landmarks& landmarks) {
    Landmarks lifted = landmarks;
    for (Landmark* landmark : {&lifted.forehead, &lifted.nose_bridge, &lifted.nose_tip, &lifted.cheek_camera_left,
                               &lifted.cheek_camera_right, &lifted.chin, &lifted.throat, &lifted.crown}) {
        clear(strands, *landmark);
    }
    return lifted;
}

}  // namespace understudy
