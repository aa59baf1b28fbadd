// What to change so that both eyes are lit, cheapest first, and how near the setup is to losing them.
#pragma once

#include "advice/fix.h"
#include "base/expected.h"
#include "setup/setup.h"

namespace understudy {

// Found by trying, on this head and in this light; each fix is confirmed with the meter. What is wrong with the setup
// is a problem, and so is a sitter without eyes.
Expected<Advice> advise(const Setup& setup, const Library& library);

}  // namespace understudy
