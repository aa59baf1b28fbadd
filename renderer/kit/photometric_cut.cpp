#include "kit/photometric_cut.h"

#include <cmath>

namespace understudy {
namespace {

constexpr double kStepDeg = 0.1;
constexpr int kSteps = 3600;

// The distance from the peak, to one side (+1 or −1), at which the level is first gone below; none all round.
std::optional<double> fall(const PhotometricWeb& web, CutPlane plane, double peak_at_deg, double side, double level) {
    const auto above = [&](double away) { return cut_candela(web, plane, peak_at_deg + side * away) >= level; };
    for (int i = 1; i <= kSteps; ++i) {
        if (above(i * kStepDeg)) continue;
        double inner = (i - 1) * kStepDeg;
        double outer = i * kStepDeg;
        for (int halving = 0; halving < 20; ++halving) {
            const double middle = 0.5 * (inner + outer);
            (above(middle) ? inner : outer) = middle;
        }
        return inner;
    }
    return std::nullopt;
}

std::optional<CutSpread> spread(const PhotometricWeb& web, CutPlane plane, const CutProfile& profile, double share) {
    const double level = share * profile.peak_candela;
    const auto low = fall(web, plane, profile.peak_at_deg, -1.0, level);
    const auto high = fall(web, plane, profile.peak_at_deg, 1.0, level);
    if (!low || !high) return std::nullopt;
    return CutSpread{profile.peak_at_deg - *low, profile.peak_at_deg + *high};
}

}  // namespace

double cut_candela(const PhotometricWeb& web, CutPlane plane, double angle_deg) {
    const auto ahead = static_cast<float>(std::cos(radians(angle_deg)));
    const auto aside = static_cast<float>(std::sin(radians(angle_deg)));
    return web.candela(plane == CutPlane::kUpright ? Vec3(0.0F, aside, ahead) : Vec3(aside, 0.0F, ahead));
}

CutProfile cut_profile(const PhotometricWeb& web, CutPlane plane) {
    CutProfile profile;
    // From straight ahead outward, so that of equal peaks the one nearest ahead is told.
    for (int i = 0; i <= kSteps / 2; ++i) {
        for (const double side : {1.0, -1.0}) {
            const double candela = cut_candela(web, plane, side * i * kStepDeg);
            // More than the rounding of a direction.
            if (candela <= profile.peak_candela * (1.0 + 1e-6)) continue;
            profile.peak_candela = candela;
            profile.peak_at_deg = side * i * kStepDeg;
        }
    }
    if (profile.peak_candela > 0.0) {
        profile.half = spread(web, plane, profile, 0.5);
        profile.tenth = spread(web, plane, profile, 0.1);
    }
    return profile;
}

}  // namespace understudy
