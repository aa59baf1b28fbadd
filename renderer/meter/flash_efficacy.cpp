#include "meter/flash_efficacy.h"

#include <fmt/format.h>

#include "film/exposure.h"
#include "kit/flash_energy.h"
#include "meter/flash_heads.h"
#include "meter/own_reading.h"

namespace understudy {
namespace {

// The most light that a watt can be: monochromatic light of 555 nm (the definition of the candela, SI 1979).
constexpr double kMostLumensAWatt = 683.0;

Expected<FlashEfficacy> from_reading(const FlashHead& head, const BuiltModifier& modifier) {
    const FlashCalibration& reading = *head.calibration;
    const double per_lumen = axis_reading_per_lumen(reading.modifier, modifier, reading.distance_m);
    const double joules = joules_at(head, reading.steps);
    const double needed_lms = exposure_of_f_number(reading.f_number, reading.iso, kIncidentFlat) / per_lumen;
    const double efficacy = needed_lms / (joules * modifier.efficiency);
    if (efficacy > 0.0 && efficacy <= kMostLumensAWatt) return FlashEfficacy{efficacy, EfficacyFrom::kReading};
    return Problem{Blame::kWrongInput,
                   fmt::format("{}: the calibration of [flash.{}] takes {:.4g} lm·s from each joule, more than "
                               "any light can give; expected at most {:.0f}, usual are {:.0f} to {:.0f}: check dial, "
                               "distance, reading and iso",
                               place_text(reading.said_at), head.name, efficacy, kMostLumensAWatt, kLeastFlashEfficacy,
                               kMostFlashEfficacy)};
}

}  // namespace

Expected<FlashEfficacy> flash_efficacy(const Studio& studio, const LightSettings& light) {
    if (!light.flash) return FlashEfficacy{kFlashEfficacy, EfficacyFrom::kUsual};
    const FlashHead& head = studio.setup.flashes[*light.flash];
    if (const auto& modifier = studio.calibrations[*light.flash]) return from_reading(head, *modifier);
    if (head.efficacy_lms_per_j) return FlashEfficacy{*head.efficacy_lms_per_j, EfficacyFrom::kTold};
    return FlashEfficacy{kFlashEfficacy, EfficacyFrom::kUsual};
}

}  // namespace understudy
