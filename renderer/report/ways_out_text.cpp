#include "report/ways_out_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/f_number.h"
#include "report/words.h"

namespace understudy {

std::string way_text(const Remedy& way) {
    switch (way.kind) {
        case Remedy::Kind::kIso:
            return fmt::format("ISO {:.0f} ({} stops)", way.value, signed_stops(way.stops));
        case Remedy::Kind::kNeutralDensity:
            return fmt::format("neutral density {:.2f} over the light ({} stops)", way.value, signed_stops(way.stops));
        case Remedy::Kind::kDistance:
            return fmt::format("{:.2f} m from the face ({} stops)", way.value, signed_stops(way.stops));
        case Remedy::Kind::kClothOut:
            return fmt::format("a layer of cloth out ({} stops)", signed_stops(way.stops));
        case Remedy::Kind::kClothIn:
            break;
    }
    return fmt::format("another layer of cloth in ({} stops)", signed_stops(way.stops));
}

std::string side_effect_text(const Remedy& way) {
    switch (way.kind) {
        case Remedy::Kind::kIso:
            return fmt::format(
                "every other light and the room go {} stops with it: set them anew{}", signed_stops(way.stops),
                way.stops > 0.0 ? "; more noise" : (way.value < 100.0 ? "; not every camera goes so low" : ""));
        case Remedy::Kind::kNeutralDensity:
            return "nothing else changes; over the lens it would take every light down";
        case Remedy::Kind::kDistance:
            return fmt::format(
                "it looks {:.1f} times as large, so {}; over a face's width it falls off {} stops in place of {}",
                way.looks_as_large, way.looks_as_large > 1.0 ? "softer" : "harder", plain_number(way.fall_off_after, 2),
                plain_number(way.fall_off_before, 2));
        case Remedy::Kind::kClothOut:
            return "a brighter middle and less even front: catchlight and shadow edges get harder";
        case Remedy::Kind::kClothIn:
            break;
    }
    return "a more even front; no larger, so no softer at its edges";
}

std::string ways_out_text(const LightPower& power) {
    const DialReading& dial = *power.dial;
    const bool weak = dial.out_by_stops > 0.0;
    // What the head does give at the end of its range, read where the light is read.
    const double at_end = power.f_number * std::exp2(-0.5 * dial.out_by_stops);
    std::string text =
        fmt::format("  {} is out of range: {} stops {} than {} gives at {}, which reads {}. Instead, cheapest first:\n",
                    power.light, plain_number(std::abs(dial.out_by_stops), 1), weak ? "more" : "less", dial.head,
                    dial.setting, spoken_f_number(at_end));
    int number = 0;
    for (const Remedy& way : dial.ways_out) {
        text += fmt::format("    {}. {}{}\n       {}\n", ++number, way_text(way),
                            way.enough ? "" : ", not enough by itself", side_effect_text(way));
    }
    return text;
}

}  // namespace understudy
