#include "claims/skin_claims.h"

#include <cmath>

#include <fmt/format.h>

#include "claims/quantities.h"

namespace understudy {

namespace {

constexpr double kTenth = 0.1;  // stops

// --- shine and distance ---

// The sheen by itself over the skin that it lies on.
double sheen_stops(const ClaimReading& reading) { return std::log2(std::exp2(shine_stops(reading)) - 1.0); }

// Level of skin and sheen had the light been moved with its power left alone, from what the reading costs.
double left_alone_stops(const ClaimReading& from, const ClaimReading& to) {
    return -std::log2(key_lumens(to) / key_lumens(from));
}

Settled settle_shine(const std::vector<ClaimReading>& cases) {
    const ClaimReading& one = cases[1];
    const ClaimReading& two = cases[2];
    const double sheen = sheen_stops(two) - sheen_stops(one);
    const double front = front_over_white_stops(two) - front_over_white_stops(one);
    const double glossy = sheen_stops(cases[5]) - sheen_stops(cases[4]);
    const double alone = left_alone_stops(one, two);
    Settled settled;
    settled.outcome = sheen > kTenth ? Outcome::kOpposite : sheen < -kTenth ? Outcome::kClaim : Outcome::kNeither;
    settled.holds = {
        fmt::format(
            "From 1 to 2 m, at the same reading, the front's own brightness rises by {}: it is as much smaller.",
            told_stops(front)),
        fmt::format("The forehead's sheen against the skin under it changes by {}; sheen and skin together lie {} over "
                    "the skin "
                    "at 0.5 m, {} at 1 m, {} at 2 m and {} at 3 m: {}.",
                    told_signed_stops(sheen), told_stops(shine_stops(cases[0])), told_stops(shine_stops(one)),
                    told_stops(shine_stops(two)), told_stops(shine_stops(cases[3])),
                    compared(0.0, sheen, kTenth, "moving back raises shine", "moving back lowers shine",
                             "the distance hardly matters for this skin"))};
    settled.conditions = {
        fmt::format("On glossy skin the same move changes the sheen by {}. A mirror's would follow the front's {}: {}.",
                    told_signed_stops(glossy), told_signed_stops(front),
                    std::abs(glossy - front) < std::abs(sheen - front) ? "the smoother the skin, the nearer to that"
                                                                       : "gloss does not bring it nearer to that here"),
        fmt::format(
            "With the power left alone the whole picture loses {} by that move, and the highlight with it ({} in all): "
            "who does not set the camera anew sees less shine, and less of everything.",
            told_stops(-alone), told_signed_stops(alone + sheen))};
    return settled;
}

// --- dark skin ---

double from_grey(double linear) { return std::log2(linear / kMidGrey); }
double cheek_tone_stops(const ClaimReading& reading) {
    return reading.tones ? from_grey(reading.tones->lit_cheek) : kNone;
}
double forehead_tone_stops(const ClaimReading& reading) {
    return reading.tones ? from_grey(reading.tones->forehead) : kNone;
}
double shadow_tone_stops(const ClaimReading& reading) {
    return reading.tones ? from_grey(reading.tones->shadow_cheek) : kNone;
}

Settled settle_dark_skin(const std::vector<ClaimReading>& cases) {
    constexpr double kShirt = 0.8;  // what a white shirt sends back
    const ClaimReading& light = cases[0];
    const ClaimReading& dark = cases[2];
    const double read = stops_between_readings(face_reading(light, Receptor::kFlat, Facing::kKey),
                                               face_reading(dark, Receptor::kFlat, Facing::kKey));
    const double apart = cheek_tone_stops(light) - cheek_tone_stops(dark);
    const double shirt = std::log2(kShirt) + apart;
    const double sheen = shine_stops(dark) - shine_stops(light);
    const double larger = shine_stops(cases[3]) - shine_stops(dark);
    const bool same_reading = std::abs(read) < kTenth;
    Settled settled;
    settled.outcome = same_reading && sheen > kTenth ? Outcome::kOpposite
                      : same_reading                 ? Outcome::kNeither
                                                     : Outcome::kClaim;
    settled.holds = {
        fmt::format("The incident meter reads {} more on the dark skin than on the light one: {}.",
                    told_signed_stops(read),
                    same_reading ? "it asks for the same exposure" : "it asks for another exposure"),
        fmt::format(
            "At that exposure the lit cheek comes out {} from grey on the light skin, {} on the middle one, {} on the "
            "dark one: each as dark as it is, {} apart.",
            told_signed_stops(cheek_tone_stops(light)), told_signed_stops(cheek_tone_stops(cases[1])),
            told_signed_stops(cheek_tone_stops(dark)), told_stops(apart)),
        fmt::format("The sheen lifts the forehead {} over its skin on the light face and {} on the dark one: {}.",
                    told_stops(shine_stops(light)), told_stops(shine_stops(dark)),
                    compared(0.0, sheen, kTenth, "on dark skin the highlights do the modelling", "less on the dark one",
                             "alike on both"))};
    settled.conditions = {
        fmt::format("Who meters the face's reflected light and sets the camera for the same cheek opens up by {}; a "
                    "white shirt in "
                    "the same light then lies {} {} white.",
                    told_stops(apart), told_stops(std::abs(shirt)), shirt > 0.0 ? "over" : "under"),
        fmt::format("A larger front changes the dark face's highlight by {}, powder by {}: {}.",
                    told_signed_stops(larger), told_signed_stops(shine_stops(cases[4]) - shine_stops(dark)),
                    larger < 0.0 ? "the light's size and the skin's surface set the highlight, not the exposure"
                                 : "here its size does not tame it")};
    return settled;
}

}  // namespace

Claim shine_distance_claim() {
    Claim claim;
    claim.name = "shine-distance";
    claim.claim = "Moving the light back lowers the shine on a forehead.";
    claim.opposite = "Moving it closer does, once the camera is set anew: the nearer front is larger and less bright.";
    claim.experiment =
        "An even disc of 60 cm over the lens at four distances, then at two of them on glossy skin. Power is set anew "
        "each time, "
        "so that the meter keeps its reading.";
    claim.cases = {{"0.5 m", "shine", {"light.key.distance=0.5 m"}},
                   {"1 m", "shine"},
                   {"2 m", "shine", {"light.key.distance=2 m"}},
                   {"3 m", "shine", {"light.key.distance=3 m"}},
                   {"1 m, glossy", "shine", {"sitter.shine=1"}},
                   {"2 m, glossy", "shine", {"light.key.distance=2 m", "sitter.shine=1"}}};
    claim.asked.face = true;
    claim.quantities = {
        the_width(),
        {"front over a matt white", "front_over_white_stops", front_over_white_stops, told_signed_stops},
        the_shine(),
        {"sheen alone against skin", "sheen_stops", sheen_stops, told_signed_stops}};
    claim.settle = settle_shine;
    return claim;
}

Claim dark_skin_claim() {
    Claim claim;
    claim.name = "dark-skin";
    claim.claim = "Dark skin needs more exposure.";
    claim.opposite = "The same exposure, and a light that is placed and sized for the highlights.";
    claim.experiment =
        "One face in one light with three amounts of pigment, exposed for what a flat meter at the face reads; then "
        "the darkest "
        "with a front of 150 cm at the same reading, and powdered.";
    claim.cases = {
        {"light skin", "dark-skin", {"sitter.melanin=0.01"}},
        {"middle skin", "dark-skin", {"sitter.melanin=0.06"}},
        {"dark skin", "dark-skin"},
        {"dark, larger front", "dark-skin", {R"(light.key.modifier={ shape = "disc", diameter = "150 cm" })"}},
        {"dark, powdered", "dark-skin", {"sitter.shine=0"}}};
    claim.asked.tones = true;
    claim.asked.face = true;
    claim.quantities = {
        the_meter(),
        {"lit cheek, from grey", "cheek_tone_stops", cheek_tone_stops, told_signed_stops},
        {"other cheek, from grey", "shadow_tone_stops", shadow_tone_stops, told_signed_stops},
        {"brightest forehead, from grey", "forehead_tone_stops", forehead_tone_stops, told_signed_stops},
        the_shine()};
    claim.settle = settle_dark_skin;
    return claim;
}

}  // namespace understudy
