// The face as the camera sees it: its skin at places a few millimetres apart, in rows across the face.
#pragma once

#include <array>
#include <vector>

#include "meter/face/face_frame.h"
#include "stage/stage.h"

namespace understudy {

struct FacePoint {
    Vec3 position{0.0F};
    Vec3 normal{0.0F};      // unit, smooth
    Vec3 leave_from{0.0F};  // rays that go on start here
    Vec3 toward_camera{0.0F};
    Double3 in_face{0.0};  // metres right, up and forward of the eyes' midpoint
    Zone zone = Zone::kFace;
    SkinSpot spot{};
    int column = 0;
    int row = 0;
};

class FaceView {
  public:
    // Rays from the camera to a grid across the face, this many metres apart at the face. What they meet of skin is
    // kept; where hair, hat, glasses' frames or something of the studio are in front there is no point.
    FaceView(const Stage& stage, const FaceMeasures& face, const Double3& camera, double step_m);

    const FaceMeasures& face() const { return face_; }
    double step_m() const { return step_m_; }
    // As seen from the camera; the skin itself is larger where it is turned aside.
    double point_area_m2() const { return step_m_ * step_m_; }
    const std::vector<FacePoint>& points() const { return points_; }  // row by row, from the top
    int columns() const { return columns_; }
    int rows() const { return rows_; }
    std::size_t index_of(const FacePoint& point) const { return static_cast<std::size_t>(&point - points_.data()); }
    // None: nothing of the face is there, or it lies outside the grid.
    const FacePoint* at(int column, int row) const;

  private:
    FaceMeasures face_;
    double step_m_;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<FacePoint> points_;
    std::vector<int> index_;  // of the point, row by row; -1 for none
};

}  // namespace understudy
