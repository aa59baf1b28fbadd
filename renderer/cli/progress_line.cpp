#include "cli/progress_line.h"

#include <cmath>
#include <cstdio>

#include <fmt/format.h>
#include <unistd.h>

namespace understudy {

ProgressLine::ProgressLine() : watched_(isatty(STDERR_FILENO) == 1), start_(Clock::now()), last_(start_) {}

ProgressLine::~ProgressLine() {
    if (drawn_) fmt::print(stderr, "\r{:60}\r", "");
}

void ProgressLine::show(double share) {
    constexpr std::chrono::milliseconds kBetween(250);
    const auto now = Clock::now();
    if (!watched_ || now - last_ < kBetween || !(share > 0.0)) return;
    last_ = now;
    const double spent = std::chrono::duration<double>(now - start_).count();
    const auto left = static_cast<int>(std::ceil(spent * (1.0 - share) / share));
    fmt::print(stderr, "\rrendering {:3.0f} %, {}:{:02} left   ", 100.0 * share, left / 60, left % 60);
    std::fflush(stderr);
    drawn_ = true;
}

void ProgressLine::say(const std::string& words) {
    if (!watched_) return;
    fmt::print(stderr, "\r{:60}", words);
    std::fflush(stderr);
    drawn_ = true;
    start_ = last_ = Clock::now();  // what is said does not count for what is left
}

}  // namespace understudy
