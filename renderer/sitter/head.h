// A head before it sits: its shape applied and its eyes fitted, then posed as often as wanted.
#pragma once

#include <memory>
#include <optional>

#include "base/expected.h"
#include "base/geometry.h"
#include "setup/setup.h"
#include "sitter/sitter.h"

namespace understudy {

class Head;  // sitter/loaded_head.h says what is inside
using HeadPointer = std::shared_ptr<const Head>;

// For every HeadChoice: nobody and the ball are heads too, with nothing to bend. A mesh that cannot be read, is empty,
// degenerate, carries NaN or is far too large is a problem that names the file and the line.
Expected<HeadPointer> load_head(const SitterSettings& sitter, const Library& library);

bool has_eyes(const Head& head);

// Midway between the eyes with the head straight, in the studio: (0, eye height, the eyes' distance before the turning
// axis). For nobody and the ball: (0, eye height, 0). Stands and the camera are placed from it, so turning the head
// moves no stand.
Double3 face_point(const Head& head, double eye_height_m);

// The same where the sitter has stepped to: what a meter before the face, and the lens, see.
Double3 stepped_face(const Head& head, const SitterSettings& settings);

// Aim points of a straight head: the middle of the upper chest, and the top of the head.
Double3 chest_point(const Head& head, double eye_height_m);
Double3 crown_point(const Head& head, double eye_height_m);

// The pose bends the mesh through its skin weights and moves it by the step; the eyes then look at gaze_target (a
// camera's or a light's place) or, without one, along the gaze angles of the settings (0, 0 when there are none).
Sitter pose_head(const Head& head, const SitterSettings& settings, const std::optional<Double3>& gaze_target);

}  // namespace understudy
