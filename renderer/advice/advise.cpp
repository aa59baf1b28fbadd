#include "advice/advise.h"

#include <fmt/format.h>

#include "advice/cut_offs.h"
#include "advice/fix_search.h"
#include "advice/sitter_fixes.h"
#include "advice/stand_fixes.h"

namespace understudy {

namespace {

// The same light on another face of the same head: its eyes deeper set, or more prominent.
Setup with_eyes_set(const Setup& setup, double amount) {
    Setup other = setup;
    other.sitter.face.of(FaceFeature::kEyeSet) = amount;
    other.sitter.clothes.outfit = Outfit::kBareShoulders;  // they take long to put on, and shade no eye
    return other;
}

}  // namespace

Expected<Advice> advise(const Setup& setup, const Library& library) {
    auto room = TrialRoom::open(setup, library);
    if (!room) return room.problems();
    if (!room->studio().sitter.eyes) {
        return Problem{
            Blame::kWrongInput,
            fmt::format("{}: advice is about eyes, and this sitter has none; expected a head of the library, "
                        "or an .obj with left_eye and right_eye",
                        setup.file.string())};
    }
    Advice advice;
    advice.title = setup.title;
    advice.key = setup.lights.front().name;
    advice.key_height_m = room->studio().lights.front().centre.y;
    advice.now = look_of(*room);
    if (!advice.now.eyes.both_alive()) {
        advice.fixes = sitter_fixes(*room);
        for (const Fix& fix : stand_fixes(*room, library.kit)) advice.fixes.push_back(fix);
    }
    advice.heights.push_back(height_cut_off(*room, "as set"));
    advice.turns = turn_cut_off(*room);
    if (!std::holds_alternative<LibraryHead>(setup.sitter.head)) return advice;
    for (const auto& [face, amount] : {std::pair("deep-set eyes", -1.0), std::pair("prominent eyes", 1.0)}) {
        auto other = TrialRoom::open(with_eyes_set(setup, amount), library);
        if (!other) return other.problems();
        advice.heights.push_back(height_cut_off(*other, face));
    }
    return advice;
}

}  // namespace understudy
