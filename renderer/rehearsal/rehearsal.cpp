#include "rehearsal/rehearsal.h"

#include <utility>

#include "meter/standing_light.h"
#include "sitter/pupil.h"

namespace understudy {

Expected<Rehearsal> rehearse(const Setup& setup, const Library& library, Growing growing) {
    const auto head = load_head(setup.sitter, library);
    if (!head) return head.problems();
    return rehearse(setup, library, *head, growing);
}

Expected<Rehearsal> rehearse(const Setup& setup, const Library& library, const HeadPointer& head, Growing growing) {
    auto studio = place_studio(setup, library, head, growing);
    if (!studio) return studio.problems();
    Rehearsal rehearsal;
    rehearsal.studio = std::move(*studio);
    rehearsal.stage = std::make_unique<Stage>(rehearsal.studio, Stage::With::kSitter);
    rehearsal.nobody = std::make_unique<Stage>(rehearsal.studio, Stage::With::kNobody);
    if (Problems problems = rehearsal.stage->problems_with(rehearsal.studio); !problems.empty()) return problems;
    return rehearsal;
}

Expected<LitStudio> read_lights(const Studio& studio, const Stage& nobody) {
    auto lit = set_powers(studio, nobody);
    if (lit) lit->pupil = read_pupil(studio, nobody, *lit);
    return lit;
}

Expected<LitStudio> light_rehearsal(Rehearsal& rehearsal) {
    auto lit = read_lights(rehearsal.studio, *rehearsal.nobody);
    if (lit) rehearsal.stage->set_pupil_radius(pupil_radius_behind_cornea_m(1e-3 * lit->pupil->diameter_mm));
    return lit;
}

Expected<MeteredRehearsal> meter_rehearsal(Rehearsal& rehearsal) {
    auto lit = light_rehearsal(rehearsal);
    if (!lit) return lit.problems();
    MeterReport report = read_meter(rehearsal.studio, *rehearsal.stage, *rehearsal.nobody, *lit);
    return MeteredRehearsal{std::move(*lit), std::move(report)};
}

}  // namespace understudy
