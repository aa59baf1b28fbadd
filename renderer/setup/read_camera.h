// [camera]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

CameraSettings read_camera(TableReader table, std::optional<double> eye_height_m);

}  // namespace understudy
