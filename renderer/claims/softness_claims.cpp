#include "claims/softness_claims.h"

#include <fmt/format.h>

#include "claims/quantities.h"

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

}  // namespace

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
    claim.quantities = {the_width(), the_lit_edge(), the_nose_edge(), the_fall_off(),
                        the_chest(), the_cheeks(),   the_shine()};
    claim.settle = settle_closer;
    return claim;
}

}  // namespace understudy
