// What of a picture a change of its scene leaves standing.
#pragma once

#include <string>
#include <vector>

#include "setup/toml_tree.h"

namespace understudy {

// From what costs least to what costs most.
enum class Reach {
    kNothing,
    kDeveloping,  // powers, colours, exposure, treatment: the film is developed anew
    kLights,      // some lights stand elsewhere or are others: their layers are traced anew
    kStudio,      // the whole film is, with the sitter as it is
    kSitter,      // the sitter or the view of it has to be made anew
};

struct SceneChange {
    Reach reach = Reach::kNothing;
    std::vector<std::string> lights;  // whose layers a change of kLights asks for
    bool same_view = true;            // the camera's rays are what they were
    bool pupils = false;              // beside a change of kDeveloping: they are wider or narrower now
};

// Between two documents that the scene reader has taken. Where things stand in the text does not matter.
SceneChange change_between(const Value& before, const Value& after);

}  // namespace understudy
