#include "setup/check_construction.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace understudy {

namespace {

using Body = Construction::Body;

std::string length(double metres) { return show_measure(metres, kLength); }

double half_across(const ModifierShape& front) {
    if (const auto* rectangle = std::get_if<RectangleShape>(&front)) {
        return 0.5 * std::min(rectangle->width_m, rectangle->height_m);
    }
    if (const auto* polygon = std::get_if<PolygonShape>(&front)) {
        return 0.5 * polygon->diameter_m * std::cos(kPiDouble / polygon->sides);
    }
    if (const auto* disc = std::get_if<DiscShape>(&front)) return 0.5 * disc->diameter_m;
    if (const auto* ring = std::get_if<RingShape>(&front)) return 0.5 * ring->diameter_m;
    if (const auto* sphere = std::get_if<SphereShape>(&front)) return 0.5 * sphere->diameter_m;
    return 0.0;
}

// The tube, or the frosted glass over it.
struct Shining {
    double radius_m;       // across the axis
    double half_length_m;  // along it
};

Shining shining(const Tube& tube) {
    if (tube.glass == Tube::Glass::kFrosted) return {0.5 * tube.glass_diameter_m, 0.5 * tube.glass_diameter_m};
    if (!tube.ring) return {0.5 * tube.diameter_m, 0.5 * tube.diameter_m};
    return {0.5 * (tube.diameter_m + tube.thickness_m), 0.5 * tube.thickness_m};
}

class Check {
  public:
    Check(TableReader& table, const Construction& construction, const ModifierShape& front)
        : table_(table), built_(construction), front_(front) {}

    bool all() {
        if (built_.body == Body::kParabola && built_.tube.before_back_m > built_.depth_m) {
            refuse("focal_length",
                   fmt::format("puts the tube, {} before the vertex, outside a depth of {}",
                               length(built_.tube.before_back_m), length(built_.depth_m)),
                   fmt::format("at most half the front's radius, {}", length(0.5 * half_across(front_))));
            return fits_;
        }
        back();
        tube();
        if (built_.deflector) deflector(*built_.deflector);
        if (built_.inner_cloth) inner_cloth(*built_.inner_cloth);
        if (built_.grid) grid(*built_.grid);
        if (built_.body == Body::kBall && !built_.front_cloth) {
            refuse("body", "is a ball of nothing", "front_cloth = true or \"glass\"");
        }
        return fits_;
    }

  private:
    void refuse(std::string_view key, std::string_view what, std::string_view expected) {
        fits_ = false;
        table_.log().add(table_.place_of(key), fmt::format("{} {} {}", table_.name(), key, what), expected);
    }

    void back() {
        if (built_.body == Body::kBox && built_.back_diameter_m > 2.0 * half_across(front_)) {
            refuse("back", fmt::format("of {} is wider than the front", length(built_.back_diameter_m)),
                   fmt::format("at most {}", length(2.0 * half_across(front_))));
        }
    }

    void tube() {
        const Shining light = shining(built_.tube);
        const double at = built_.tube.before_back_m;
        const bool ball = built_.body == Body::kBall;
        const double length_inside = ball ? 2.0 * built_.depth_m : built_.depth_m;
        if (at - light.half_length_m < 0.0 || at + light.half_length_m > length_inside) {
            refuse(
                "tube",
                fmt::format("reaches from {} to {} before the back, out of a depth of {}",
                            length(at - light.half_length_m), length(at + light.half_length_m), length(length_inside)),
                "a tube inside the body");
            return;
        }
        const double room = inside_radius_m(built_, front_, at);
        if (light.radius_m > room) {
            refuse("tube",
                   fmt::format("is {} across where there are {}", length(2.0 * light.radius_m), length(2.0 * room)),
                   "a tube between the walls");
        }
        const auto* ring = std::get_if<RingShape>(&front_);
        if (ring != nullptr && 0.5 * (built_.tube.diameter_m - built_.tube.thickness_m) < 0.5 * ring->inner_m) {
            refuse("tube", fmt::format("of {} runs into the hole", length(built_.tube.diameter_m)),
                   fmt::format("a ring wider than {}", length(ring->inner_m)));
        }
    }

