#include "claims/eye_claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "claims/quantities.h"
#include "report/face_text.h"
#include "report/words.h"

namespace understudy {

namespace {

constexpr int kMinutes = 5;  // a clock's time is told to

// --- the catchlight's clock ---

// The key's mirror image in an eye; none: there is none on the cornea.
const Catchlight* key_in(const ClaimReading& reading, const std::string& eye) {
    if (!reading.report.catchlights) return nullptr;
    for (const Catchlight& light : *reading.report.catchlights) {
        if (light.eye == eye && light.light == reading.setup.lights.front().name) return &light;
    }
    return nullptr;
}
double clock_in(const ClaimReading& reading, const std::string& eye) {
    const Catchlight* light = key_in(reading, eye);
    return light == nullptr ? kNone : light->clock_deg;
}
double clock_at_left(const ClaimReading& reading) { return clock_in(reading, "camera-left"); }
double clock_at_right(const ClaimReading& reading) { return clock_in(reading, "camera-right"); }
double out_at_left(const ClaimReading& reading) {
    const Catchlight* light = key_in(reading, "camera-left");
    return light == nullptr ? kNone : static_cast<double>(glm::length(light->offset_in_iris));
}
double least_shown(const ClaimReading& reading) {
    double least = 1.0;
    for (const char* eye : {"camera-left", "camera-right"}) {
        const Catchlight* light = key_in(reading, eye);
        least = std::min(least, light == nullptr ? 0.0 : light->visible);
    }
    return least;
}
double shown_in_left_eye(const ClaimReading& reading) {
    if (!reading.report.catchlights) return kNone;
    const auto shown = [](const Catchlight& light) {
        return light.eye == "camera-left" && light.visible >= kLeastShown;
    };
    return static_cast<double>(
        std::count_if(reading.report.catchlights->begin(), reading.report.catchlights->end(), shown));
}

std::string told_clock(double degrees) { return clock_time(degrees, kMinutes); }
std::string told_count(double value) { return plain_number(value, 0); }

// Hours from a clock's time to the nearer of two, 12 being 0.
bool near_hours(double degrees, double hours, double within_h = 0.25) {
    const double hour = degrees / 30.0;
    return std::min(std::abs(hour - hours), std::abs(12.0 - hour - hours)) <= within_h;
}

Settled settle_clock(const std::vector<ClaimReading>& cases) {
    const std::array places{"45 degrees across and 45 up", "45 across and 22 up", "20 across and 45 up",
                            "straight over the lens, 30 up"};
    Settled settled;
    bool ten_or_two = true;
    bool never = true;
    for (std::size_t i = 0; i < 4; ++i) {
        const double clock = clock_at_left(cases[i]);
        ten_or_two = ten_or_two && near_hours(clock, 2.0);
        never = never && !near_hours(clock, 2.0);
        settled.holds.push_back(
            fmt::format("{}: at {} in one eye and {} in the other, {} of the iris's radius out; {} of it shows "
                        "in the eye that shows less.",
                        places[i], told_clock(clock), told_clock(clock_at_right(cases[i])),
                        told_percent(out_at_left(cases[i])), told_percent(least_shown(cases[i]))));
    }
    settled.outcome = ten_or_two ? Outcome::kClaim : never ? Outcome::kOpposite : Outcome::kDepends;
    settled.conditions = {
        fmt::format("The classical 45 and 45 is {}; {} o'clock needs a light that is lower, or farther round.",
                    near_hours(clock_at_left(cases[0]), 2.0)
                        ? "at 10 or 2"
                        : "not at 10 or 2 but near " + told_clock(clock_at_left(cases[0])),
                    "10 or 2"),
        fmt::format("Over the lens, the small light alone shows {} in an eye, a large one with a white card under the "
                    "chin {}: {}.",
                    told_count(shown_in_left_eye(cases[3])), told_count(shown_in_left_eye(cases[4])),
                    shown_in_left_eye(cases[4]) > shown_in_left_eye(cases[3])
                        ? "whether a second one is a fault is a matter of taste; that it is there is not"
                        : "the card does not show here"),
        fmt::format(
            "What the lid hides of the lights that stand 45 degrees up ({} and {} of them show) is another matter than "
            "the clock: gaze, chin and lids decide it.",
            told_percent(least_shown(cases[0])), told_percent(least_shown(cases[2])))};
    return settled;
}

// --- where the key belongs ---

// Of the key in front: height is judged so, and kept when the light is swung round.
double to_lip(const ClaimReading& reading) { return reading.to_lip_in_front.value_or(kNone); }
double lip_at_deg(const ClaimReading& reading) { return reading.lip_at_deg.value_or(kNone); }
double darker_eye_stops(const ClaimReading& reading) {
    if (!reading.report.eyes) return kNone;
    double darkest = HUGE_VAL;
    for (const EyeReading& eye : *reading.report.eyes) darkest = std::min(darkest, eye.stops_from_cheek);
    return darkest;
}
double key_up_deg(const ClaimReading& reading) {
    const auto& face = reading.report.face;
    return face && face->pattern ? face->pattern->up_deg : kNone;
}
std::string pattern_of(const ClaimReading& reading) {
    return reading.report.face ? pattern_words(*reading.report.face) : "none";
}
std::string told_degrees(double value) {
    return std::isfinite(value) ? plain_number(value, 0) + "\u00b0" : std::string("none");
}

// As the manuals want it: the nose's shadow just down to the upper lip, give or take a quarter of the way, and a
// catchlight of which at least half shows in either eye.
bool as_the_manuals_want(const ClaimReading& reading) {
    constexpr double kReaches = 0.75;
    constexpr double kTooLow = 1.25;
    return to_lip(reading) >= kReaches && to_lip(reading) <= kTooLow && least_shown(reading) >= 0.5;
}

std::string place_words(const char* place, const ClaimReading& average, const ClaimReading& deep) {
    return fmt::format(
        "{}: on the average face {}, the nose's shadow {} of the way to the lip with the light in front, {} of the "
        "catchlight in the eye "
        "that shows less; on the other face {}, {}, {}.",
        place, pattern_of(average), told_percent(to_lip(average)), told_percent(least_shown(average)), pattern_of(deep),
        told_percent(to_lip(deep)), told_percent(least_shown(deep)));
}

Settled settle_key_place(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kPlaces = 3;
    const std::array places{"45 across, 45 up", "Four feet away, two feet up", "Lower edge level with the chin"};
    std::array<int, kPlaces> good{};
    Settled settled;
    for (std::size_t i = 0; i < kPlaces; ++i) {
        settled.holds.push_back(place_words(places[i], cases[i], cases[i + kPlaces]));
        for (const std::size_t k : {i, i + kPlaces}) good.at(i) += as_the_manuals_want(cases[k]) ? 1 : 0;
    }
    const bool others = good[1] > 0 || good[2] > 0;
    settled.outcome = good[0] == 2 && !others  ? Outcome::kClaim
                      : good[0] == 0 && others ? Outcome::kOpposite
                      : good[0] == 0           ? Outcome::kNeither
                                               : Outcome::kDepends;
    settled.conditions = {
        fmt::format("The manuals' test, the shadow at the upper lip and a catchlight in both eyes, is passed by 45 and "
                    "45 on {} of "
                    "the two faces, by four feet and two on {}, by the lower edge at the chin on {}.",
                    good[0], good[1], good[2]),
        fmt::format("With the light in front the nose's shadow touches the lip of the average face at {} up, that of "
                    "the other at "
                    "{}.",
                    told_degrees(lip_at_deg(cases[0])), told_degrees(lip_at_deg(cases[3]))),
        fmt::format("Raising the key from {} to {} takes the darker eye of the average face from {} to {} against its "
                    "cheek, and "
                    "of the deep-set one from {} to {}.",
                    told_degrees(key_up_deg(cases[2])), told_degrees(key_up_deg(cases[0])),
                    told_signed_stops(darker_eye_stops(cases[2])), told_signed_stops(darker_eye_stops(cases[0])),
                    told_signed_stops(darker_eye_stops(cases[5])), told_signed_stops(darker_eye_stops(cases[3])))};
    return settled;
}

// --- glasses ---

double covered(const ClaimReading& reading) {
    double most = 0.0;
    for (const Warning& warning : reading.report.warnings) most = std::max(most, 0.01 * warning.number);
    return most;
}
double veil_stops(const ClaimReading& reading) {
    double most = kNone;
    for (const Warning& warning : reading.report.warnings) {
        if (warning.also && !(*warning.also <= most)) most = *warning.also;
    }
    return most;
}

Settled settle_glasses(const std::vector<ClaimReading>& cases) {
    const ClaimReading& small = cases[0];
    const ClaimReading& large = cases[2];
    const double more = covered(large) - covered(small);
    const double veil = veil_stops(cases[5]) - veil_stops(cases[4]);
    Settled settled;
    settled.outcome = more > 0.02 ? Outcome::kOpposite : more < -0.02 ? Outcome::kClaim : Outcome::kNeither;
    settled.holds = {
        fmt::format("Low and to the side, a light of 20 cm lies over {} of an eye in the lens, one of 60 cm over {}, "
                    "one of 120 cm over {}: {}.",
                    told_percent(covered(small)), told_percent(covered(cases[1])), told_percent(covered(large)),
                    compared(covered(small), covered(large), 0.02, "the larger it is, the harder to hide",
                             "the larger one is the easier to hide", "its size makes no difference here"))};
    settled.conditions = {
        fmt::format("The largest one raised to 35 degrees lies over {}: {}.", told_percent(covered(cases[3])),
                    covered(cases[3]) < covered(large) ? "its angle cures what its size does not"
                                                       : "raising it does not cure it"),
        fmt::format("Where even a small light is mirrored, low before the sitter, 20 cm lie over {} of the eye at {} "
                    "from grey and "
                    "40 cm over {} at {}, at the same reading: {}.",
                    told_percent(covered(cases[4])), told_signed_stops(veil_stops(cases[4])),
                    told_percent(covered(cases[5])), told_signed_stops(veil_stops(cases[5])),
                    veil < 0.0 ? "the larger glare is the fainter one, which is what is true of the claim"
                               : "the larger glare is no fainter")};
    return settled;
}

}  // namespace

Claim catchlight_clock_claim() {
    Claim claim;
    claim.name = "catchlight-clock";
    claim.claim = "The catchlight belongs at 10 or 2 o'clock.";
    claim.opposite = "At 11 or 1; for beauty at 12; never two of them; two are fine.";
    claim.experiment =
        "A light of 30 cm at four places round the lens, the sitter looking into it; then a white card under the chin. "
        "The clock is "
        "read in the picture: 12 is up, 3 is picture right.";
    claim.cases = {{"45 across, 45 up", "catchlight-clock"},
                   {"45 across, 22 up", "catchlight-clock", {"light.key.elevation=22"}},
                   {"20 across, 45 up", "catchlight-clock", {"light.key.angle=20"}},
                   {"over the lens, 30 up", "catchlight-clock", {"light.key.angle=0", "light.key.elevation=30"}},
                   {"large, with a card", "catchlight-clock-card"}};
    claim.asked.eyes = true;
    claim.quantities = {{"clock in the eye at left", "clock_left_deg", clock_at_left, told_clock},
                        {"clock in the eye at right", "clock_right_deg", clock_at_right, told_clock},
                        {"out, of the iris's radius", "out_of_iris", out_at_left, told_percent},
                        {"shown, in the eye of less", "least_shown", least_shown, told_percent},
                        {"catchlights in one eye", "catchlights_in_an_eye", shown_in_left_eye, told_count}};
    claim.settle = settle_clock;
    return claim;
}

Claim key_place_claim() {
    Claim claim;
    claim.name = "key-45-45";
    claim.claim = "The key belongs 45 degrees across and 45 degrees up.";
    claim.opposite = "Four feet away and two feet above the eyes; or with its lower edge level with the chin.";
    claim.experiment =
        "A 60 by 90 cm box 45 degrees to camera left at each of the three heights, on an average face and on one with "
        "deep-set eyes "
        "and a long nose.";
    const std::string two_feet = "light.key.elevation=26.6";
    const std::string chin = "light.key.elevation=14";
    const std::string deep = "sitter.face={ eye_set = -1, nose_length = 1 }";
    claim.cases = {{"45 up", "key-place"},
                   {"4 ft away, 2 ft up", "key-place", {two_feet}},
                   {"lower edge at chin", "key-place", {chin}},
                   {"45 up, deep eyes", "key-place", {deep}},
                   {"4 ft and 2 ft, deep eyes", "key-place", {two_feet, deep}},
                   {"edge at chin, deep eyes", "key-place", {chin, deep}}};
    claim.asked.eyes = true;
    claim.asked.face = true;
    claim.quantities = {{"key over the face's level", "key_up_deg", key_up_deg, told_degrees},
                        {"pattern", "pattern", nullptr, nullptr, pattern_of},
                        {"nose shadow to lip, in front", "nose_shadow_to_lip", to_lip, told_percent},
                        {"darker eye, from cheek", "darker_eye_stops", darker_eye_stops, told_signed_stops},
                        {"catchlight, eye of less", "least_shown", least_shown, told_percent}};
    claim.settle = settle_key_place;
    return claim;
}

Claim glasses_size_claim() {
    Claim claim;
    claim.name = "glasses-size";
    claim.claim = "Soft light cures glare in glasses.";
    claim.opposite = "A larger light is harder to hide; its angle is what cures glare.";
    claim.experiment =
        "Even discs of three sizes low to camera right, the largest one raised, then two that stand under the lens. "
        "Power is set anew "
        "each time, so that the meter keeps its reading. What is told is the mirror image of the light over the eye as "
        "the camera sees "
        "it through an uncoated lens, where it shows.";
    const std::string low = "light.key.elevation=-10";
    const std::string aside = "light.key.angle=40";
    const std::string mid = R"(light.key.modifier={ shape = "disc", diameter = "40 cm" })";
    const std::string sixty = R"(light.key.modifier={ shape = "disc", diameter = "60 cm" })";
    const std::string large = R"(light.key.modifier={ shape = "disc", diameter = "120 cm" })";
    claim.cases = {{"20 cm, low", "glasses", {aside, low}},
                   {"60 cm, low", "glasses", {aside, low, sixty}},
                   {"120 cm, low", "glasses", {aside, low, large}},
                   {"120 cm, raised", "glasses", {aside, "light.key.elevation=35", large}},
                   {"20 cm, under the lens", "glasses", {"light.key.angle=0", "light.key.elevation=-18"}},
                   {"40 cm, under the lens", "glasses", {"light.key.angle=0", "light.key.elevation=-18", mid}}};
    claim.asked.glare = true;
    claim.quantities = {the_width(),
                        {"eye under the mirror image", "covered", covered, told_percent},
                        {"the veil, from grey", "veil_stops", veil_stops, told_signed_stops}};
    claim.settle = settle_glasses;
    return claim;
}

}  // namespace understudy
