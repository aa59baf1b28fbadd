#include "sitter/crowns.h"

#include <algorithm>
#include <cmath>

#include "base/geometry.h"

namespace understudy {
namespace {

constexpr double kPapilla = 0.40;       // of the crown's height, by which the gum reaches down between two teeth
constexpr double kNeckNarrower = 0.20;  // of the width, at the gum
constexpr double kWidestAt = 0.25;      // of the height, where neighbours touch
constexpr double kDeepestGap = 0.0016;
constexpr double kGapOfWidth = 0.20;  // of a narrow tooth
constexpr double kFarCorner = 1.6;    // times the near corner's radius
constexpr double kBulge = 0.0004;     // of the face between gum and edge
constexpr double kGum = 0.0005;       // thickness that shows, over a tooth
constexpr double kGumFalls = 0.0007;  // between two

}  // namespace

const std::array<Crown, kTeethASide> kUpperCrowns = {{{0.0085, 0.0105, 0.0070, 0.0013, 0.0009, 0.0, 0.0},
                                                      {0.0065, 0.0090, 0.0060, 0.0012, 0.0012, 0.0, 0.0007},
                                                      {0.0075, 0.0100, 0.0080, 0.0020, 0.0010, 0.0014, 0.0},
                                                      {0.0070, 0.0085, 0.0090, 0.0045, 0.0010, 0.0012, 0.0005},
                                                      {0.0070, 0.0085, 0.0090, 0.0050, 0.0010, 0.0010, 0.0006},
                                                      {0.0100, 0.0075, 0.0110, 0.0070, 0.0012, 0.0006, 0.0008},
                                                      {0.0090, 0.0070, 0.0110, 0.0070, 0.0012, 0.0006, 0.0012},
                                                      {0.0085, 0.0065, 0.0100, 0.0065, 0.0012, 0.0006, 0.0016}}};
const std::array<Crown, kTeethASide> kLowerCrowns = {{{0.0050, 0.0090, 0.0060, 0.0011, 0.0004, 0.0, 0.0},
                                                      {0.0055, 0.0095, 0.0065, 0.0011, 0.0005, 0.0, 0.0},
                                                      {0.0070, 0.0110, 0.0075, 0.0018, 0.0010, 0.0012, 0.0},
                                                      {0.0070, 0.0085, 0.0075, 0.0040, 0.0010, 0.0012, 0.0002},
                                                      {0.0070, 0.0080, 0.0080, 0.0045, 0.0010, 0.0010, 0.0004},
                                                      {0.0110, 0.0075, 0.0105, 0.0070, 0.0012, 0.0006, 0.0006},
                                                      {0.0105, 0.0070, 0.0100, 0.0070, 0.0012, 0.0006, 0.0008},
                                                      {0.0100, 0.0070, 0.0095, 0.0065, 0.0012, 0.0006, 0.0010}}};

double gum_margin(const Crown& crown, double across) {
    return crown.height * (1.0 - kPapilla * std::pow(std::abs(across), 2.2));
}

double edge_lift(const Crown& crown, double across) {
    const double radius = across > 0.0 ? kFarCorner * crown.corner : crown.corner;
    const double into = (std::abs(across) - 1.0) * 0.5 * crown.width + radius;  // the corner's arc
    const double arc = into > 0.0 ? radius - std::sqrt(std::max(0.0, radius * radius - into * into)) : 0.0;
    return crown.short_of + arc + crown.point * std::abs(across);
}

double crown_face(const Crown& crown, double across, double height) {
    const double up = std::clamp(height / crown.height, 0.0, 1.0);
    const double half = 1.0 - kNeckNarrower * smooth_step((up - kWidestAt) / (1.0 - kWidestAt));
    const double from_middle = std::min(1.0, std::abs(across) / half);
    const double gap = std::min(kDeepestGap, kGapOfWidth * crown.width);
    return -gap * std::pow(from_middle, 3.5) + kBulge * 4.0 * up * (1.0 - up);
}

double gum_face(double across, double along) {
    const double rounded = std::sqrt(std::max(0.0, 1.0 - std::pow(along, 8.0)));  // its rim on the tooth
    return (kGum - kGumFalls * across * across * along) * rounded;
}

}  // namespace understudy
