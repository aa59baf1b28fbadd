#include "cli/kit_list.h"

#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/own_library.h"
#include "kit/built_modifier.h"
#include "kit/far_field.h"
#include "report/kit_text.h"
#include "setup/kit_files.h"
#include "setup/kit_modifier.h"

namespace understudy {

namespace {

// What the others' output is counted from.
constexpr const char* kYardstick = "bulb";

struct Shown {
    ModifierSettings settings;
    BuiltModifier built;
    // What leaves the front; none where the light is not known by a table.
    std::shared_ptr<const EmissionTable> light;
};

std::shared_ptr<const EmissionTable> even_light(const ModifierShape& shape) {
    if (!EmissionLayout::folds(shape)) return nullptr;
    EmissionLayout layout = EmissionLayout::of(shape);
    layout.across = 17;
    layout.along = layout.round() ? 1 : 17;
    for (int i = 0; i <= 9; ++i) layout.angles.push_back(kPi / 18.0F * static_cast<float>(i));
    return std::make_shared<EmissionTable>(layout, std::vector<float>(layout.size(), 1.0F));
}

Expected<Shown> open_modifier(const std::string& name, const Library& library) {
    const auto settings = read_kit_file(name, library.kit);
    if (!settings) return settings.problems();
    const auto built = build_modifier(*settings, library.cache);
    if (!built) return built.problems();
    if (!built->not_kept.empty()) fmt::print(stderr, "{}; it has to be traced again the next time\n", built->not_kept);
    return Shown{*settings, *built, built->table ? built->table : even_light(settings->shape)};
}

// lx at 1 m on the axis for 1 lm out of the bare tube.
double output_of(const Shown& shown) { return shown.built.efficiency * axial_illuminance(*shown.light, 1.0); }

// A window is no flash: nothing of a tube comes out of it.
bool has_tube(const Shown& shown) { return !std::holds_alternative<WindowShape>(shown.settings.shape); }

KitFigures figures_of(const std::string& name, const Shown& shown, double yardstick) {
    KitFigures figures{name, shown.settings.shape, std::nullopt, std::nullopt, std::nullopt};
    if (!shown.light) {
        const Emitter emitter = emitter_alone(shown.settings.shape);
        if (const auto angle = opening_angle(emitter)) figures.opening_deg = degrees(*angle);
        if (has_tube(shown)) {
            figures.output_stops = std::log2(shown.built.efficiency * axial_illuminance(emitter, 1.0) / yardstick);
        }
        figures.hot_spot_stops = hot_spot_stops(emitter);
        return figures;
    }
    if (const auto angle = opening_angle(*shown.light)) figures.opening_deg = degrees(*angle);
    figures.output_stops = std::log2(output_of(shown) / yardstick);
    figures.hot_spot_stops = hot_spot_stops(*shown.light);
    return figures;
}

template <class Light>
std::vector<KitIntensity> intensities_of(const Light& light) {
    std::vector<KitIntensity> list;
    const double axial = axial_intensity(light);
    for (const double angle : {5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0}) {
        const double here = mean_intensity(light, radians(angle));
        list.push_back({angle, here > 0.0 ? std::log2(axial / here) : std::numeric_limits<double>::infinity()});
    }
    return list;
}

}  // namespace

int list_kit() {
    const Library library = own_library();
    const auto yardstick = open_modifier(kYardstick, library);
    if (!yardstick) return complain(yardstick.problems());
    std::vector<KitFigures> kit;
    Problems problems;
    for (const std::string& name : toml_names_in(library.kit)) {
        const auto shown = open_modifier(name, library);
        if (shown) {
            kit.push_back(figures_of(name, *shown, output_of(*yardstick)));
        } else {
            problems.insert(problems.end(), shown.problems().begin(), shown.problems().end());
        }
    }
    fmt::print("{}", kit_text(kit));
    return problems.empty() ? kDone : complain(problems);
}

int describe_modifier(const std::string& name) {
    const Library library = own_library();
    const auto yardstick = open_modifier(kYardstick, library);
    if (!yardstick) return complain(yardstick.problems());
    const auto shown = open_modifier(name, library);
    if (!shown) return complain(shown.problems());
    const KitFigures figures = figures_of(name, *shown, output_of(*yardstick));
    const auto intensities =
        shown->light ? intensities_of(*shown->light) : intensities_of(emitter_alone(shown->settings.shape));
    fmt::print("{}", kit_modifier_text(figures, shown->settings, shown->built.efficiency, intensities));
    return kDone;
}

}  // namespace understudy