    double tube_ends_at() const { return built_.tube.before_back_m + shining(built_.tube).half_length_m; }

    void deflector(const Deflector& plate) {
        if (plate.before_back_m >= built_.depth_m) {
            refuse("deflector",
                   fmt::format("is {} before the back, outside a depth of {}", length(plate.before_back_m),
                               length(built_.depth_m)),
                   "a plate inside the body");
            return;
        }
        const double room = inside_radius_m(built_, front_, plate.before_back_m);
        if (0.5 * plate.diameter_m >= room) {
            refuse("deflector",
                   fmt::format("of {} fills the body, {} across there, so that no light comes out",
                               length(plate.diameter_m), length(2.0 * room)),
                   "a smaller plate");
        }
        if (plate.before_back_m <= tube_ends_at()) {
            refuse("deflector",
                   fmt::format("is {} before the back, not before the tube, which ends at {}",
                               length(plate.before_back_m), length(tube_ends_at())),
                   "a plate before the tube");
        }
    }

    void inner_cloth(const InnerCloth& cloth) {
        const double behind = built_.deflector ? built_.deflector->before_back_m : tube_ends_at();
        if (cloth.behind_front_m >= built_.depth_m - behind) {
            refuse("inner_cloth",
                   fmt::format("is {} behind the front, where the tube or the deflector is or outside "
                               "the body",
                               length(cloth.behind_front_m)),
                   fmt::format("less than {}", length(built_.depth_m - behind)));
            return;
        }
        const double room = inside_radius_m(built_, front_, built_.depth_m - cloth.behind_front_m);
        if (cloth.gap_m >= room) {
            refuse("inner_cloth",
                   fmt::format("leaves a gap of {} where the walls are {} from the axis", length(cloth.gap_m),
                               length(room)),
                   "a smaller gap");
        }
    }

    void grid(const Grid& cells) {
        const double angle = degrees(2.0 * std::atan(cells.width_m / cells.depth_m));
        constexpr double kNarrowest = 4.0;
        if (angle < kNarrowest) {
            refuse("grid",
                   fmt::format("of cells {} wide and {} deep lets pass only {:.2f} degrees", length(cells.width_m),
                               length(cells.depth_m), angle),
                   fmt::format("at least {:.0f} degrees", kNarrowest));
        }
        if (built_.body == Body::kBall) refuse("grid", "is set before a ball", "a grid on a flat front");
    }

    TableReader& table_;
    const Construction& built_;
    const ModifierShape& front_;
    bool fits_ = true;
};

}  // namespace

double inside_radius_m(const Construction& construction, const ModifierShape& front, double before_back_m) {
    const double out = half_across(front);
    const double back = std::min(0.5 * construction.back_diameter_m, out);
    const double share = before_back_m / construction.depth_m;
    switch (construction.body) {
        case Body::kRing:
            return out;
        case Body::kBall:
            return std::sqrt(std::max(0.0, before_back_m * (2.0 * out - before_back_m)));
        case Body::kParabola:
            return out * std::sqrt(share);
        case Body::kBowl: {
            const double own_back = 0.5 * construction.back_diameter_m;
            return std::sqrt(own_back * own_back + share * (out * out - own_back * own_back));
        }
        case Body::kCone:
            return 0.5 * construction.back_diameter_m + share * (out - 0.5 * construction.back_diameter_m);
        case Body::kBox:
            break;
    }
    return back + share * (out - back);
}

bool construction_fits(TableReader& table, const Construction& construction, const ModifierShape& front) {
    return Check(table, construction, front).all();
}

}  // namespace understudy
