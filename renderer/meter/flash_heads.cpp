#include "meter/flash_heads.h"

#include <cmath>

#include "meter/ways_out.h"

namespace understudy {
namespace {

DialReading read_dial_setting(const FlashHead& head, double joules) {
    const DialSetting setting = nearest_setting(head.dial, std::log2(joules / head.full_energy_j));
    DialReading reading;
    reading.head = head.name;
    reading.setting = dial_text(head.dial, setting.steps);
    reading.range = dial_range_text(head.dial);
    reading.stops_from_full = stops_of_steps(head.dial, setting.steps);
    reading.left_over_stops = setting.left_over_stops;
    reading.out_by_stops = setting.out_by_stops;
    return reading;
}

}  // namespace

double joules_at(const FlashHead& head, int steps_from_full) {
    return head.full_energy_j * std::exp2(stops_of_steps(head.dial, steps_from_full));
}

LightPower with_head(const Studio& studio, std::size_t light, LightPower told) {
    const LightSettings& settings = studio.setup.lights[light];
    if (!settings.flash) return told;
    const FlashHead& head = studio.setup.flashes[*settings.flash];
    const ExposureSettings& exposure = studio.setup.camera.exposure;
    told.dial = read_dial_setting(head, told.energy_j);
    if (told.dial->out_by_stops != 0.0) {
        const double distance_m = glm::distance(studio.lights[light].centre, studio.points.face);
        told.dial->ways_out = ways_out({told.dial->out_by_stops, exposure.iso, distance_m, settings.modifier,
                                        studio.modifiers[light], studio.modifier_cache});
    }
    if (head.modelling_lamp_lm > 0.0) {
        told.modelling_stops =
            std::log2(head.modelling_lamp_lm * exposure.shutter_s / (told.energy_j * told.efficacy_lms_per_j));
    }
    return told;
}

}  // namespace understudy
