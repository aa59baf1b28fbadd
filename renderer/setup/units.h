// Numbers with units, as they are written in a scene file.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/expected.h"

namespace understudy {

struct Unit {
    std::string_view name;
    double in_si = 1.0;
};

// What a key measures: the units that a string may use and the one that a bare number is in.
struct Quantity {
    std::string_view expected;    // for messages: what to write instead
    std::span<const Unit> units;  // empty: only a bare number
    Unit bare;
};

extern const Quantity kLength;        // bare numbers in metres
extern const Quantity kFilmLength;    // bare numbers in millimetres: focal length, sensor
extern const Quantity kEnergy;        // J, Ws
extern const Quantity kLuminousFlux;  // lm
extern const Quantity kLampFlux;      // lm, or a halogen lamp's W
extern const Quantity kIlluminance;   // lx
extern const Quantity kTemperature;   // K
extern const Quantity kAngle;         // degrees, stay degrees
extern const Quantity kStops;
extern const Quantity kFNumber;
extern const Quantity kPlainNumber;
extern const Quantity kShutter;  // seconds; read_shutter() reads its strings

// "1.3 m", "4 ft 3 in", "120 Ws" in SI. The problem's text says only what is wrong and what was expected.
Expected<double> read_measure(std::string_view text, const Quantity& quantity);

// "1/200", "1/200 s", "0.5 s", "2" in seconds.
Expected<double> read_shutter(std::string_view text);

// A value in SI as the person would have written it: "85 mm".
std::string show_measure(double si_value, const Quantity& quantity);

}  // namespace understudy
