#include "claims/exposure_claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "claims/quantities.h"
#include "film/exposure.h"
#include "meter/ratio.h"
#include "report/words.h"

namespace understudy {

namespace {

constexpr double kTenth = 0.1;         // stops: what a hand-held meter shows
constexpr double kThird = 1.0 / 3.0;   // what a camera sets
constexpr double kHalfOfThird = 0.17;  // a lens set to the nearest third of a stop

// --- the inverse square ---

double face_lxs(const ClaimReading& reading) {
    return face_reading(reading, Receptor::kFlat, Facing::kKey)->exposure_lxs;
}

// An even, perfectly diffuse front of this flux is Φ/π strong straight ahead; from far it would give Φ/(π d²).
double over_inverse_square_stops(const ClaimReading& reading) {
    const double distance = reading.key_distance_m;
    return std::log2(face_lxs(reading) * kPiDouble * distance * distance / key_lumens(reading));
}

double distance_m(const ClaimReading& reading) { return reading.key_distance_m; }

double lost_on_doubling(const ClaimReading& near, const ClaimReading& far) {
    return std::log2(face_lxs(near) / face_lxs(far));
}

std::string doubling_words(const ClaimReading& near, const ClaimReading& far) {
    const double lost = lost_on_doubling(near, far);
    return fmt::format("From {} to {}, {:.1f} to {:.1f} times the front's width, it loses {:.2f} stops{}.",
                       told_metres(near.key_distance_m), told_metres(far.key_distance_m),
                       1.0 / width_over_distance(near), 1.0 / width_over_distance(far), lost,
                       std::abs(lost - 2.0) <= kTenth ? ", as the inverse square has it" : " instead of two");
}

Settled settle_inverse_square(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kDoublings = 3;
    Settled settled;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < kDoublings; ++i) {
        settled.holds.push_back(doubling_words(cases[i], cases[i + 1]));
        kept += std::abs(lost_on_doubling(cases[i], cases[i + 1]) - 2.0) <= kTenth ? 1 : 0;
    }
    settled.outcome = kept == kDoublings ? Outcome::kClaim : kept == 0 ? Outcome::kOpposite : Outcome::kDepends;
    settled.holds.push_back(
        fmt::format("At {} the meter reads {} under what the inverse square foretells from far, at {} {}.",
                    told_metres(distance_m(cases[0])), told_stops(-over_inverse_square_stops(cases[0])),
                    told_metres(distance_m(cases[3])), told_stops(-over_inverse_square_stops(cases[3]))));
    const double room = lost_on_doubling(cases[4], cases[5]);
    settled.conditions = {
        fmt::format(
            "It is the distance over the width of the front that counts, not the distance: within a tenth of a stop "
            "the law is kept by {} of the {} doublings.",
            kept, kDoublings),
        fmt::format("In a white room the doubling from {} to {} loses {:.2f} stops instead of {:.2f}: {}.",
                    told_metres(distance_m(cases[4])), told_metres(distance_m(cases[5])), room,
                    lost_on_doubling(cases[2], cases[3]),
                    room < lost_on_doubling(cases[2], cases[3]) - kTenth ? "the walls bring some of it back"
                                                                         : "the walls hardly matter")};
    return settled;
}

// --- the dome ---

double dome_difference(const ClaimReading& reading) {
    return stops_between_readings(face_reading(reading, Receptor::kDome, Facing::kKey),
                                  face_reading(reading, Receptor::kDome, Facing::kCamera));
}
double flat_difference(const ClaimReading& reading) {
    return stops_between_readings(face_reading(reading, Receptor::kFlat, Facing::kKey),
                                  face_reading(reading, Receptor::kFlat, Facing::kCamera));
}

// The lit cheek over what the camera is set for by a dome: 0 is a cheek exposed as if it were read by itself.
double lit_cheek_over(const ClaimReading& reading, Facing facing) {
    const Reading* dome = face_reading(reading, Receptor::kDome, facing);
    const Reading* cheek = brighter_cheek(reading.report.readings);
    if (cheek == nullptr || !(dome->f_number > 0.0)) return kNone;
    return stops_between_f_numbers(dome->f_number, cheek->f_number);
}
double lit_cheek_by_camera(const ClaimReading& reading) { return lit_cheek_over(reading, Facing::kCamera); }
double lit_cheek_by_light(const ClaimReading& reading) { return lit_cheek_over(reading, Facing::kKey); }

double spread_of(const std::vector<ClaimReading>& cases, double (*of)(const ClaimReading&), std::size_t count) {
    double least = HUGE_VAL, most = -HUGE_VAL;
    for (std::size_t i = 0; i < count; ++i) {
        least = std::min(least, of(cases[i]));
        most = std::max(most, of(cases[i]));
    }
    return most - least;
}

Settled settle_dome(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kAngles = 4;
    constexpr std::size_t kToSixty = 3;
    const std::array angles{"over the lens", "45 degrees aside", "60 degrees aside", "90 degrees aside"};
    Settled settled;
    std::size_t alike = 0;
    for (std::size_t i = 0; i < kAngles; ++i) {
        const double difference = dome_difference(cases[i]);
        alike += std::abs(difference) <= kThird ? 1 : 0;
        settled.holds.push_back(
            fmt::format("With the light {} the dome reads {} toward the camera against toward the light; a "
                        "flat receptor {}.",
                        angles[i], told_signed_stops(difference), told_signed_stops(flat_difference(cases[i]))));
    }
    settled.outcome = alike == kAngles ? Outcome::kNeither : alike == 0 ? Outcome::kBoth : Outcome::kDepends;
    const double by_camera = spread_of(cases, lit_cheek_by_camera, kToSixty);
    const double by_light = spread_of(cases, lit_cheek_by_light, kToSixty);
    settled.conditions = {
        fmt::format("The two ways agree within a third of a stop for {} of {} places of the light.", alike, kAngles),
        fmt::format("From the lens to 60 degrees aside the lit cheek drifts by {} when the dome faces the camera, and "
                    "by {} when "
                    "it faces the light: {} keeps the tone of what looks at the camera the steadier.",
                    told_stops(by_camera), told_stops(by_light),
                    by_light < by_camera ? "the dome to the light" : "the dome to the camera"),
        fmt::format("With a fill at the lens one stop under the key, the light 60 degrees aside, the difference is {} "
                    "instead of "
                    "{}: {}.",
                    told_signed_stops(dome_difference(cases[4])), told_signed_stops(dome_difference(cases[2])),
                    std::abs(dome_difference(cases[4])) < std::abs(dome_difference(cases[2])) - kTenth / 2.0
                        ? "the more fill, the less it matters"
                        : "fill does not change it")};
    return settled;
}

double dome_to_camera(const ClaimReading& reading) {
    return face_reading(reading, Receptor::kDome, Facing::kCamera)->f_number;
}

// --- three to one ---

// Each light's own reading, square to it.
double fill_under_key(const ClaimReading& reading) {
    return stops_between_f_numbers(reading.report.powers[1].f_number, reading.report.powers[0].f_number);
}
double key_over_fill(const ClaimReading& reading) { return std::exp2(fill_under_key(reading)); }
double both_over_fill(const ClaimReading& reading) { return key_over_fill(reading) + 1.0; }
double twice_the_stops(const ClaimReading& reading) { return 2.0 * fill_under_key(reading); }
double dome_key_over_fill(const ClaimReading& reading) {
    return reading.report.ratio ? reading.report.ratio->face_key_to_fill : kNone;
}
double dome_both_over_fill(const ClaimReading& reading) {
    return reading.report.ratio ? reading.report.ratio->face_key_and_fill_to_fill : kNone;
}
double cheek_ratio(const ClaimReading& reading) {
    return reading.report.ratio ? reading.report.ratio->key_to_fill : kNone;
}

// The case that comes nearest to three to one, of the black studio's.
const ClaimReading& nearest_to_three(const std::vector<ClaimReading>& cases, double (*ratio)(const ClaimReading&)) {
    constexpr std::ptrdiff_t kBlack = 4;
    return *std::min_element(cases.begin(), cases.begin() + kBlack, [&](const ClaimReading& a, const ClaimReading& b) {
        return std::abs(std::log2(ratio(a) / 3.0)) < std::abs(std::log2(ratio(b) / 3.0));
    });
}

std::string nearest_words(const std::vector<ClaimReading>& cases, double (*ratio)(const ClaimReading&),
                          const std::string& counted) {
    constexpr double kOff = 0.15;
    const ClaimReading& nearest = nearest_to_three(cases, ratio);
    const bool off = std::abs(ratio(nearest) / 3.0 - 1.0) > kOff;
    return fmt::format("Counted as {}, {} a fill {:.1f} stops under the key, {}.", counted,
                       off ? "none of the levels makes three to one; nearest to it is" : "three to one is",
                       fill_under_key(nearest), to_one(ratio(nearest)));
}

Settled settle_three_to_one(const std::vector<ClaimReading>& cases) {
    const auto says = [&](double (*ratio)(const ClaimReading&), double stops) {
        return std::abs(fill_under_key(nearest_to_three(cases, ratio)) - stops) < kHalfOfThird;
    };
    const bool one_stop = says(both_over_fill, 1.0);
    const bool one_and_half = says(key_over_fill, 1.5);
    Settled settled;
    settled.outcome = one_stop && one_and_half ? Outcome::kBoth
                      : one_stop               ? Outcome::kClaim
                      : one_and_half           ? Outcome::kOpposite
                                               : Outcome::kNeither;
    settled.holds = {nearest_words(cases, both_over_fill, "key and fill over fill, each read toward its light"),
                     nearest_words(cases, key_over_fill, "key over fill, each read toward its light"),
                     nearest_words(cases, twice_the_stops, "the stops times two, a rule that is wrong everywhere else"),
                     nearest_words(cases, cheek_ratio, "the lit cheek over the other, as this face is lit")};
    settled.conditions = {
        fmt::format("With the dome to the camera a fill one stop under the key counts {} key over fill and {} key and "
                    "fill over "
                    "fill: the dome sees the key from the side and takes it for weaker.",
                    to_one(dome_key_over_fill(cases[1])), to_one(dome_both_over_fill(cases[1]))),
        fmt::format(
            "In a white room the same two lights make {} from cheek to cheek instead of {}: {}.",
            to_one(cheek_ratio(cases[4])), to_one(cheek_ratio(cases[1])),
            cheek_ratio(cases[4]) < 0.95 * cheek_ratio(cases[1]) ? "the walls fill as well" : "the walls hardly fill")};
    return settled;
}

}  // namespace

