#include "report/photometric_text.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <sstream>

#include <fmt/format.h>

#include "kit/photometric_cut.h"
#include "kit/photometric_opening.h"
#include "report/polar_plot.h"
#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

constexpr std::size_t kColumns = 80;
constexpr std::size_t kIndent = 16;

std::string edition_word(PhotometricEdition edition) {
    switch (edition) {
        case PhotometricEdition::k1986:
            return "LM-63-1986";
        case PhotometricEdition::k1991:
            return "LM-63-1991";
        case PhotometricEdition::k1995:
            return "LM-63-1995";
        case PhotometricEdition::k2002:
            return "LM-63-2002";
        case PhotometricEdition::k2019:
            break;
    }
    return "LM-63-2019";
}

std::string type_words(PhotometricType type) {
    switch (type) {
        case PhotometricType::kC:
            return "type C (poles below and above)";
        case PhotometricType::kB:
            return "type B (poles to the sides)";
        case PhotometricType::kA:
            break;
    }
    return "type A (poles below and above, the light ahead)";
}

std::string symmetry_words(PhotometricSymmetry symmetry) {
    switch (symmetry) {
        case PhotometricSymmetry::kAxial:
            return "the same all round";
        case PhotometricSymmetry::kQuadrants:
            return "four quadrants alike";
        case PhotometricSymmetry::kPlane0To180:
            return "mirrored at the 0-180 plane";
        case PhotometricSymmetry::kPlane90To270:
            return "mirrored at the 90-270 plane";
        case PhotometricSymmetry::kLeftEqualsRight:
            return "left and right alike";
        case PhotometricSymmetry::kNone:
            break;
    }
    return "no symmetry";
}

// A heading and text behind it, broken between words.
std::string entry(std::string_view heading, const std::string& text) {
    std::string result;
    std::string line = fmt::format("  {:<{}}", heading, kIndent - 2);
    const auto is_fresh = [&] { return display_width(line) <= kIndent && line.back() == ' '; };
    std::istringstream words(without_controls(text));
    for (std::string word; words >> word;) {
        if (!is_fresh() && display_width(line) + 1 + display_width(word) > kColumns) {
            result += line + "\n";
            line = std::string(kIndent, ' ');
        }
        line += (is_fresh() ? "" : " ") + word;
    }
    return result + line + "\n";
}

std::string angles_words(std::string_view kind, const std::vector<double>& angles) {
    if (angles.size() == 1) return fmt::format("1 {} angle", kind);
    return fmt::format("{} {} angles from {:g} to {:g}", angles.size(), kind, angles.front(), angles.back());
}

std::string lamp_words(const PhotometricFile& file) {
    const std::string lamps = file.lamps == 1 ? "1 lamp" : fmt::format("{} lamps", file.lamps);
    if (!file.lumens_per_lamp) return lamps + ", measured absolutely";
    return fmt::format("{} of {} lm{}", lamps, three_figures(*file.lumens_per_lamp), file.lamps == 1 ? "" : " each");
}

std::string flux_words(const PhotometricFile& file, const PhotometricWeb& web) {
    const double behind = std::max(0.0, web.flux_lm() - web.forward_flux_lm());
    std::string words = fmt::format("{:.1f} lm", web.flux_lm());
    if (behind > 1e-6 * web.flux_lm()) {
        words += fmt::format(" ({:.1f} lm ahead, {:.1f} lm behind)", web.forward_flux_lm(), behind);
    }
    if (file.lumens_per_lamp) {
        words += fmt::format(", {} of the lamps'", percent(web.flux_lm() / (*file.lumens_per_lamp * file.lamps)));
    }
    return words;
}

