// Ctrl-C: asks the work to stop, once, without leaving half a file.
#pragma once

#include <atomic>

namespace understudy {

// Set by SIGINT and SIGTERM from the first call on. A second signal ends the process at once.
const std::atomic<bool>& interruption();

}  // namespace understudy