Claim inverse_square_claim() {
    Claim claim;
    claim.name = "inverse-square";
    claim.claim = "A softbox obeys the inverse square: twice as far is two stops less.";
    claim.opposite = "Not when it is close.";
    claim.experiment =
        "An even, perfectly diffuse disc of 60 cm, its output left alone, at distances that double from 0.3 m on, "
        "nothing round "
        "it; then at the two farther ones in a white room. The camera is set for what the meter reads.";
    claim.cases = {{"0.3 m", "inverse-square", {"light.key.distance=0.3 m"}},
                   {"0.6 m", "inverse-square", {"light.key.distance=0.6 m"}},
                   {"1.2 m", "inverse-square"},
                   {"2.4 m", "inverse-square", {"light.key.distance=2.4 m"}},
                   {"1.2 m, white room", "inverse-square-room"},
                   {"2.4 m, white room", "inverse-square-room", {"light.key.distance=2.4 m"}}};
    claim.quantities = {
        {"distance", "distance_m", distance_m, told_metres},
        the_width(),
        the_meter(),
        {"over the inverse square", "over_inverse_square_stops", over_inverse_square_stops, told_signed_stops}};
    claim.settle = settle_inverse_square;
    return claim;
}

Claim dome_direction_claim() {
    Claim claim;
    claim.name = "dome-direction";
    claim.claim = "Point the incident meter's dome at the camera.";
    claim.opposite = "Point it at the light.";
    claim.experiment =
        "A small light 2 m away walks round the sitter, always at the same reading of its own; then at 60 degrees with "
        "a fill at "
        "the lens one stop under it. The pictures are exposed for the dome toward the camera.";
    claim.cases = {{"over the lens", "dome-direction", {"light.key.angle=0", "light.key.elevation=8"}},
                   {"45 degrees", "dome-direction"},
                   {"60 degrees", "dome-direction", {"light.key.angle=-60"}},
                   {"90 degrees", "dome-direction", {"light.key.angle=-90"}},
                   {"60 degrees, with fill", "dome-direction", {"light.key.angle=-60", "light.fill.from_key=-1"}}};
    claim.asked.skin = true;
    claim.quantities = {
        {"dome to camera", "dome_camera_f_number", dome_to_camera, told_lens},
        {"dome to light", "dome_light_f_number",
         [](const ClaimReading& r) { return face_reading(r, Receptor::kDome, Facing::kKey)->f_number; }, told_lens},
        {"flat to camera", "flat_camera_f_number",
         [](const ClaimReading& r) { return face_reading(r, Receptor::kFlat, Facing::kCamera)->f_number; }, told_lens},
        {"flat to light", "flat_light_f_number", face_f_number, told_lens},
        {"dome, camera against light", "dome_difference_stops", dome_difference, told_signed_stops},
        {"lit cheek, by dome to camera", "lit_cheek_by_camera_stops", lit_cheek_by_camera, told_signed_stops},
        {"lit cheek, by dome to light", "lit_cheek_by_light_stops", lit_cheek_by_light, told_signed_stops}};
    claim.settle = settle_dome;
    claim.developed_at = dome_to_camera;
    return claim;
}

