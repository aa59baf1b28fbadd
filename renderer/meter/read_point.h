// One reading of the meter.
#pragma once

#include "meter/light_powers.h"
#include "meter/meter_points.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// To half a per cent, or to half a per cent of what is black at this exposure.
Reading read_point(const MeterPoint& point, const Stage& stage, const std::vector<LayerLight>& layers,
                   const ExposureSettings& exposure);

}  // namespace understudy