std::string header_text(const PhotometricFile& file, const PhotometricWeb& web) {
    std::string text = without_controls(file.name) + "\n";
    text += entry("edition", edition_word(file.edition));
    for (const PhotometricKeyword& keyword : file.keywords) {
        text += entry(keyword.key.empty() ? "label" : "[" + keyword.key + "]", keyword.text);
    }
    text += entry("lamp", lamp_words(file));
    if (file.tilt) {
        text += entry("tilt", fmt::format("{} factors of {}, not used", file.tilt->factors.size(), file.tilt->from));
    }
    text += entry("factors", fmt::format("multiplier {:g}, ballast {:g}, second {:g}: multiplied in", file.multiplier,
                                         file.ballast_factor, file.second_factor));
    text += entry("input", fmt::format("{:g} W", file.input_watts));
    text += entry("angles", type_words(file.type) + ", " + symmetry_words(file.symmetry) + "; " +
                                angles_words("vertical", file.vertical_deg) + ", " +
                                angles_words("horizontal", file.horizontal_deg));
    text += entry("opening", describe_opening(file.opening) + (file.in_feet ? " (written in feet)" : ""));
    text += entry("flux", flux_words(file, web));
    text += entry("peak", fmt::format("{} cd at vertical {:g}, horizontal {:g}", three_figures(web.peak_candela()),
                                      web.peak_at().vertical_deg, web.peak_at().horizontal_deg));
    return text;
}

struct CutName {
    CutPlane plane;
    std::string_view words;
    std::string_view left;
    std::string_view right;
};
constexpr std::array<CutName, 2> kCuts{
    {{CutPlane::kUpright, "upright", "down", "up"}, {CutPlane::kLevel, "level", "left", "right"}}};

std::string plane_words(const CutName& cut, PhotometricType type) {
    const bool upright = cut.plane == CutPlane::kUpright;
    if (type == PhotometricType::kC) return fmt::format("{} ({})", cut.words, upright ? "C 0-180" : "C 90-270");
    return fmt::format("{} ({})", cut.words, upright ? "h = 0" : "v = 0");
}

std::string spread_words(const std::optional<CutSpread>& spread) {
    if (!spread) return "none";
    return fmt::format("{} to {} ({})", plain_number(spread->low_deg, 1), plain_number(spread->high_deg, 1),
                       plain_number(spread->width_deg(), 1));
}

std::string cuts_text(const PhotometricFile& file, const std::array<CutProfile, 2>& profiles) {
    Table table({{"plane"},
                 {"peak cd", Align::kRight},
                 {"at", Align::kRight},
                 {"half of it", Align::kRight},
                 {"a tenth", Align::kRight}});
    for (std::size_t i = 0; i < kCuts.size(); ++i) {
        const CutProfile& profile = profiles[i];
        table.add_row({plane_words(kCuts[i], file.type), three_figures(profile.peak_candela),
                       profile.half || profile.tenth ? plain_number(profile.peak_at_deg, 1) : "none",
                       spread_words(profile.half), spread_words(profile.tenth)});
    }
    return table.text() +
           "  degrees from straight ahead, positive up or right as seen by someone who\n"
           "  looks at the light with no roll; in brackets the whole width\n";
}

std::string plots_text(const PhotometricFile& file, const PhotometricWeb& web,
                       const std::array<CutProfile, 2>& profiles) {
    const double scale = std::max(profiles[0].peak_candela, profiles[1].peak_candela);
    if (!(scale > 0.0)) return "  no light in either plane\n";
    const bool behind = web.forward_flux_lm() < (1.0 - 1e-6) * web.flux_lm();
    std::vector<PolarPlot> plots;
    std::string captions;
    for (const CutName& cut : kCuts) {
        plots.emplace_back([&](double angle) { return std::min(1.0, cut_candela(web, cut.plane, angle) / scale); },
                           behind);
        const std::string caption = fmt::format("{:<6}{:^25}{:>6}", cut.left, plane_words(cut, file.type), cut.right);
        captions += (captions.empty() ? "  " : "    ") + caption;
    }
    std::string text = captions + "\n";
    for (std::size_t i = 0; i < plots[0].lines().size(); ++i) {
        std::string line = "  " + plots[0].lines()[i] + "    " + plots[1].lines()[i];
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + "\n";
    }
    return text + fmt::format("  straight ahead is down; the outer ring is {} cd, the inner half of it\n",
                              three_figures(scale));
}

}  // namespace

std::string photometric_text(const PhotometricFile& file) {
    const PhotometricWeb web(file);
    const std::array<CutProfile, 2> profiles{cut_profile(web, kCuts[0].plane), cut_profile(web, kCuts[1].plane)};
    std::string text =
        header_text(file, web) + "\n" + cuts_text(file, profiles) + "\n" + plots_text(file, web, profiles);
    if (!file.warnings.empty()) text += "\nwarnings\n";
    for (const std::string& warning : file.warnings) text += "  " + without_controls(warning) + "\n";
    return text;
}

}  // namespace understudy
