#include "sitter/wardrobe/hat.h"

#include <algorithm>
#include <cmath>

#include "sitter/wardrobe/sheet.h"

namespace understudy {
namespace {

// Sizes of a middling felt hat; common practice, no source.
constexpr double kFelt = 0.0022;
constexpr double kCrown = 0.105;         // from the band to the highest place
constexpr double kRoomOver = 0.014;      // over the head's top
constexpr double kEase = 0.007;          // between head and band: hair
constexpr double kRibbon = 0.032;        // how high the band stands …
constexpr double kRibbonThick = 0.0013;  // … and how far it stands out
constexpr double kDroop = 0.10;          // of the brim, a length a length
constexpr std::size_t kColumns = 144;

struct Sitting {
    Double3 middle, right, up, front;
};

// The band sits over the brows and, behind, a little over the ears' tops: a plane that falls by 9° toward the back.
Sitting sitting_on(const std::array<Double3, 2>& eyes, const HatSettings& hat) {
    const double apart = glm::distance(eyes[0], eyes[1]);
    const double fall = radians(9.0 - hat.tilt_deg);
    Sitting sitting;
    sitting.right = {1.0, 0.0, 0.0};
    sitting.up = {0.0, std::cos(fall), -std::sin(fall)};
    sitting.front = {0.0, std::sin(fall), std::cos(fall)};
    sitting.middle = 0.5 * (eyes[0] + eyes[1]) + apart * Double3(0.0, 0.72, -1.15);
    return sitting;
}

struct HeadRound {
    std::array<double, kColumns> radii{};
    double top = 0.0;  // of the head over the plane
};

// The head's outline in the plane, smooth and outside of it everywhere.
HeadRound round_of(const SkinnedMesh& mesh, const Sitting& sitting) {
    constexpr std::size_t kOrders = 4;
    constexpr std::size_t kBins = 48;
    std::array<double, kBins> most{};
    HeadRound head;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] >= Zone::kNeck || mesh.zones[t] == Zone::kEar || is_inside(mesh.zones[t])) continue;
        for (const auto v : mesh.triangles[t]) {
            const Double3 away = mesh.positions[v] - sitting.middle;
            const double height = glm::dot(away, sitting.up);
            head.top = std::max(head.top, height);
            if (height < -0.006 || height > 0.05) continue;
            const double x = glm::dot(away, sitting.right);
            const double z = glm::dot(away, sitting.front);
            const double turn = std::atan2(z, x) / (2.0 * kPiDouble) + 1.0;
            double& bin = most.at(static_cast<std::size_t>(turn * kBins) % kBins);
            bin = std::max(bin, std::hypot(x, z));
        }
    }
    std::array<double, 2 * kOrders + 1> waves{};
    for (std::size_t b = 0; b < kBins; ++b) {
        const double angle = 2.0 * kPiDouble * (static_cast<double>(b) + 0.5) / kBins;
        waves[0] += most.at(b) / kBins;
        for (std::size_t k = 1; k <= kOrders; ++k) {
            waves.at(2 * k - 1) += 2.0 / kBins * most.at(b) * std::cos(static_cast<double>(k) * angle);
            waves.at(2 * k) += 2.0 / kBins * most.at(b) * std::sin(static_cast<double>(k) * angle);
        }
    }
    const auto smooth = [&](double angle) {
        double sum = waves[0];
        for (std::size_t k = 1; k <= kOrders; ++k) {
            sum += waves.at(2 * k - 1) * std::cos(static_cast<double>(k) * angle) +
                   waves.at(2 * k) * std::sin(static_cast<double>(k) * angle);
        }
        return sum;
    };
    double lacking = 0.0;
    for (std::size_t b = 0; b < kBins; ++b) {
        lacking = std::max(lacking, most.at(b) - smooth(2.0 * kPiDouble * (static_cast<double>(b) + 0.5) / kBins));
    }
    for (std::size_t c = 0; c < kColumns; ++c) {
        head.radii.at(c) = smooth(2.0 * kPiDouble * static_cast<double>(c) / kColumns) + 0.5 * lacking + kEase;
    }
    return head;
}

// A place on the hat's profile: out from the band's radius, or a share of it, and up.
struct Rung {
    double share;   // of the band's radius
    double beyond;  // metres added
    double height;
};

