#include "kit/built_modifier.h"

#include <fmt/format.h>

#include "kit/emission.h"
#include "kit/emission_cache.h"

namespace understudy {

namespace {

// Less than a millionth of the tube's light is less than the photons tell from nothing.
constexpr double kLeastFlux = 1e-6;

BuiltModifier built_of(TracedEmission traced) {
    return {std::make_shared<const EmissionTable>(std::move(traced.table)), traced.efficiency, ""};
}

}  // namespace

Expected<BuiltModifier> build_modifier(const ModifierSettings& settings, const std::filesystem::path& cache_folder) {
    if (const auto lit = efficiency_of_lit(settings.shape)) return BuiltModifier{nullptr, *lit, ""};
    if (!settings.construction) return BuiltModifier{nullptr, settings.efficiency, ""};
    const std::string key = emission_key(*settings.construction, settings.shape);
    const std::filesystem::path file = emission_file(cache_folder, key);
    if (!cache_folder.empty()) {
        if (auto kept = read_emission(file, key)) return built_of(std::move(*kept));
    }
    std::optional<TracedEmission> traced = trace_emission(*settings.construction, settings.shape);
    if (!traced || traced->efficiency < kLeastFlux) {
        return Problem{Blame::kWrongInput,
                       fmt::format("the modifier \"{}\" lets out no light of its tube; expected a body that light "
                                   "finds its way out of",
                                   settings.name)};
    }
    const std::string not_kept = cache_folder.empty() ? "" : write_emission(file, key, *traced);
    BuiltModifier built = built_of(std::move(*traced));
    built.not_kept = not_kept;
    return built;
}

}  // namespace understudy
