// understudy poses SCENE [-o FILE] [--json FILE]: how far the sitter may move, as a table and as a contact sheet.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/finish.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/pose_frames.h"
#include "cli/progress_line.h"
#include "cli/sheet_output.h"
#include "report/envelope_text.h"
#include "report/json_file.h"

namespace understudy {

namespace {

struct PosesWish {
    SceneWish scene;
    std::string sheet;
    std::string json;
    int samples = 12;
    bool as_traced = false;
};

// Nothing when it was interrupted.
Expected<std::optional<ContactSheet>> traced_sheet(const Setup& setup, const Envelope& envelope,
                                                   const PosesWish& wish) {
    ProgressLine line;
    line.say("metering the pose as set");
    auto rehearsal = rehearse(setup);
    if (!rehearsal) return rehearsal.problems();
    const auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return metered.problems();
    const FilmCard card = card_of(setup, metered->lit, metered->report);
    const std::vector<PoseFrame> frames = pose_frames(envelope);
    const Comparison comparison = comparison_of(frames, setup, envelope, card, metered->report);
    const auto pictures = trace_pictures(
        comparison, {wish.samples, [&](double share) { line.show(share); }, &interruption(), wish.as_traced});
    if (!pictures) return pictures.problems();
    if (!*pictures) return std::optional<ContactSheet>();
    return std::optional(sheet_of(envelope, frames, **pictures));
}

int run_poses(const PosesWish& wish) {
    const auto setup = read_scene(wish.scene);
    if (!setup) return complain(setup.problems());
    if (const Problems problems = problems_with_sheet(wish.sheet, wish.json); !problems.empty())
        return complain(problems);
    const auto envelope = find_envelope(*setup, own_library());
    if (!envelope) return complain(envelope.problems());
    fmt::print("{}", envelope_text(*envelope));
    if (!wish.json.empty()) {
        const auto written = write_whole_file(wish.json, envelope_json(*envelope).dump(2) + "\n");
        if (!written) return complain(written.problems());
    }
    if (wish.sheet.empty()) return kDone;
    const auto sheet = traced_sheet(*setup, *envelope, wish);
    if (!sheet) return complain(sheet.problems());
    if (!*sheet) return say_interrupted("no sheet was written");
    const auto written = write_sheet(wish.sheet, **sheet, (*sheet)->title);
    if (!written) return complain(written.problems());
    fmt::print("{}, {} poses\n", *written, (*sheet)->cells.size());
    return kDone;
}

}  // namespace

void add_poses(CLI::App& program, int& status) {
    const auto wish = std::make_shared<PosesWish>();
    CLI::App* command = program.add_subcommand(
        "poses", "How far the sitter may turn, tip, step and look while pattern, eyes and exposure hold");
    take_scene(*command, wish->scene);
    CLI::Option* sheet =
        command->add_option("-o,--output", wish->sheet,
                            "A contact sheet of it as well, each movement up to its limit and past it: .png or .jpg");
    command->add_option("--json", wish->json, "Write the limits to this file as well");
    command->add_option("--samples", wish->samples, "Camera paths a pixel of the sheet (12 unless told)")
        ->check(CLI::Range(1, 65536))
        ->needs(sheet);
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_poses(*wish); });
}

}  // namespace understudy
