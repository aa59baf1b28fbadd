// A flash head as its owner describes it.
#pragma once

#include <optional>
#include <string>

#include "setup/dial.h"
#include "setup/modifier_settings.h"
#include "setup/source_place.h"

namespace understudy {

// One reading of one's own unit: at this setting, in this modifier, a flat receptor on its axis read so much.
struct FlashCalibration {
    ModifierSettings modifier;
    int steps = 0;            // of the dial, from full
    double distance_m = 0.0;  // from the modifier's front
    double f_number = 0.0;    // exact
    double iso = 100.0;
    SourcePlace said_at;
};

// [flash.NAME]: a flash head as its owner knows it.
struct FlashHead {
    std::string name;
    double full_energy_j = 0.0;
    Dial dial;
    std::optional<double> efficacy_lms_per_j;  // of the tube; none: the stated default
    double modelling_lamp_lm = 0.0;            // 0: none, or off
    std::optional<FlashCalibration> calibration;
};

}  // namespace understudy
