// understudy sitters [--sheet FILE]: who sits in the library, as a list and as a sheet of pictures under one plain
// light.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/film_card.h"
#include "cli/interrupt.h"
#include "cli/progress_line.h"
#include "cli/rehearsal.h"
#include "setup/head_file.h"
#include "setup/kit_files.h"
#include "setup/read_setup.h"
#include "transport/render.h"

namespace understudy {

namespace {

constexpr std::size_t kColumns = 4;

struct SittersWish {
    std::string sheet;
    int samples = 32;
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
Expected<Picture> portrait_of(const std::string& head, const SittersWish& wish,
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
    return develop(rendered.film, developing_of(card_of(rehearsal->studio, metered->lit, metered->report)));
}

// Side by side, row by row; empty places stay black.
Picture tiled(const std::vector<Picture>& pictures) {
    Picture sheet;
    const auto rows = static_cast<int>((pictures.size() + kColumns - 1) / kColumns);
    sheet.width = static_cast<int>(kColumns) * pictures.front().width;
    sheet.height = rows * pictures.front().height;
    sheet.pixels.assign(static_cast<std::size_t>(sheet.width) * static_cast<std::size_t>(sheet.height), Vec3(0.0F));
    for (std::size_t p = 0; p < pictures.size(); ++p) {
        const Picture& picture = pictures[p];
        const auto wide = static_cast<std::size_t>(picture.width);
        for (std::size_t i = 0; i < picture.pixels.size(); ++i) {
            const std::size_t x = (p % kColumns) * wide + i % wide;
            const std::size_t y = (p / kColumns) * static_cast<std::size_t>(picture.height) + i / wide;
            sheet.pixels[y * static_cast<std::size_t>(sheet.width) + x] = picture.pixels[i];
        }
    }
    return sheet;
}

int draw_sheet(const std::vector<std::string>& names, const SittersWish& wish) {
    const auto kind = picture_kind(wish.sheet);
    if (!kind) return complain(kind.problems());
    if (*kind == PictureKind::kExr) {
        return complain({{Blame::kWrongInput, fmt::format("{}: a sheet is .png or .jpg", wish.sheet)}});
    }
    if (const auto done = check_writable(wish.sheet); !done) return complain(done.problems());
    std::vector<Picture> pictures;
    {
        ProgressLine line;
        for (const std::string& name : names) {
            const double share_before = static_cast<double>(pictures.size()) / static_cast<double>(names.size());
            const auto picture = portrait_of(
                name, wish, [&](double share) { line.show(share_before + share / static_cast<double>(names.size())); });
            if (!picture) return complain(picture.problems());
            if (picture->pixels.empty()) {
                fmt::print(stderr, "interrupted: no file was written\n");
                return kInterrupted;
            }
            pictures.push_back(*picture);
        }
    }
    PictureTags tags;
    tags.title = "sitters";
    const auto written = write_display_picture(wish.sheet, *kind, tiled(pictures), tags);
    if (!written) return complain(written.problems());
    fmt::print("{}: in the order of the list, {} in a row\n", wish.sheet, kColumns);
    return kDone;
}

int run_sitters(const SittersWish& wish) {
    const Library library = own_library();
    const std::vector<std::string> names = toml_names_in(library.heads);
    if (names.empty()) {
        return complain({{Blame::kFailed, fmt::format("{}: holds no head; expected *.toml", library.heads.string())}});
    }
    Problems problems;
    for (const std::string& name : names) {
        const auto head = read_head_file(library.heads / (name + ".toml"));
        if (!head) {
            problems.insert(problems.end(), head.problems().begin(), head.problems().end());
            continue;
        }
        fmt::print("{:<9} {}\n", name, head->sitter);
    }
    if (!problems.empty()) return complain(problems);
    return wish.sheet.empty() ? kDone : draw_sheet(names, wish);
}

}  // namespace

void add_sitters(CLI::App& program, int& status) {
    const auto wish = std::make_shared<SittersWish>();
    CLI::App* command = program.add_subcommand("sitters", "List the library's sitters, or draw them all on a sheet");
    command->add_option("--sheet", wish->sheet, "The sheet of pictures under one plain light: .png or .jpg")
        ->type_name("FILE");
    command->add_option("--samples", wish->samples, "Camera paths a pixel of the sheet")->check(CLI::Range(1, 65536));
    command->callback([wish, &status] { status = run_sitters(*wish); });
}

}  // namespace understudy
