// What `understudy kit` tells of the modifiers.
#pragma once

#include <string>

namespace understudy {

// Both return the process's exit status.
int list_kit();
int describe_modifier(const std::string& name);

}  // namespace understudy
