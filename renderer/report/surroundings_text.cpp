#include "report/surroundings_text.h"

#include <cmath>
#include <sstream>

#include <fmt/format.h>

#include "report/f_number.h"
#include "report/sent_back.h"
#include "report/table.h"
#include "report/warning_words.h"
#include "report/words.h"

namespace understudy {
namespace {

std::string pixel_text(const Vec2& pixel) {
    return fmt::format("{:.0f}, {:.0f}", std::floor(static_cast<double>(pixel.x)),
                       std::floor(static_cast<double>(pixel.y)));
}

std::string seen_text(const BackdropPlace& place) {
    if (place.meets.empty()) return "nothing there";
    if (!place.tone) return place.meets + ", not the backdrop";
    return place.hidden_by.empty() ? "backdrop" : "backdrop, behind the sitter (" + place.hidden_by + ")";
}

std::string places_table(const std::vector<BackdropPlace>& places) {
    Table table({{"place"},
                 {"pixel", Align::kRight},
                 {"meter"},
                 {"from face", Align::kRight},
                 {"tone", Align::kRight},
                 {"clipped"},
                 {"there"}});
    for (const BackdropPlace& place : places) {
        if (place.tone) {
            table.add_row({place.place, pixel_text(place.pixel), whole_stop_and_tenths(place.tone->f_number),
                           signed_stops(place.tone->stops_from_face), signed_stops(place.tone->stops_from_grey),
                           place.tone->clipped ? "yes" : "no", seen_text(place)});
        } else {
            table.add_row({place.place, pixel_text(place.pixel), "-", "-", "-", "-", seen_text(place)});
        }
    }
    return table.text();
}

std::string stops_under(double share) { return share > 0.0 ? plain_number(-std::log2(share), 1) : "none"; }

std::string fine_percent(double share) {
    return std::isfinite(share) ? plain_number(100.0 * share, 1) + " %" : std::string("none");
}

std::string sent_back_table(const MeterReport& report) {
    Table table(
        {{"point"}, {"receptor"}, {"facing"}, {"of the reading", Align::kRight}, {"stops under", Align::kRight}});
    for (const Reading& reading : report.readings) {
        if (!tells_what_is_sent_back(reading)) continue;
        const double share = reading.by_backdrop_lxs / reading.exposure_lxs;
        table.add_row(
            {reading.point, word(reading.receptor), word(reading.facing), fine_percent(share), stops_under(share)});
    }
    return table.text();
}

// A line of a list, broken between words where it grows too long for a screen.
std::string item(const std::string& words) {
    constexpr std::size_t kWidth = 112;
    std::istringstream stream(words);
    std::string text = "  -";
    std::size_t used = display_width(text);
    for (std::string one; stream >> one;) {
        const std::size_t width = display_width(one);
        if (used + 1 + width > kWidth) {
            text += "\n   ";
            used = 3;
        }
        text += " " + one;
        used += 1 + width;
    }
    return text + "\n";
}

}  // namespace

std::string backdrop_text(const MeterReport& report) {
    const std::string title = "\nBackdrop, the sitter in place\n";
    if (!report.backdrop) return title + "  None.\n";
    return title + places_table(*report.backdrop) +
           "  Meter: flat receptor on the backdrop. From face: stops from the face's flat reading toward the key.\n"
           "  Tone: stops from mid-grey (18 %) in the picture.\n" +
           "\nWhat the backdrop sends back\n" + sent_back_table(report);
}

std::string outline_text(const MeterReport& report) {
    if (!report.outline) return "";
    const Outline& outline = *report.outline;
    return "\nThe head against what is behind it, along its outline in the picture\n" +
           fmt::format("  Edge over backdrop: {} stops in the middle of {} places; nearest at {} o'clock, {} stops.\n",
                       signed_stops(outline.median_stops), outline.places.size(),
                       clock_time(outline.weakest.clock_deg, 30), signed_stops(outline.weakest.stops));
}

std::string room_text(const MeterReport& report) {
    if (!report.room_size_m && !(report.ambient_lxs > 0.0)) return "";
    Table table({{"point"}, {"receptor"}, {"facing"}, {"share", Align::kRight}, {"±", Align::kRight}});
    for (const Reading& reading : report.readings) {
        table.add_row({reading.point, word(reading.receptor), word(reading.facing),
                       fine_percent(reading.by_room_lxs / reading.exposure_lxs),
                       fine_percent(reading.by_room_error_lxs / reading.exposure_lxs)});
    }
    return "\nWhat came from the room: by walls, floor or ceiling, or as its ambient light\n" + table.text();
}

std::string warnings_text(const MeterReport& report) {
    std::string text = "\nWarnings\n";
    if (report.warnings.empty()) return text + "  None.\n";
    for (const Warning& warning : report.warnings) text += item(without_controls(warning_words(warning)));
    return text;
}

std::string cautions_text(const MeterReport& report) {
    std::string text = "\nBefore you build it\n";
    for (const std::string& line : cautions(report)) text += item(line);
    return text;
}

}  // namespace understudy