std::vector<Rung> profile(double brim, double crown) {
    std::vector<Rung> rungs;
    constexpr int kBrim = 18;
    for (int i = 0; i <= kBrim; ++i) {
        const double out = 1.0 - static_cast<double>(i) / kBrim;
        rungs.push_back({1.0, 0.004 + brim * out, -kDroop * brim * out * out});
    }
    // Up the fold between brim and crown, and the ribbon's two edges.
    for (const auto& [beyond, height] : {std::pair{0.0022, 0.0004},
                                         {0.0010, 0.0016},
                                         {kRibbonThick, 0.0030},
                                         {kRibbonThick, 0.012},
                                         {kRibbonThick, 0.022},
                                         {kRibbonThick, kRibbon - 0.0008},
                                         {0.6 * kRibbonThick, kRibbon},
                                         {0.0, kRibbon + 0.0006}}) {
        rungs.push_back({1.0 - 0.06 * height / kRibbon, beyond, height});
    }
    constexpr int kWall = 14;
    const double shoulder = 0.030;  // radius of the crown's edge
    for (int i = 1; i <= kWall; ++i) {
        const double t = static_cast<double>(i) / kWall;
        const double height = glm::mix(kRibbon + 0.0006, crown - shoulder, t);
        rungs.push_back({glm::mix(0.94, 0.87, t), 0.0, height});
    }
    constexpr int kTurn = 12;
    for (int i = 1; i <= kTurn; ++i) {
        const double angle = 0.5 * kPiDouble * i / kTurn;
        rungs.push_back({0.87, -shoulder * (1.0 - std::cos(angle)), crown - shoulder * (1.0 - std::sin(angle))});
    }
    constexpr int kTop = 16;
    for (int i = 1; i < kTop; ++i) {
        const double t = 1.0 - static_cast<double>(i) / kTop;
        rungs.push_back({0.87 * t, -shoulder * t, crown});
    }
    return rungs;
}

// The crease along the top and the two dents at the front, pressed into the crown by hand. x to the side and z to the
// front in shares of the band's radius.
double pressed_down(double x, double z, double rise) {
    const double crease = 0.020 * std::exp(-x * x / (2.0 * 0.20 * 0.20)) * smooth_step((1.05 - std::abs(z)) / 0.5);
    return rise * crease;
}
double pressed_in(double x, double z, double rise) {
    const double dx = std::abs(x) - 0.52;
    const double dz = z - 0.62;
    return rise * 0.014 * std::exp(-(dx * dx + dz * dz) / (2.0 * 0.22 * 0.22));
}

}  // namespace

HatBand put_on_hat(SkinnedMesh& mesh, const std::array<Double3, 2>& eyes, const HatSettings& hat) {
    const Sitting sitting = sitting_on(eyes, hat);
    const HeadRound head = round_of(mesh, sitting);
    const double crown = std::max(kCrown, head.top + kRoomOver + 0.020);
    SheetPoint felt;
    felt.weights[kSkull] = 1.0F;
    std::vector<SheetPoint> points;
    for (const Rung& rung : profile(hat.brim_m, crown)) {
        for (std::size_t c = 0; c < kColumns; ++c) {
            const double angle = -2.0 * kPiDouble * static_cast<double>(c) / kColumns;
            const double band = head.radii.at((kColumns - c) % kColumns);
            const double rise = smooth_step((rung.height - kRibbon) / (crown - kRibbon));
            const double share = (rung.share * band + rung.beyond) / band;
            const double x = share * std::cos(angle);
            const double z = share * std::sin(angle);
            const double radius = share * band - pressed_in(x, z, rise);
            // The brim dips before and behind and rises at the sides.
            const double out = std::max(0.0, rung.beyond - 0.004);
            const double wave = rung.height <= 0.0 ? -0.16 * out * std::cos(2.0 * angle + kPiDouble) : 0.0;
            felt.place = sitting.middle + radius * (std::cos(angle) * sitting.right + std::sin(angle) * sitting.front) +
                         (rung.height + wave - pressed_down(x, z, rise)) * sitting.up;
            points.push_back(felt);
        }
    }
    ClothSheet sheet = grid_sheet(points, kColumns, true);
    const auto top = static_cast<std::uint32_t>(sheet.points.size());
    felt.place = sitting.middle + (crown - pressed_down(0.0, 0.0, 1.0)) * sitting.up;
    sheet.points.push_back(felt);
    for (std::uint32_t c = 0; c < kColumns; ++c) {
        const std::uint32_t last = top - static_cast<std::uint32_t>(kColumns);
        sheet.triangles.push_back({last + c, last + (c + 1) % static_cast<std::uint32_t>(kColumns), top});
    }
    set_normals(sheet);
    sew(mesh, sheet, kFelt, Zone::kHat, 1.0);
    return {sitting.middle, sitting.up};
}

}  // namespace understudy
