// Ctrl-C: asks the work to stop, once, without leaving half a file.
#pragma once

#include <atomic>
#include <string>

namespace understudy {

// Set by SIGINT and SIGTERM from the first call on. A second signal ends the process at once.
const std::atomic<bool>& interruption();

// On standard error, with what became of the files; the exit status for it.
int say_interrupted(const std::string& outcome = "no file was written");

}  // namespace understudy
