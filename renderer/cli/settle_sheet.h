// The pictures of an experiment on a contact sheet.
#pragma once

#include <string>
#include <vector>

#include "claims/claim.h"
#include "cli/compare_films.h"
#include "sheet/sheet.h"

namespace understudy {

// The cases as something to trace: one film each, as wide as the sheet shows it.
Comparison comparison_of(const Claim& claim, const std::vector<ClaimReading>& readings);

ContactSheet sheet_of(const Claim& claim, const std::vector<ClaimReading>& readings,
                      const std::vector<CellPictures>& pictures);

}  // namespace understudy
