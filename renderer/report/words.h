// The report's vocabulary: one place where a choice of the meter becomes a word, for tables and JSON alike.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

std::string word(Receptor receptor);   // "flat", "dome"
std::string word(Facing facing);       // "camera", "key", "surface"
std::string word(EyeVerdict verdict);  // "dark", "dim", "lit"
std::string word(EfficacyFrom from);   // "usual", "told", "reading"
std::string word(PupilFrom from);      // "usual", "told", "standing light"
std::string word(Remedy::Kind kind);   // "iso", "neutral density", "distance", "cloth out", "cloth in"

// Degrees clockwise from 12 as a clock's time, "h:mm", rounded to so many minutes; half a degree is a minute.
// "none" when the angle is not a number.
std::string clock_time(double clock_deg, int nearest_minutes);

// "+0.3", "-1.8", "0.0": signed stops to a tenth; "no light" for minus infinity, "none" for anything else not finite.
std::string signed_stops(double stops);

// A number to so many decimals, never "-0.0"; "none" unless finite.
std::string plain_number(double value, int decimals);

// Three figures, without an exponent for what occurs in a studio: "0.0123", "41.2", "1290".
std::string three_figures(double value);

// A section's heading on a line of its own.
std::string heading(const std::string& words);

// "1/200 s", "0.5 s", "2 s".
std::string shutter_time(double shutter_s);

// A share of one as "75 %".
std::string percent(double share);

}  // namespace understudy
