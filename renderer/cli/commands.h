// The commands, each in a file of its own. All return the process's exit status.
#pragma once

#include <CLI/App.hpp>
#include <CLI/CLI.hpp>

#include "base/problem.h"

namespace understudy {

enum ExitStatus : int { kDone = 0, kFailure = 1, kWrongUse = 2, kInterrupted = 130 };

// Prints each to the error stream; the status is that of the worst.
int complain(const Problems& problems);

// Each adds its command to the program; the command's work runs when the arguments have been read, and leaves its exit
// status in status.
void add_render(CLI::App& program, int& status);
void add_meter(CLI::App& program, int& status);
void add_advise(CLI::App& program, int& status);
void add_poses(CLI::App& program, int& status);
void add_check(CLI::App& program, int& status);
void add_compare(CLI::App& program, int& status);
void add_develop(CLI::App& program, int& status);
void add_kit(CLI::App& program, int& status);
void add_settle(CLI::App& program, int& status);
void add_sitters(CLI::App& program, int& status);
void add_pixel(CLI::App& program, int& status);
void add_watch(CLI::App& program, int& status);

}  // namespace understudy
