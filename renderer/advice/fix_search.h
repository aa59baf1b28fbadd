// Looking for the least change that lights both eyes.
#pragma once

#include <optional>
#include <vector>

#include "advice/fix.h"
#include "advice/way.h"

namespace understudy {

// A fix, and the way that it was found on.
struct FoundFix {
    Way way;
    double size = 0.0;
    Fix fix;
};

// The least of each kind, confirmed with the meter and, where it is a hair short, made a little larger. Kinds that do
// not light both eyes are left out.
std::vector<FoundFix> find_fixes(TrialRoom& room, const std::vector<Way>& ways);

// The same change on another face: whether it is enough there, or how much is.
OnFace on_face(TrialRoom& room, const std::string& face, const FoundFix& found);

}  // namespace understudy
