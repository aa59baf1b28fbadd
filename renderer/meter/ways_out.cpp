#include "meter/ways_out.h"

#include <array>
#include <cmath>
#include <optional>

#include "meter/cloth_change.h"
#include "meter/own_reading.h"

namespace understudy {
namespace {

// As cameras mark them, thirds of a stop from ISO 50; common practice.
constexpr std::array<double, 25> kIsoMarks{50,   64,   80,   100,  125,  160,  200,  250,  320,  400,  500,   640,  800,
                                           1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800};
double exact_iso(std::size_t mark) { return kIsoMarks.front() * std::exp2(static_cast<double>(mark) / 3.0); }

constexpr double kCloseEnough = 0.05;  // stops, half of what a head steps by

constexpr double kSheet = 0.15;      // neutral density comes in 0.15, 0.3, 0.6 and 0.9; common practice
constexpr double kFaceWidth = 0.14;  // cheek to cheek, bizygomatic (Farkas 1994: about 137 mm in men)
constexpr double kNearest = 0.3;     // metres from the face: nearer, a front is in the way
constexpr double kFarthest = 6.0;
constexpr int kBisections = 14;

std::optional<Remedy> by_iso(const OutOfRange& trouble) {
    const double wanted = trouble.iso * std::exp2(trouble.out_by_stops);
    Remedy way;
    way.kind = Remedy::Kind::kIso;
    way.enough = true;
    for (std::size_t mark = 0; mark < kIsoMarks.size(); ++mark) {
        const double stops_over_wanted = std::log2(exact_iso(mark) / wanted);
        const bool raises_enough = trouble.out_by_stops > 0.0 && stops_over_wanted >= -kCloseEnough;
        const bool lowers_enough = trouble.out_by_stops < 0.0 && stops_over_wanted <= kCloseEnough;
        if (!raises_enough && !lowers_enough) continue;
        way.value = kIsoMarks.at(mark);
        way.stops = std::log2(exact_iso(mark) / trouble.iso);
        if (raises_enough) break;  // the first that is high enough; of the low ones the last
    }
    return way.value > 0.0 ? std::optional(way) : std::nullopt;
}

Remedy by_neutral_density(double too_many_stops) {
    Remedy way;
    way.kind = Remedy::Kind::kNeutralDensity;
    way.value = kSheet * std::ceil((too_many_stops - kCloseEnough) * std::log10(2.0) / kSheet);
    way.stops = -way.value / std::log10(2.0);
    way.enough = true;
    return way;
}

// The light is taken to be aimed at the face: its own light falls off along its axis.
std::optional<Remedy> by_distance(const OutOfRange& trouble) {
    const auto reading = [&](double distance_m) {
        return axis_reading_per_lumen(trouble.modifier, trouble.built, distance_m);
    };
    const double before = reading(trouble.distance_m);
    const double wanted = before * std::exp2(trouble.out_by_stops);
    if (!(before > 0.0) || reading(kNearest) < wanted || reading(kFarthest) > wanted) return std::nullopt;
    double near = kNearest;
    double far = kFarthest;
    for (int i = 0; i < kBisections; ++i) {
        const double middle = std::sqrt(near * far);
        (reading(middle) > wanted ? near : far) = middle;
    }
    Remedy way;
    way.kind = Remedy::Kind::kDistance;
    way.value = std::sqrt(near * far);
    way.stops = trouble.out_by_stops;
    way.enough = true;
    way.fall_off_before = std::log2(before / reading(trouble.distance_m + kFaceWidth));
    way.fall_off_after = std::log2(reading(way.value) / reading(way.value + kFaceWidth));
    way.looks_as_large = trouble.distance_m / way.value;
    return way;
}

// What the change gives on the axis, by the modifier as it would then be built.
std::optional<Remedy> by_cloth(const OutOfRange& trouble) {
    const bool out = trouble.out_by_stops > 0.0;
    const auto changed = out ? with_cloth_out(trouble.modifier) : with_cloth_in(trouble.modifier);
    if (!changed) return std::nullopt;
    const auto built = build_modifier(*changed, trouble.modifier_cache);
    if (!built) return std::nullopt;  // a cloth that leaves no light at all is no way out
    const double before =
        trouble.built.efficiency * axis_reading_per_lumen(trouble.modifier, trouble.built, trouble.distance_m);
    const double after = built->efficiency * axis_reading_per_lumen(*changed, *built, trouble.distance_m);
    Remedy way;
    way.kind = out ? Remedy::Kind::kClothOut : Remedy::Kind::kClothIn;
    way.stops = std::log2(after / before);
    way.enough = std::abs(way.stops) >= std::abs(trouble.out_by_stops) - kCloseEnough;
    const bool helps = way.stops * trouble.out_by_stops > 0.0;
    return helps ? std::optional(way) : std::nullopt;
}

}  // namespace

std::vector<Remedy> ways_out(const OutOfRange& trouble) {
    std::vector<Remedy> ways;
    if (const auto way = by_iso(trouble)) ways.push_back(*way);
    if (trouble.out_by_stops < 0.0) ways.push_back(by_neutral_density(-trouble.out_by_stops));
    if (const auto way = by_distance(trouble)) ways.push_back(*way);
    if (const auto way = by_cloth(trouble)) ways.push_back(*way);
    return ways;
}

}  // namespace understudy
