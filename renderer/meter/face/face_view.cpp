#include "meter/face/face_view.h"

#include <optional>

#include <tbb/parallel_for.h>

namespace understudy {

namespace {

// From the eyes' midpoint, metres: wide and high enough for any head's face (Farkas 1994: 137 mm wide, 185 mm from the
// hairline to the chin in men).
constexpr double kAside = 0.100;
constexpr double kAbove = 0.090;
constexpr double kBelow = 0.140;

bool is_skin_of_face(Zone zone) {
    switch (zone) {
        case Zone::kFace:
        case Zone::kForehead:
        case Zone::kBrow:
        case Zone::kUpperLid:
        case Zone::kLowerLid:
        case Zone::kNose:
        case Zone::kCheek:
        case Zone::kLips:
        case Zone::kChin:
            return true;
        default:
            return false;
    }
}

std::optional<FacePoint> seen_along(const Stage& stage, const FaceMeasures& face, const Ray& ray) {
    const auto hit = stage.intersect(ray);
    if (!hit || hit->thing != Thing::kSitter) return std::nullopt;
    FacePoint point;
    point.zone = stage.sitter_mesh()->zone_of(hit->index);
    if (!is_skin_of_face(point.zone)) return std::nullopt;
    point.position = hit->position;
    point.normal = hit->shading;
    point.leave_from = hit->leave_from;
    point.toward_camera = -ray.direction;
    point.in_face = face.frame.place(Double3(hit->position));
    point.spot = hit->spot;
    return point;
}

}  // namespace

FaceView::FaceView(const Stage& stage, const FaceMeasures& face, const Double3& camera, double step_m)
    : face_(face),
      step_m_(step_m),
      columns_(1 + static_cast<int>(2.0 * kAside / step_m)),
      rows_(1 + static_cast<int>((kAbove + kBelow) / step_m)) {
    // Square to the line of sight, and level as the face is.
    const Double3 sight = glm::normalize(face.frame.origin - camera);
    const Double3 right = glm::normalize(glm::cross(sight, face.frame.up));
    const Double3 up = glm::cross(right, sight);
    const Double3 corner = face.frame.origin - kAside * right + kAbove * up;
    std::vector<std::vector<std::optional<FacePoint>>> seen(static_cast<std::size_t>(rows_));
    tbb::parallel_for(0, rows_, [&](int row) {
        auto& line = seen[static_cast<std::size_t>(row)];
        for (int column = 0; column < columns_; ++column) {
            const Double3 aimed =
                corner + step_m * (static_cast<double>(column) * right - static_cast<double>(row) * up);
            line.push_back(seen_along(stage, face_, {Vec3(camera), Vec3(glm::normalize(aimed - camera))}));
        }
    });
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            auto& point = seen[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
            index_.push_back(point ? static_cast<int>(points_.size()) : -1);
            if (!point) continue;
            point->column = column;
            point->row = row;
            points_.push_back(*point);
        }
    }
}

const FacePoint* FaceView::at(int column, int row) const {
    if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return nullptr;
    const int cell = row * columns_ + column;
    const int index = index_[static_cast<std::size_t>(cell)];
    return index < 0 ? nullptr : &points_[static_cast<std::size_t>(index)];
}

}  // namespace understudy
