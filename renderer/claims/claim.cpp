#include "claims/claim.h"

#include <algorithm>

#include "claims/backdrop_claims.h"
#include "claims/exposure_claims.h"
#include "claims/eye_claims.h"
#include "claims/quantities.h"
#include "claims/skin_claims.h"
#include "claims/softness_claims.h"

namespace understudy {

const std::vector<Claim>& all_claims() {
    static const std::vector<Claim> claims{feathering_claim(),       diffusion_claim(),      inverse_square_claim(),
                                           closer_claim(),           dome_direction_claim(), three_to_one_claim(),
                                           catchlight_clock_claim(), key_place_claim(),      box_distance_claim(),
                                           white_backdrop_claim(),   rim_level_claim(),      glasses_size_claim(),
                                           shine_distance_claim(),   dark_skin_claim()};
    return claims;
}

const Claim* find_claim(const std::string& name) {
    const auto& claims = all_claims();
    const auto found =
        std::find_if(claims.begin(), claims.end(), [&](const Claim& claim) { return claim.name == name; });
    return found == claims.end() ? nullptr : &*found;
}

double developed_f_number(const Claim& claim, const ClaimReading& reading) {
    const double wanted = claim.developed_at != nullptr ? claim.developed_at(reading) : face_f_number(reading);
    return wanted > 0.0 ? wanted : reading.report.aperture;
}

}  // namespace understudy
