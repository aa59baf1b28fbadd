// What lights and panels are called when the scene file gives them no name.
#pragma once

#include <string>

namespace understudy {

// number: 1 for the first of the file.
inline std::string usual_light_name(int number) { return number == 1 ? "key" : "light-" + std::to_string(number); }
inline std::string usual_panel_name(int number) {
    return number == 1 ? "fill card" : "panel-" + std::to_string(number);
}

}  // namespace understudy
