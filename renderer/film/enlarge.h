// A picture of every so many-th pixel, drawn as large as the whole.
#pragma once

#include "film/develop.h"

namespace understudy {

// Between its pixels light changes evenly along rows and columns; past the last ones it stays. width, height: of the
// whole picture.
Picture enlarged(const Picture& thin, int every, int width, int height);

}  // namespace understudy
