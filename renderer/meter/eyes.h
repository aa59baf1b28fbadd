// Is there light in the eyes?
#pragma once

#include <string>
#include <vector>

#include "meter/integrate.h"
#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// An eye is lit when it gets at least this share of the brighter cheek's exposure, and dim down to the other. The only
// place that says so.
inline constexpr double kLitShare = 0.5;
inline constexpr double kDimShare = 0.125;
// Where the cheeks lie in the dark they prove nothing: the cheek counts for at least this share of what a dome at the
// face reads. Chosen.
inline constexpr double kLeastCheekOfFace = 0.25;

EyeVerdict eye_verdict(double eye_lxs, double cheek_lxs, double face_lxs);

inline const char* eye_name(std::size_t index) { return index == 0 ? "camera-left" : "camera-right"; }

// Exposure on each iris, the mean over its whole disc, the receptor along the eye's axis, seen past brow, lids and nose
// but as if the cornea were not there. (The middle alone would go dark under a light that still lights the lower half,
// which in a real eye the cornea bends up to the middle.) cheek: the brighter one's reading, none when there is none to
// compare with; face_lxs: the dome's at the face point, facing the camera; relative: how well, of each reading. Faults
// are left to name_faults.
std::vector<EyeReading> read_eyes(const Stage& stage, const std::vector<LayerLight>& layers, const Reading* cheek,
                                  double face_lxs, double relative = 0.005);

// The light on one iris, as read_eyes reads it.
Gathered gather_at_iris(const Stage& stage, const Eye& eye, const std::vector<Bands>& weights,
                        const Precision& precision);

// Says of each light and eye which of the two faults it has, now that the mirror images are known.
void name_faults(std::vector<EyeReading>& eyes, const std::vector<Catchlight>& catchlights);

}  // namespace understudy
