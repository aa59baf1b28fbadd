#include "cli/interrupt.h"

#include <fmt/format.h>

#include "cli/commands.h"

#include <csignal>

namespace understudy {

namespace {

// A signal handler reaches nothing else.
std::atomic<bool> interrupted = false;

void on_signal(int signal) {
    interrupted = true;
    std::signal(signal, SIG_DFL);
}

}  // namespace

const std::atomic<bool>& interruption() {
    std::signal(SIGINT, on_signal);
    std::signal(SIGTERM, on_signal);
    return interrupted;
}

int say_interrupted(const std::string& outcome) {
    fmt::print(stderr, "interrupted: {}\n", outcome);
    return kInterrupted;
}

}  // namespace understudy
