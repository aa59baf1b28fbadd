// Advice in plain words: what is wrong, the fixes in order, and how near the setup is to losing the eyes.
#pragma once

#include <string>

#include "advice/fix.h"

namespace understudy {

std::string advice_text(const Advice& advice);

// One fix as an instruction: "chin up 7 degrees".
std::string instruction(const Fix& fix, const std::string& key);

}  // namespace understudy
