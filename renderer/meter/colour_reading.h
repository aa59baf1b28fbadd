// What colour each light has at the face, and what its gels cost.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace understudy {

struct ColourReading {
    std::string light;              // or "ambient"
    std::vector<std::string> gels;  // as in the scene file
    double gel_loss_stops = 0.0;    // what the gels take of its light; 0 without any
    // At the face, in CIE 1931 x and y; none of a light that sends nothing there.
    std::optional<double> x;
    std::optional<double> y;
    // Of the nearest black body; none of a colour that is too far from any to have a temperature.
    std::optional<double> kelvin;
    std::optional<double> duv;  // plus = greener, minus = pinker
};

}  // namespace understudy
