// A line on the terminal that says how far the work is and how long it still takes; silent where nobody watches.
#pragma once

#include <chrono>
#include <string>

namespace understudy {

class ProgressLine {
  public:
    ProgressLine();
    ~ProgressLine();  // wipes the line
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;

    void show(double share);
    // Before there is a share to show: "metering 2 of 6".
    void say(const std::string& words);

  private:
    using Clock = std::chrono::steady_clock;
    bool watched_;
    bool drawn_ = false;
    Clock::time_point start_;
    Clock::time_point last_;
};

}  // namespace understudy
