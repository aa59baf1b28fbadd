// A modifier as it lights: what leaves its front, and how much of the tube's light that is.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "base/expected.h"
#include "kit/emission_table.h"
#include "kit/web_emission.h"
#include "setup/setup.h"

namespace understudy {

struct BuiltModifier {
    std::shared_ptr<const EmissionTable> table;  // none: the same radiance everywhere and in every direction
    double efficiency = 1.0;                     // lm out of the front for each lm of the bare tube
    std::string not_kept;  // why the table could not be kept and will be traced again; empty when it was
    std::shared_ptr<const WebEmission> web{};  // instead of a table: the light of a photometric file
};

// Traces the light through the modifier's inside, or takes what was traced before from the folder; an empty folder's
// name keeps nothing. A modifier that lets out no light at all is a problem.
Expected<BuiltModifier> build_modifier(const ModifierSettings& settings, const std::filesystem::path& cache_folder);

}  // namespace understudy
