#include "claims/claim.h"

#include <algorithm>

#include "claims/quantities.h"
#include "claims/softness_claims.h"

namespace understudy {

const std::vector<Claim>& all_claims() {
    static const std::vector<Claim> claims{closer_claim()};
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
