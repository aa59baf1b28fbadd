// One or more of every kind of surface, for whatever has to hold for all of them.
#pragma once

#include <string>
#include <vector>

#include "scatter/surface.h"

namespace understudy {

struct NamedSurface {
    std::string name;
    Surface surface;
    // Absorbs nothing, so that it must return all the light that falls on it.
    bool white = false;
};

std::vector<NamedSurface> every_surface();

}  // namespace understudy
