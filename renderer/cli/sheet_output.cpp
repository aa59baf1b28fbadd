#include "cli/sheet_output.h"

#include <fmt/format.h>

#include "film/picture_file.h"

namespace understudy {

Problems problems_with_sheet(const std::string& sheet, const std::string& json) {
    Problems problems;
    const auto keep = [&](const auto& outcome) {
        if (!outcome) problems.insert(problems.end(), outcome.problems().begin(), outcome.problems().end());
    };
    if (!sheet.empty()) {
        const auto kind = picture_kind(sheet);
        keep(kind);
        if (kind && *kind == PictureKind::kExr) {
            problems.push_back({Blame::kWrongInput, fmt::format("{}: a sheet is .png or .jpg", sheet)});
        }
        keep(check_writable(sheet));
        keep(check_fonts());
    }
    if (!json.empty()) keep(check_writable(json));
    return problems;
}

Expected<std::string> write_sheet(const std::string& path, const ContactSheet& sheet, const std::string& title) {
    const auto kind = picture_kind(path);
    if (!kind) return kind.problems();
    const auto drawn = draw_sheet(sheet);
    if (!drawn) return drawn.problems();
    PictureTags tags;
    tags.title = title;
    if (const auto done = write_display_picture(path, *kind, *drawn, tags); !done) return done.problems();
    return fmt::format("{}: {} × {}", path, drawn->width, drawn->height);
}

}  // namespace understudy
