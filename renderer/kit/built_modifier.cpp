#include "kit/built_modifier.h"

#include <map>
#include <mutex>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "kit/emission.h"
#include "kit/emission_cache.h"
#include "kit/emitter.h"
#include "setup/photometric_file.h"

namespace understudy {

namespace {

// Less than a millionth of the tube's light is less than the photons tell from nothing.
constexpr double kLeastFlux = 1e-6;

// What is in use is given out again, the very same table: a light that is moved then keeps what its sampling has learnt
// (Emitter's `before`).
class BuiltInUse {
  public:
    std::optional<BuiltModifier> find(const std::string& key) {
        const std::lock_guard<std::mutex> lock(finding_);
        const auto found = built_.find(key);
        if (found == built_.end()) return std::nullopt;
        BuiltModifier built = found->second.rest;
        built.table = found->second.table.lock();
        if (!built.table) return std::nullopt;
        return built;
    }
    void add(const std::string& key, BuiltModifier built) {
        const std::lock_guard<std::mutex> lock(finding_);
        std::weak_ptr<const EmissionTable> table = std::exchange(built.table, nullptr);
        built_.insert_or_assign(key, Known{std::move(table), std::move(built)});
    }

  private:
    struct Known {
        std::weak_ptr<const EmissionTable> table;
        BuiltModifier rest;
    };
    std::mutex finding_;
    std::map<std::string, Known> built_;
};

BuiltModifier built_of(TracedEmission traced) {
    return {std::make_shared<const EmissionTable>(std::move(traced.table)), traced.efficiency, ""};
}

// A file may have a little light that went round the luminaire's edge; more would be lost without a word.
constexpr double kMostBehind = 0.01;

Expected<BuiltModifier> build_photometric(const ModifierSettings& settings) {
    auto web = std::make_shared<const PhotometricWeb>(*settings.photometric);
    const bool point = std::holds_alternative<PointShape>(settings.shape);
    const double behind = 1.0 - web->forward_flux_lm() / web->flux_lm();
    if (!point && behind > kMostBehind) {
        return Problem{
            Blame::kWrongInput,
            fmt::format("{}:1:1: {:.0f} % of the file's light goes behind it, where a flat front gives none; "
                        "expected a modifier without a shape, which is a point",
                        settings.photometric->name, 100.0 * behind)};
    }
    const auto emission = [&] {
        if (point) return WebEmission::from_point(std::move(web));
        const auto even = static_cast<double>(Emitter(settings.shape, PlacedFront{}).even_radiance());
        return WebEmission::over_front(std::move(web), 1.0 / (kPiDouble * even));
    };
    return BuiltModifier{nullptr, settings.efficiency, "", std::make_shared<const WebEmission>(emission())};
}

}  // namespace

Expected<BuiltModifier> build_modifier(const ModifierSettings& settings, const std::filesystem::path& cache_folder) {
    if (settings.photometric) return build_photometric(settings);
    if (const auto lit = efficiency_of_lit(settings.shape)) return BuiltModifier{nullptr, *lit, ""};
    if (!settings.construction) return BuiltModifier{nullptr, settings.efficiency, ""};
    const std::string key = emission_key(*settings.construction, settings.shape);
    static BuiltInUse in_use;
    if (auto used = in_use.find(key)) return *used;
    const std::filesystem::path file = emission_file(cache_folder, key);
    if (!cache_folder.empty()) {
        if (auto kept = read_emission(file, key)) {
            const BuiltModifier built = built_of(std::move(*kept));
            in_use.add(key, built);
            return built;
        }
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
    in_use.add(key, built);
    return built;
}

}  // namespace understudy
