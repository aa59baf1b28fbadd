// What the light does on the face, in the trade's words.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// Highlight, nose shadow, triangle, fill's shadow, pattern and what is next to it; softness and fall-off. "" without a
// face. The catchlights and the ratio, the other two of the trade's six words, have sections of their own.
std::string face_text(const MeterReport& report);

// "loop, short": the pattern's name with the lit side where the face has one.
std::string pattern_words(const FaceReading& face);

}  // namespace understudy