Claim three_to_one_claim() {
    Claim claim;
    claim.name = "three-to-one";
    claim.claim = "Three to one is a fill one stop under the key.";
    claim.opposite = "Three to one is a fill one and a half stops under the key; one stop is two to one.";
    claim.experiment =
        "A key 45 degrees to camera left and a fill over the lens, four levels of it in a black studio, then one stop "
        "under the "
        "key in a white room. Every way of counting is told of each.";
    claim.cases = {{"fill as strong", "three-to-one", {"light.fill.from_key=0"}},
                   {"1 stop under", "three-to-one"},
                   {"1.5 stops under", "three-to-one", {"light.fill.from_key=-1.5"}},
                   {"2 stops under", "three-to-one", {"light.fill.from_key=-2"}},
                   {"1 stop under, white room", "three-to-one-room"}};
    claim.asked.skin = true;
    claim.quantities = {{"fill under key", "fill_under_key_stops", fill_under_key, told_stops},
                        {"key over fill, K:F", "key_over_fill", key_over_fill, told_ratio},
                        {"key and fill over fill, (K+F):F", "both_over_fill", both_over_fill, told_ratio},
                        {"K:F, dome to camera", "dome_key_over_fill", dome_key_over_fill, told_ratio},
                        {"(K+F):F, dome to camera", "dome_both_over_fill", dome_both_over_fill, told_ratio},
                        {"lit cheek over the other", "cheek_ratio", cheek_ratio, told_ratio},
                        {"the same in stops", "cheek_stops", cheek_stops, told_stops},
                        {"stops times two (wrong)", "twice_the_stops", twice_the_stops, told_ratio}};
    claim.settle = settle_three_to_one;
    return claim;
}

}  // namespace understudy
