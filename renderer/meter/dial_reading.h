// What to set a flash head to, and what to do when it cannot: plain data.
#pragma once

#include <string>
#include <vector>

namespace understudy {

// Something else that brings the light within the head's range.
struct Remedy {
    enum class Kind { kIso, kNeutralDensity, kDistance, kClothOut, kClothIn };
    Kind kind = Kind::kIso;
    double value = 0.0;   // the ISO, the density, the metres from the face; a cloth has none
    double stops = 0.0;   // what it gives (+) or takes (-)
    bool enough = false;  // by itself
    // Distance: how many stops the light falls off over the next 14 cm, a face's width, before and after.
    double fall_off_before = 0.0;
    double fall_off_after = 0.0;
    double looks_as_large = 1.0;  // distance: the front's apparent width after over before
};

struct DialReading {
    std::string head;
    std::string setting;           // in the head's notation; the end of the range when it is out of it
    std::string range;             // "1/256 to 1/1"
    double stops_from_full = 0.0;  // of that setting
    double left_over_stops = 0.0;  // what the light asks for, less the setting
    double out_by_stops = 0.0;     // over full (+), under the lowest setting (-), 0 within the range
    std::vector<Remedy> ways_out;  // cheapest first; none within the range
};

}  // namespace understudy
