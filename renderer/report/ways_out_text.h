// What else would do when a head cannot be turned so far: a numbered list, cheapest first, each with its side effect.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// Of a light whose dial is out of range.
std::string ways_out_text(const LightPower& power);

// "ISO 400", "0.92 m from the face": the way by itself.
std::string way_text(const Remedy& way);
// What else it changes.
std::string side_effect_text(const Remedy& way);

}  // namespace understudy
