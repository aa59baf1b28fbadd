#include "cli/rehearsal.h"

#include <fmt/format.h>

#include "meter/standing_light.h"
#include "sitter/kept.h"
#include "sitter/pupil.h"

namespace understudy {

Library own_library() {
    const std::filesystem::path assets = UNDERSTUDY_ASSETS_DIR;
    return {assets / "kit", assets / "heads", UNDERSTUDY_HEAD_DIR, UNDERSTUDY_CACHE_DIR};
}

void tell_if_sitters_are_not_kept() {
    const std::string trouble = trouble_keeping(own_library().kept());
    if (!trouble.empty()) fmt::print(stderr, "{}; hair and clothes have to be made again the next time\n", trouble);
}

Expected<Rehearsal> rehearse(const Setup& setup, Growing growing) {
    auto studio = place_studio(setup, own_library(), growing);
    if (!studio) return studio.problems();
    for (const BuiltModifier& modifier : studio->modifiers) {
        if (modifier.not_kept.empty()) continue;
        fmt::print(stderr, "{}; modifiers have to be traced again the next time\n", modifier.not_kept);
        break;
    }
    Rehearsal rehearsal;
    rehearsal.studio = std::move(*studio);
    rehearsal.stage = std::make_unique<Stage>(rehearsal.studio, Stage::With::kSitter);
    rehearsal.nobody = std::make_unique<Stage>(rehearsal.studio, Stage::With::kNobody);
    if (Problems problems = rehearsal.stage->problems_with(rehearsal.studio); !problems.empty()) return problems;
    return rehearsal;
}

Expected<Rehearsal> open_rehearsal(const SceneWish& scene, Growing growing) {
    const auto setup = read_scene(scene);
    if (!setup) return setup.problems();
    if (std::holds_alternative<LibraryHead>(setup->sitter.head)) tell_if_sitters_are_not_kept();
    return rehearse(*setup, growing);
}

Expected<LitStudio> light_rehearsal(Rehearsal& rehearsal) {
    auto lit = set_powers(rehearsal.studio, *rehearsal.nobody);
    if (!lit) return lit;
    lit->pupil = read_pupil(rehearsal.studio, *rehearsal.nobody, *lit);
    rehearsal.stage->set_pupil_radius(pupil_radius_behind_cornea_m(1e-3 * lit->pupil->diameter_mm));
    return lit;
}

Expected<MeteredRehearsal> meter_rehearsal(Rehearsal& rehearsal) {
    auto lit = light_rehearsal(rehearsal);
    if (!lit) return lit.problems();
    MeterReport report = read_meter(rehearsal.studio, *rehearsal.stage, *rehearsal.nobody, *lit);
    return MeteredRehearsal{std::move(*lit), std::move(report)};
}

}  // namespace understudy
