// How far the sitter may move, in plain words and as JSON.
#pragma once

#include <string>

#include "advice/envelope.h"
#include "report/json_values.h"

namespace understudy {

// "head 12 degrees to camera left"; "as set" for no size.
std::string movement_words(Movement movement, double by);

// What no longer holds, the worst first: "camera-left eye lost, pattern loop".
std::string lapse_words(const Lapse& lapse);

// What holds, in a sentence.
std::string envelope_summary(const Envelope& envelope);

// A table: each movement, how far either way, and what ends it.
std::string envelope_text(const Envelope& envelope);

Json envelope_json(const Envelope& envelope);

}  // namespace understudy
