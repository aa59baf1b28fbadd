// The report's vocabulary: one place where a choice of the meter becomes a word, for tables and JSON alike.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

std::string word(Receptor receptor);     // "flat", "dome"
std::string word(Facing facing);         // "camera", "key", "surface"
std::string word(EyeVerdict verdict);    // "dark", "dim", "lit"
std::string word(EfficacyFrom from);     // "usual", "told", "reading"
std::string word(EyeFault fault);        // "none", "no light", "no reflection"
std::string word(LightPattern pattern);  // "flat", "butterfly", "loop", "rembrandt", "split", "rim"
std::string word(LitSide side);          // "face-on", "broad", "short"
std::string word(PupilFrom from);        // "usual", "told", "standing light"
std::string word(Remedy::Kind kind);     // "iso", "neutral density", "distance", "cloth out", "cloth in"

// Degrees clockwise from 12 as a clock's time, "h:mm", rounded to so many minutes; half a degree is a minute.
// "none" when the angle is not a number.
std::string clock_time(double clock_deg, int nearest_minutes);

// "+0.3", "-1.8", "0.0": signed stops to a tenth; "no light" for minus infinity, "none" for anything else not finite.
std::string signed_stops(double stops);

// A number to so many decimals, never "-0.0"; "none" unless finite.
std::string plain_number(double value, int decimals);

// Three figures, without an exponent for what occurs in a studio: "0.0123", "41.2", "1290".
std::string three_figures(double value);

// A standard error of an exposure in stops: d(log2 E) = dE / (E ln 2). "< 0.01" below that.
std::string error_in_stops(double exposure_lxs, double standard_error_lxs);

// Metres as people in a studio say them: "18 cm", and under a centimetre "4 mm".
std::string centimetres(double metres);

// A section's heading on a line of its own.
std::string heading(const std::string& words);

// "1/200 s", "0.5 s", "2 s".
std::string shutter_time(double shutter_s);

// A ratio as "2.9:1"; a whole number once tenths no longer matter. "none" unless finite.
std::string to_one(double ratio);

// A share of one as "75 %".
std::string percent(double share);

}  // namespace understudy
