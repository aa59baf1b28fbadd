// One reading of the meter.
#pragma once

#include "meter/light_powers.h"
#include "meter/meter_points.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// To this share of the reading, or of what is black at this exposure.
Reading read_point(const MeterPoint& point, const Stage& stage, const std::vector<LayerLight>& layers,
                   const ExposureSettings& exposure, double relative = 0.005);

}  // namespace understudy
