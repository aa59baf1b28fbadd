// understudy sitters [--sheet FILE]: who sits in the library, as a list and as a sheet of pictures under one plain
// light.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/finish.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/progress_line.h"
#include "cli/sheet_output.h"
#include "rehearsal/film_card.h"
#include "setup/head_file.h"
#include "setup/kit_files.h"
#include "setup/read_setup.h"
#include "sheet/sheet.h"
#include "transport/render.h"

namespace understudy {

namespace {

constexpr int kColumns = 4;

struct SittersWish {
    std::string sheet;
    int samples = 16;
    bool as_traced = false;
};

// One large box a little aside over the lens and a white card under the chin: it shows a face and flatters none.
std::string sheet_scene(const std::string& head) {
    return fmt::format(
        "title = \"{0}\"\n[picture]\nwidth = 320\nheight = 400\n"
        "[camera]\nfocal_length = \"150 mm\"\naim = [0, 1.23, 0.08]\n[sitter]\nhead = \"{0}\"\n"
        "[[light]]\nname = \"key\"\nmodifier = \"octa-120\"\nangle = -25\nheight = \"1.65 m\"\ndistance = \"1.4 m\"\n"
        "meter = 4\n[[panel]]\nname = \"card\"\nsize = [0.9, 0.6]\nangle = 0\nheight = 0.8\ndistance = 0.7\n"
        "aim = \"face\"\nsurface = \"white\"\n",
        head);
}

// Nothing when the sheet was interrupted.
Expected<Picture> portrait_of(const std::string& head, const SittersWish& wish, const Finisher& finisher,
                              const std::function<void(double)>& progress) {
    const auto setup = parse_setup(sheet_scene(head), "the sheet of sitters", own_library());
    if (!setup) return setup.problems();
    auto rehearsal = rehearse(*setup);
    if (!rehearsal) return rehearsal.problems();
    const auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return metered.problems();
    RenderOptions options;
    options.samples = wish.samples;
    options.progress = progress;
    options.cancel = &interruption();
    const Rendered rendered = render_film(rehearsal->studio, *rehearsal->stage, options);
    if (rendered.cancelled) return Picture{};
    return finisher.finish(rendered.film,
                           developing_of(card_of(rehearsal->studio.setup, metered->lit, metered->report)));
}

struct Listed {
    std::string name;
    std::string sitter;  // who it is, in words
};

int draw_sitters(const std::vector<Listed>& sitters, const SittersWish& wish) {
    if (const Problems problems = problems_with_sheet(wish.sheet, ""); !problems.empty()) return complain(problems);
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return complain(finisher.problems());
    tell_if_sitters_are_not_kept();
    ContactSheet sheet;
    sheet.title = "The library's sitters, by understudy";
    sheet.note = "One large box a little aside over the lens, a white card under the chin.";
    sheet.columns = kColumns;
    {
        ProgressLine line;
        for (const Listed& listed : sitters) {
            const auto all = static_cast<double>(sitters.size());
            const double share_before = static_cast<double>(sheet.cells.size()) / all;
            const auto picture =
                portrait_of(listed.name, wish, *finisher, [&](double share) { line.show(share_before + share / all); });
            if (!picture) return complain(picture.problems());
            if (picture->pixels.empty()) return say_interrupted();
            sheet.cells.push_back({listed.name, display_picture(*picture), {}, {listed.sitter}, ""});
        }
    }
    const auto written = write_sheet(wish.sheet, sheet, "sitters");
    if (!written) return complain(written.problems());
    fmt::print("{}\n", *written);
    return kDone;
}

int run_sitters(const SittersWish& wish) {
    const Library library = own_library();
    const std::vector<std::string> names = toml_names_in(library.heads);
    if (names.empty()) {
        return complain({{Blame::kFailed, fmt::format("{}: holds no head; expected *.toml", library.heads.string())}});
    }
    Problems problems;
    std::vector<Listed> sitters;
    for (const std::string& name : names) {
        const auto head = read_head_file(library.heads / (name + ".toml"));
        if (!head) {
            problems.insert(problems.end(), head.problems().begin(), head.problems().end());
            continue;
        }
        fmt::print("{:<9} {}\n", name, head->sitter);
        sitters.push_back({name, head->sitter});
    }
    if (!problems.empty()) return complain(problems);
    return wish.sheet.empty() ? kDone : draw_sitters(sitters, wish);
}

}  // namespace

void add_sitters(CLI::App& program, int& status) {
    const auto wish = std::make_shared<SittersWish>();
    CLI::App* command = program.add_subcommand("sitters", "List the library's sitters, or draw them all on a sheet");
    command->add_option("--sheet", wish->sheet, "The sheet of pictures under one plain light: .png or .jpg")
        ->type_name("FILE");
    command->add_option("--samples", wish->samples, "Camera paths a pixel of the sheet")->check(CLI::Range(1, 65536));
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_sitters(*wish); });
}

}  // namespace understudy
