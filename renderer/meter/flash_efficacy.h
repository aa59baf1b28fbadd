// How much light a flash head's tube gives for each joule: usual, told, or from one reading of one's own unit.
#pragma once

#include "meter/reading.h"
#include "stage/studio.h"

namespace understudy {

struct FlashEfficacy {
    double lms_per_j = 0.0;
    EfficacyFrom from = EfficacyFrom::kUsual;
};

// Of the head that the light is driven by. A reading that no source of light could give is a problem.
Expected<FlashEfficacy> flash_efficacy(const Studio& studio, const LightSettings& light);

}  // namespace understudy
