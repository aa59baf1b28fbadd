#include "claims/backdrop_claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "claims/quantities.h"
#include "report/words.h"

namespace understudy {

namespace {

constexpr double kTenth = 0.1;  // stops

// --- a white backdrop ---

std::vector<double> seen_tones(const ClaimReading& reading, double BackdropTone::*of) {
    std::vector<double> tones;
    if (!reading.report.backdrop) return tones;
    for (const BackdropPlace& place : *reading.report.backdrop) {
        if (place.tone && place.hidden_by.empty()) tones.push_back((*place.tone).*of);
    }
    return tones;
}
// Of the places of the frame that show it, where it gets least.
double paper_over_key_stops(const ClaimReading& reading) {
    const auto stops = seen_tones(reading, &BackdropTone::stops_from_face);
    return stops.empty() ? kNone : *std::min_element(stops.begin(), stops.end());
}
double darkest_paper(const ClaimReading& reading) {
    const auto linear = seen_tones(reading, &BackdropTone::linear);
    return linear.empty() ? kNone : *std::min_element(linear.begin(), linear.end());
}
double paper_over_white_stops(const ClaimReading& reading) { return std::log2(darkest_paper(reading)); }

double paper_on_edge_stops(const ClaimReading& reading) {
    const double most = *std::max_element(reading.paper_on_edges_lxs.begin(), reading.paper_on_edges_lxs.end());
    return std::log2(most / face_reading(reading, Receptor::kFlat, Facing::kKey)->exposure_lxs);
}

bool is_white(const ClaimReading& reading) { return paper_over_white_stops(reading) >= 0.0; }

Settled settle_white_backdrop(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kLevels = 5;
    constexpr double kMuch = -1.0;  // stops from the key, on the sides of the face
    constexpr std::array<const char*, kLevels> kAims{"As much as the key", "Two thirds over", "A stop over",
                                                     "Two stops over", "Three stops over"};
    Settled settled;
    std::size_t white = kLevels;
    for (std::size_t i = 0; i < kLevels; ++i) {
        if (white == kLevels && is_white(cases[i])) white = i;
        settled.holds.push_back(fmt::format(
            "{}: the paper reads {} against the key where it gets least and comes out {} from white; "
            "its light on the sides of the face is {} from the key's.",
            kAims[i], told_signed_stops(paper_over_key_stops(cases[i])),
            told_signed_stops(paper_over_white_stops(cases[i])), told_signed_stops(paper_on_edge_stops(cases[i]))));
    }
    settled.outcome = white == 0 ? Outcome::kClaim : white < kLevels ? Outcome::kOpposite : Outcome::kNeither;
    // The darkest place needs so much more, in whatever case: light adds up.
    const double needed = paper_over_key_stops(cases[2]) - paper_over_white_stops(cases[2]);
    settled.conditions = {
        fmt::format("This paper sends back 90 %, so its darkest place turns white {} over the key. {}.",
                    told_stops(needed),
                    white < kLevels
                        ? fmt::format("Of the five levels, \"{}\" is the first that leaves nothing grey", kAims[white])
                        : std::string("None of the five levels is enough")),
        fmt::format(
            "Two stops over, the paper's light on the sides of the face is {} from the key with the paper 1.5 m behind "
            "the sitter and {} with it 4 m behind: {}.",
            told_signed_stops(paper_on_edge_stops(cases[3])), told_signed_stops(paper_on_edge_stops(cases[5])),
            paper_on_edge_stops(cases[5]) < paper_on_edge_stops(cases[3]) - kTenth
                ? "how much is too much depends on how far away it is"
                : "the distance hardly matters here")};
    const auto much = std::find_if(cases.begin(), cases.begin() + kLevels,
                                   [&](const ClaimReading& reading) { return paper_on_edge_stops(reading) > kMuch; });
    settled.conditions.push_back(
        much == cases.begin() + kLevels
            ? std::string("None of the levels brings the sides of the face within a stop of the key.")
            : fmt::format(
                  "From \"{}\" on, the sides of the face get more than half the key's light: they lose their edge.",
                  kAims[static_cast<std::size_t>(much - cases.begin())]));
    return settled;
}

// --- a rim ---

double rim_over_key_stops(const ClaimReading& reading) {
    return 2.0 * std::log2(reading.report.powers[1].f_number / reading.report.powers[0].f_number);
}

double edge_linear(const ClaimReading& reading) { return reading.rim_linear.value_or(kNone); }
double edge_from_white_stops(const ClaimReading& reading) { return std::log2(edge_linear(reading)); }
double edge_over_cheek_stops(const ClaimReading& reading) {
    return reading.tones ? std::log2(edge_linear(reading) / reading.tones->lit_cheek) : kNone;
}

// Brighter than the lit cheek, and not burnt out.
bool stands_out(const ClaimReading& reading) {
    return edge_over_cheek_stops(reading) > 0.0 && edge_from_white_stops(reading) < 0.0;
}

std::string rim_words(const ClaimReading& reading) {
    const char* verdict = edge_from_white_stops(reading) >= 0.0  ? "burnt out"
                          : edge_over_cheek_stops(reading) > 0.0 ? "brighter than the lit cheek and not burnt out"
                                                                 : "no brighter than the lit cheek";
    return fmt::format("the meter says {}, the edge photographs {} over the lit cheek and {} from white: {}.",
                       told_signed_stops(rim_over_key_stops(reading)),
                       told_signed_stops(edge_over_cheek_stops(reading)),
                       told_signed_stops(edge_from_white_stops(reading)), verdict);
}

Settled settle_rim(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kLevels = 4;
    Settled settled;
    bool under = false;  // some level under the key stands out
    bool over = false;
    for (std::size_t i = 0; i < kLevels; ++i) {
        settled.holds.push_back("On dark hair " + rim_words(cases[i]));
        if (stands_out(cases[i])) (rim_over_key_stops(cases[i]) < -kTenth ? under : over) = true;
    }
    settled.outcome = under && over ? Outcome::kDepends
                      : over        ? Outcome::kClaim
                      : under       ? Outcome::kOpposite
                                    : Outcome::kNeither;
    const double blond = edge_from_white_stops(cases[4]) - edge_from_white_stops(cases[1]);
    const double aside = edge_from_white_stops(cases[5]) - edge_from_white_stops(cases[1]);
    settled.conditions = {
        fmt::format("On blond hair {} That is {} against the dark hair in the same light.", rim_words(cases[4]),
                    told_signed_stops(blond)),
        fmt::format("From 110 degrees instead of 150, {} That is {}: {}.", rim_words(cases[5]),
                    told_signed_stops(aside),
                    compared(0.0, aside, kTenth, "from there it is the brighter",
                             "the farther behind, the brighter it grazes", "the angle hardly matters here"))};
    return settled;
}

}  // namespace

Claim white_backdrop_claim() {
    Claim claim;
    claim.name = "white-backdrop";
    claim.claim = "A white backdrop has to read as much as the key.";
    claim.opposite = "Two thirds of a stop over it; one stop; two or three.";
    claim.experiment =
        "Two strips, turned away from the sitter, light a white paper 1.5 m behind; five levels of them. Then two "
        "stops over again "
        "with the paper 4 m behind. The camera is set for the key.";
    const auto level = [](const char* energy) {
        return std::vector<std::string>{std::string("light.paper-left.energy=") + energy,
                                        std::string("light.paper-right.energy=") + energy};
    };
    claim.cases = {{"as the key", "white-backdrop", level("15 J")},
                   {"two thirds over", "white-backdrop", level("27 J")},
                   {"one stop over", "white-backdrop", level("35.5 J")},
                   {"two stops over", "white-backdrop", level("76 J")},
                   {"three stops over", "white-backdrop", level("158 J")},
                   {"two over, 4 m behind", "white-backdrop-far", level("80 J")}};
    claim.asked.backdrop = true;
    claim.quantities = {
        {"paper over key, at its least", "paper_over_key_stops", paper_over_key_stops, told_signed_stops},
        {"paper from white, there", "paper_over_white_stops", paper_over_white_stops, told_signed_stops},
        {"paper's light on face's sides", "paper_on_edge_stops", paper_on_edge_stops, told_signed_stops}};
    claim.settle = settle_white_backdrop;
    return claim;
}

Claim rim_level_claim() {
    Claim claim;
    claim.name = "rim-level";
    claim.claim = "A rim light is set one to two stops over the key.";
    claim.opposite = "One to two stops under it.";
    claim.experiment =
        "A strip with a grid behind the sitter to camera right, at four levels against the key; then one stop under on "
        "blond hair, and "
        "from farther round to the side. The meter reads each light alone, square to it.";
    const std::string blond = R"(sitter.hair={ style = "tied-back", colour = "blond" })";
    claim.cases = {{"2 stops under", "rim", {"light.rim.from_key=-2"}},
                   {"1 stop under", "rim"},
                   {"as the key", "rim", {"light.rim.from_key=0"}},
                   {"1 stop over", "rim", {"light.rim.from_key=1"}},
                   {"1 under, blond", "rim", {blond}},
                   {"1 under, from 110 degrees", "rim", {"light.rim.angle=110"}}};
    claim.asked.outline = true;
    claim.asked.tones = true;
    claim.quantities = {{"rim over key, metered", "rim_over_key_stops", rim_over_key_stops, told_signed_stops},
                        {"edge over the lit cheek", "edge_over_cheek_stops", edge_over_cheek_stops, told_signed_stops},
                        {"edge from white", "edge_from_white_stops", edge_from_white_stops, told_signed_stops}};
    claim.settle = settle_rim;
    return claim;
}

}  // namespace understudy
