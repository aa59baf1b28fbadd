// Light over direction as a drawing in plain characters.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace understudy {

// Straight ahead points down, positive angles go to the right. Between the rows the lines fit two plots side by side
// into 80 columns.
class PolarPlot {
  public:
    static constexpr int kColumns = 37;

    // strength: 0 … 1 over the angle from straight ahead in degrees, −180 … 180. The outer ring is 1, the inner ½.
    // behind: whether to draw the half that lies behind too.
    PolarPlot(const std::function<double(double)>& strength, bool behind);

    // All of kColumns characters.
    const std::vector<std::string>& lines() const { return lines_; }

  private:
    void put(double strength, double angle_deg, char mark);
    void fill(const std::function<double(double)>& strength);

    int rows_above_ = 0;  // above the middle
    std::vector<std::string> lines_;
};

}  // namespace understudy
