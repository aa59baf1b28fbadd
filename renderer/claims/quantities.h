// Numbers of a case that several experiments tell, and the words they are told in.
#pragma once

#include <limits>
#include <string>

#include "claims/claim.h"

namespace understudy {

// What a case does not have.
inline constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

// Stops from what one reading gives to what another does; NaN where one of them is missing or dark.
double stops_between_readings(const Reading* from, const Reading* to);

// At the face, the sitter away.
const Reading* face_reading(const ClaimReading& reading, Receptor receptor, Facing facing);
const Reading* skin_reading(const ClaimReading& reading, const std::string& point);

// NaN where the case has none.
double face_f_number(const ClaimReading& reading);        // flat toward the key
double nose_edge_mm(const ClaimReading& reading);         // of the nose's shadow, from all dark to all lit
double lit_edge_mm(const ClaimReading& reading);          // of a point 20 mm before a surface, 10 to 90 % of the light
double width_over_distance(const ClaimReading& reading);  // of the key
double across_face_stops(const ClaimReading& reading);    // the key's fall-off over 14 cm
double to_chest_stops(const ClaimReading& reading);
double cheek_stops(const ClaimReading& reading);  // the lit cheek over the other
double shine_stops(const ClaimReading& reading);  // the forehead's sheen and skin over the skin alone
double key_lumens(const ClaimReading& reading);
double key_joules(const ClaimReading& reading);
// The key's front over a matt white in its light at the face: how bright its mirror image may become.
double front_over_white_stops(const ClaimReading& reading);
double backdrop_stops(const ClaimReading& reading);  // the brightest corner, from mid-grey, as it is developed

// How far a nose stands off a cheek, for the edge that a front throws there; metres. Practice's own figure, no source.
inline constexpr double kNoseOff = 0.020;

std::string told_mm(double value);            // "12 mm"
std::string told_stops(double value);         // "0.38 stops", unsigned
std::string told_signed_stops(double value);  // "+0.3 stops"
std::string told_share(double value);         // "0.87"
std::string told_percent(double value);       // "12 %", of a share
std::string told_ratio(double value);         // "3.0:1"
std::string told_metres(double value);        // "1.20 m"
std::string told_lens(double value);          // "f/8 (8 + 0/10)"

ToldQuantity the_meter();
ToldQuantity the_nose_edge();
ToldQuantity the_lit_edge();
ToldQuantity the_width();
ToldQuantity the_fall_off();
ToldQuantity the_chest();
ToldQuantity the_cheeks();
ToldQuantity the_shine();
ToldQuantity the_backdrop();
ToldQuantity the_pack_setting();  // joules for this reading

// "more", "less" or "the same" by a threshold under which a difference is none.
std::string compared(double before, double after, double least, const std::string& more, const std::string& less,
                     const std::string& same);

}  // namespace understudy
