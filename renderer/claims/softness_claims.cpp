#include "claims/softness_claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "claims/quantities.h"
#include "report/words.h"

namespace understudy {

namespace {

// Differences that are none: an eighth of an edge, a tenth of a stop.
constexpr double kSameEdge = 0.12;
constexpr double kSameStops = 0.1;

Settled settle_closer(const std::vector<ClaimReading>& cases) {
    const ClaimReading& far = cases[0];
    const ClaimReading& near = cases[2];
    const double edge = lit_edge_mm(near) / lit_edge_mm(far);
    const double fall = across_face_stops(near) - across_face_stops(far);
    const double dark = cheek_stops(near) - cheek_stops(far);
    const double white = cheek_stops(cases[4]) - cheek_stops(cases[3]);
    const bool softer = edge > 1.0 + kSameEdge;
    const bool steeper = fall > kSameStops;
    Settled settled;
    settled.outcome = softer && steeper ? Outcome::kBoth
                      : steeper         ? Outcome::kClaim
                      : softer          ? Outcome::kOpposite
                                        : Outcome::kNeither;
    settled.holds = {
        fmt::format("From {} to {} the shadow's edge grows {:.1f} times as wide ({} to {}): {}.",
                    told_metres(far.key_distance_m), told_metres(near.key_distance_m), edge, told_mm(lit_edge_mm(far)),
                    told_mm(lit_edge_mm(near)), softer ? "the closer light is the softer one" : "hardly softer"),
        fmt::format("The light loses {} over the face instead of {}, and {} down to the chest instead of {}: {}.",
                    told_stops(across_face_stops(near)), told_stops(across_face_stops(far)),
                    told_stops(to_chest_stops(near)), told_stops(to_chest_stops(far)),
                    steeper ? "it falls off more steeply" : "hardly more steeply")};
    settled.conditions = {
        fmt::format("In the black studio the cheeks are {} apart from far and {} from near: coming closer {}.",
                    told_stops(cheek_stops(far)), told_stops(cheek_stops(near)),
                    compared(0.0, dark, kSameStops, "raises the contrast from cheek to cheek",
                             "lowers the contrast from cheek to cheek, since the large front reaches round the nose",
                             "leaves the contrast from cheek to cheek as it was")),
        fmt::format("In a small white room they are {} apart from far and {} from near: coming closer {}.",
                    told_stops(cheek_stops(cases[3])), told_stops(cheek_stops(cases[4])),
                    compared(0.0, white, kSameStops,
                             "raises the contrast there, since the walls get less of the light and fill less",
                             "lowers it there too", "leaves it as it was there"))};
    return settled;
}

// The edge is exact geometry here: three hundredths are a difference.
constexpr double kSameExactly = 0.03;

std::string softer_or_harder(double edge) { return compared(1.0, edge, kSameExactly, "softer", "harder", "as soft"); }

double stops_of_power(const ClaimReading& from, const ClaimReading& to) {
    return std::log2(key_joules(to) / key_joules(from));
}

Settled settle_feathering(const std::vector<ClaimReading>& cases) {
    const ClaimReading& aimed = cases[0];
    const ClaimReading& feathered = cases[1];
    const ClaimReading& away = cases[3];
    const double edge = lit_edge_mm(feathered) / lit_edge_mm(aimed);
    const double evened = cheek_stops(feathered) - cheek_stops(aimed);
    const double moved = degrees(std::atan(feathered.key_width.middle) - std::atan(aimed.key_width.middle));
    const double spilt = backdrop_stops(feathered) - backdrop_stops(aimed);
    Settled settled;
    settled.outcome = edge > 1.0 + kSameExactly ? Outcome::kClaim : Outcome::kOpposite;
    settled.holds = {
        fmt::format(
            "Turned 30 degrees toward the camera the box is {:.2f} of its distance wide instead of {:.2f}, and its "
            "edge {} instead of {}: it is {}.",
            width_over_distance(feathered), width_over_distance(aimed), told_mm(lit_edge_mm(feathered)),
            told_mm(lit_edge_mm(aimed)), softer_or_harder(edge)),
        fmt::format("The cheeks are {} apart instead of {}: {}. The middle of the box's light has moved {} degrees {} "
                    "the lens, "
                    "as the half of the front that comes nearer shines the more.",
                    told_stops(cheek_stops(feathered)), told_stops(cheek_stops(aimed)),
                    compared(0.0, evened, kSameStops, "less even", "more even", "about as even"),
                    plain_number(std::abs(moved), 1), moved > 0.0 ? "toward" : "away from"),
        fmt::format("The backdrop comes out {} from grey instead of {}, and the pack has to give {} more.",
                    told_signed_stops(backdrop_stops(feathered)), told_signed_stops(backdrop_stops(aimed)),
                    told_stops(stops_of_power(aimed, feathered)))};
    settled.conditions = {
        fmt::format(
            "Turned the other way, toward the backdrop, the cheeks are {} apart and the backdrop {} from grey: {}.",
            told_stops(cheek_stops(away)), told_signed_stops(backdrop_stops(away)),
            compared(cheek_stops(feathered), cheek_stops(away), kSameStops, "evenness is lost",
                     "it is the more even way here", "evenness hardly changes")),
        fmt::format(
            "At 45 degrees the edge is {} and the cheeks are {} apart: the farther it is turned, the {} it looks "
            "from the face.",
            told_mm(lit_edge_mm(cases[2])), told_stops(cheek_stops(cases[2])),
            width_over_distance(cases[2]) < width_over_distance(feathered) ? "narrower" : "wider")};
    if (std::abs(spilt) < kSameStops) settled.conditions.emplace_back("The spill on the backdrop hardly changes here.");
    return settled;
}

Settled settle_diffusion(const std::vector<ClaimReading>& cases) {
    const ClaimReading& one = cases[0];
    const ClaimReading& two = cases[1];
    const double edge = lit_edge_mm(two) / lit_edge_mm(one);
    const double cloth = lit_edge_mm(cases[3]) / lit_edge_mm(cases[2]);
    const double larger = lit_edge_mm(cases[4]) / lit_edge_mm(one);
    const bool softer = edge > 1.0 + kSameEdge;
    const bool cloth_softens = cloth > 1.0 + kSameEdge;
    Settled settled;
    settled.outcome = softer ? Outcome::kClaim : Outcome::kOpposite;
    settled.holds = {
        fmt::format(
            "A second cloth in the same box makes the edge {} instead of {}, {:.0f} % {}; from full shadow to full "
            "light it is as wide as the box is, {:.2f} of its distance, with either.",
            told_mm(lit_edge_mm(two)), told_mm(lit_edge_mm(one)), 100.0 * std::abs(edge - 1.0),
            edge >= 1.0 ? "more" : "less", width_over_distance(two)),
        fmt::format("It costs {} of power. A box of 150 cm with one cloth makes an edge of {}, {:.1f} times as wide.",
                    told_stops(stops_of_power(one, two)), told_mm(lit_edge_mm(cases[4])), larger)};
    settled.conditions = {
        fmt::format(
            "What a second cloth can do is spread the light over the front: with one, nine tenths less one tenth of it "
            "lie in {:.0f} % of the width, with two in {:.0f} % (an even one: {:.0f} %).",
            100.0 * one.key_width.four_fifths / one.key_width.whole,
            100.0 * two.key_width.four_fifths / two.key_width.whole, 80.0),
        fmt::format(
            "A cloth larger than the lamp is another matter: a bare reflector of 18 cm makes an edge of {}, a lamp "
            "behind 90 cm of cloth one of {}, {:.1f} times as wide: {}.",
            told_mm(lit_edge_mm(cases[2])), told_mm(lit_edge_mm(cases[3])), cloth,
            cloth_softens ? "there the first layer does soften, by its size" : "even that hardly softens")};
    return settled;
}

// How the edge goes with the distance: -1 is in inverse proportion.
double exponent(const ClaimReading& near, const ClaimReading& far) {
    return std::log(lit_edge_mm(far) / lit_edge_mm(near)) / std::log(far.key_distance_m / near.key_distance_m);
}

Settled settle_box_distance(const std::vector<ClaimReading>& cases) {
    constexpr std::size_t kSmall = 5;  // cases of the small box, by distance
    constexpr double kStraight = 0.25;
    double least = HUGE_VAL, most = -HUGE_VAL;
    for (std::size_t i = 0; i + 1 < kSmall; ++i) {
        least = std::min(least, exponent(cases[i], cases[i + 1]));
        most = std::max(most, exponent(cases[i], cases[i + 1]));
    }
    const bool no_place_stands_out = most - least < kStraight;
    const double same = lit_edge_mm(cases[5]) / lit_edge_mm(cases[3]);
    Settled settled;
    settled.outcome = no_place_stands_out ? Outcome::kNeither : Outcome::kDepends;
    settled.holds = {fmt::format(
        "From step to step the edge goes with the distance to the power of {:.2f} to {:.2f}: {}.", least, most,
        no_place_stands_out
            ? "no distance stands out, so no rule is the right one; each is a mark on one scale, width over "
              "distance"
            : "somewhere on the way it changes faster, so there is a distance that matters")};
    const std::array names{"As near as 0.4 m", "At its width", "At its height", "At its diagonal",
                           "At height and width together"};
    for (std::size_t i = 0; i < kSmall; ++i) {
        settled.holds.push_back(fmt::format("{}: {:.2f} of its distance wide, edge {}, {} lost over the face.",
                                            names[i], width_over_distance(cases[i]), told_mm(lit_edge_mm(cases[i])),
                                            told_stops(across_face_stops(cases[i]))));
    }
    settled.conditions = {
        fmt::format("A box of twice the size at its own diagonal makes {} of edge, {:.0f} % of the small one's at its: "
                    "{}. It loses {} over "
                    "the face instead of {}, which is what the choice between them is about.",
                    told_mm(lit_edge_mm(cases[5])), 100.0 * same,
                    std::abs(same - 1.0) < 0.05 ? "size and distance count only together" : "not quite the same light",
                    told_stops(across_face_stops(cases[5])), told_stops(across_face_stops(cases[3])))};
    return settled;
}

}  // namespace

Claim feathering_claim() {
    Claim claim;
    claim.name = "feathering";
    claim.claim = "Light from the edge of a box turned past the face (feathered) is softer.";
    claim.opposite =
        "A box turned aside looks smaller, so its edges are a little harder; what it changes is evenness and spill.";
    claim.experiment =
        "A 90 by 90 cm box a metre away, 50 degrees to camera left: aimed at the face, then turned past it by some "
        "degrees. "
        "Its power is set anew each time, so that the meter keeps its reading.";
    claim.cases = {{"aimed at the face", "feathering"},
                   {"30 degrees toward the camera", "feathering", {"light.key.feather=30"}},
                   {"45 degrees toward the camera", "feathering", {"light.key.feather=45"}},
                   {"30 degrees toward the backdrop", "feathering", {"light.key.feather=-30"}}};
    claim.asked.skin = true;
    claim.asked.face = true;
    claim.asked.backdrop = true;
    claim.quantities = {the_width(),    the_lit_edge(), the_nose_edge(),   the_cheeks(),
                        the_fall_off(), the_backdrop(), the_pack_setting()};
    claim.settle = settle_feathering;
    return claim;
}

Claim diffusion_claim() {
    Claim claim;
    claim.name = "diffusion-layers";
    claim.claim = "The more layers of diffusion, the softer the light.";
    claim.opposite = "Only the size of what shines, as the sitter sees it, makes light soft.";
    claim.experiment =
        "A box of 90 cm a metre away with one cloth, and with a second one inside; then a bare reflector, a lamp "
        "behind a "
        "frame of 90 cm, and a larger box. Power is set anew each time, so that the meter keeps its reading.";
    claim.cases = {
        {"90 cm box, one cloth", "diffusion"},
        {"90 cm box, two cloths", "diffusion", {"light.key.modifier=softbox-90x90"}},
        {"bare 18 cm reflector", "diffusion", {"light.key.modifier=reflector-18"}},
        {"lamp behind 90 cm of cloth",
         "diffusion",
         {R"(light.key.modifier={ shape = "frame", width = "90 cm", height = "90 cm", head = "70 cm", transmission = 0.5 })"}},
        {"150 cm octa, one cloth", "diffusion", {"light.key.modifier=octa-150-no-inner"}}};
    claim.asked.skin = true;
    claim.asked.face = true;
    claim.quantities = {the_width(), the_lit_edge(), the_nose_edge(), the_cheeks(), the_pack_setting()};
    claim.settle = settle_diffusion;
    return claim;
}

Claim box_distance_claim() {
    Claim claim;
    claim.name = "box-distance";
    claim.claim = "A box belongs as far away as its diagonal is long.";
    claim.opposite = "As its width; as height and width together; as close as possible.";
    claim.experiment =
        "A 60 by 90 cm box at each of these distances, then one of twice the size at its own diagonal. Power is set "
        "anew each "
        "time, so that the meter keeps its reading.";
    claim.cases = {{"0.4 m, as near as can be", "box-distance", {"light.key.distance=0.4 m"}},
                   {"0.6 m, its width", "box-distance", {"light.key.distance=0.6 m"}},
                   {"0.9 m, its height", "box-distance", {"light.key.distance=0.9 m"}},
                   {"1.08 m, its diagonal", "box-distance"},
                   {"1.5 m, height and width", "box-distance", {"light.key.distance=1.5 m"}},
                   {"120 by 180 cm at 2.16 m",
                    "box-distance",
                    {"light.key.modifier=softbox-120x180", "light.key.distance=2.16 m"}}};
    claim.asked.skin = true;
    claim.asked.face = true;
    claim.quantities = {the_width(), the_lit_edge(), the_nose_edge(), the_fall_off(), the_chest(), the_cheeks()};
    claim.settle = settle_box_distance;
    return claim;
}

Claim closer_claim() {
    Claim claim;
    claim.name = "closer-contrast";
    claim.claim = "A light brought closer gives more contrast.";
    claim.opposite = "A light brought closer is softer; that it also falls off more steeply is a second thing.";
    claim.experiment =
        "A 60 by 90 cm box 45 degrees to camera left at three distances in a black studio, then at two in a small "
        "white "
        "room. Its power is set anew each time, so that the meter keeps its reading.";
    claim.cases = {{"2 m away", "closer", {"light.key.distance=2 m"}},
                   {"1 m away", "closer"},
                   {"0.6 m away", "closer", {"light.key.distance=0.6 m"}},
                   {"2 m away, white room", "closer-white-room", {"light.key.distance=2 m"}},
                   {"0.6 m away, white room", "closer-white-room", {"light.key.distance=0.6 m"}}};
    claim.asked.skin = true;
    claim.asked.face = true;
    claim.quantities = {the_width(), the_lit_edge(), the_nose_edge(), the_fall_off(), the_chest(), the_cheeks()};
    claim.settle = settle_closer;
    return claim;
}

}  // namespace understudy
