// The trade's names for how a key lies on a face, from where its shadows fall.
//
// The names and what each stands for are as in military photographers' training courses (NAVEDTRA 14209A; AFSC
// manuals): the nose's shadow under the nose, beside it, or running into the cheek's with a triangle left lit on the
// far cheek. The limits between them are chosen, and stand here.
#pragma once

#include <optional>
#include <vector>

#include "meter/face/face_reading.h"
#include "meter/face/face_shades.h"

namespace understudy {

// Limits, chosen.
inline constexpr double kLeastNoseShadowM2 = 15e-6;  // less of it, as seen by the camera, is flat
inline constexpr double kStraightDownDeg = 15.0;     // butterfly up to here
inline constexpr double kDarkCheek = 0.10;           // the far cheek's lit share under which it is split
inline constexpr double kLitNearCheek = 0.50;        // the near one's under which it is rim
inline constexpr double kFaceOnDeg = 8.0;            // turned less, a face has no broad side

// light: the middle of its front. None: the camera sees too little of one of the cheeks to tell.
std::optional<PatternReading> read_pattern(const FaceView& view, const std::vector<Shade>& shades, const Vec3& light);
std::optional<PatternReading> read_pattern(const Stage& stage, const FaceView& view, const Vec3& light);

// The places in the nose's shadow that hang together with the nose: outside it, under the eyes. What it throws on the
// far eye, or past the lips on the chin, is another matter.
std::vector<std::size_t> nose_shadow_points(const FaceView& view, const std::vector<Shade>& shades);

}  // namespace understudy
