// What of a scene file comes in only when a film is developed, so that one film serves every value of it.
#pragma once

#include <string>
#include <vector>

namespace understudy {

// path: "light", "key", "meter". The powers and colours of lights, flash heads, shutter, sensitivity, white balance and
// treatment. Two things may still tell the films of two such scenes apart: how wide the standing light leaves the
// pupils, and whether there is any room light.
bool comes_in_at_development(const std::vector<std::string>& path);

}  // namespace understudy
