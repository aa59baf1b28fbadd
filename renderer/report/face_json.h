// What the light does on the face, as JSON.
#pragma once

#include "meter/reading.h"
#include "report/json_values.h"

namespace understudy {

Json face_json(const FaceReading& face);
Json eye_light_json(const EyeLight& light);
Json taken_json(const std::vector<Taken>& taken);

}  // namespace understudy
