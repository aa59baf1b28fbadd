#include "report/eyes_text.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/table.h"
#include "report/words.h"
#include "sitter/eye.h"

namespace understudy {
namespace {

constexpr int kSpokenClockMinutes = 30;  // nobody in a studio tells a catchlight finer than half an hour
constexpr double kNamed = 0.05;          // smaller shares are left out of a list of what hides a thing
constexpr double kMillimetre = 1e-3;

bool shown(const Catchlight& catchlight) { return catchlight.visible >= kLeastShown; }

// "upper lid 82 %, brow 7 %", or "-".
std::string shares_of(const std::vector<Taken>& taken) {
    std::string words;
    for (const Taken& one : taken) {
        if (one.share < kNamed) continue;
        words += (words.empty() ? "" : ", ") + without_controls(one.by) + " " + percent(one.share);
    }
    return words.empty() ? "-" : words;
}

std::string catchlight_size(const Catchlight& catchlight) {
    // Iris radii to the iris's whole width.
    return percent(0.5 * catchlight.width_in_iris) + " x " + percent(0.5 * catchlight.height_in_iris);
}

std::string catchlight_mm(const Catchlight& catchlight) {
    constexpr double kRadiusMm = kIrisRadius / kMillimetre;
    return plain_number(kRadiusMm * catchlight.width_in_iris, 1) + " x " +
           plain_number(kRadiusMm * catchlight.height_in_iris, 1);
}

double out_of_middle(const Catchlight& catchlight) {
    return static_cast<double>(std::hypot(catchlight.offset_in_iris.x, catchlight.offset_in_iris.y));
}

std::string verdict_words(const EyeReading& eye) {
    if (!std::isfinite(eye.stops_from_cheek)) return word(eye.verdict);
    const double under = -eye.stops_from_cheek;
    const std::string stops = plain_number(std::abs(under), 1);
    if (stops == "0.0") return word(eye.verdict) + ", as bright as the lit cheek";
    return fmt::format("{}, {} stops {} the lit cheek", word(eye.verdict), stops, under > 0.0 ? "under" : "over");
}

std::string light_words(const EyeLight& light) {
    const std::string name = without_controls(light.light);
    if (light.sight.share >= 0.995) return fmt::format("    sees all of {}", name);
    return fmt::format("    sees {} of {}; in the way: {}", percent(light.sight.share), name,
                       shares_of(light.sight.taken));
}

std::string catchlight_words(const Catchlight& catchlight) {
    const std::string name = without_controls(catchlight.light) + (catchlight.is_panel ? " (panel)" : "");
    if (!shown(catchlight)) {
        return fmt::format("    no catchlight of {}: {}", name,
                           catchlight.hidden_by.empty() ? "nothing of it is mirrored here"
                                                        : "hidden by " + shares_of(catchlight.hidden));
    }
    const std::string whole = catchlight.visible >= 0.995 ? "whole" : percent(catchlight.visible) + " of it shows";
    return fmt::format("    catchlight of {} at {} o'clock, {} out, {} of the iris wide, {}", name,
                       clock_time(catchlight.clock_deg, kSpokenClockMinutes), percent(out_of_middle(catchlight)),
                       percent(0.5 * catchlight.width_in_iris), whole);
}

std::string fault_words(const EyeLight& light) {
    const std::string name = without_controls(light.light);
    if (light.fault == EyeFault::kNoLight) return fmt::format("    fault: no light of {} reaches this eye\n", name);
    if (light.fault != EyeFault::kNoReflection) return "";
    return fmt::format("    fault: light of {} reaches this eye, but its reflection is hidden\n", name);
}

std::string lights_table(const std::vector<EyeReading>& eyes) {
    Table table({{"eye"},
                 {"light"},
                 {"seen", Align::kRight},
                 {"lx·s", Align::kRight},
                 {"from cheek", Align::kRight},
                 {"fault"},
                 {"in the way"}});
    for (const EyeReading& eye : eyes) {
        for (const EyeLight& light : eye.lights) {
            table.add_row({eye.eye, light.light, percent(light.sight.share), three_figures(light.exposure_lxs),
                           signed_stops(light.stops_from_cheek), word(light.fault), shares_of(light.sight.taken)});
        }
    }
    return "\n" + table.text() +
           "  Seen: what of the light's front can be seen from the eye. From cheek: this light alone, on the eye "
           "against\n"
           "  the brighter cheek. No light and no reflection are different faults, with different remedies.\n";
}

}  // namespace

std::string eyes_in_words(const MeterReport& report) {
    if (!report.eyes || !report.catchlights) return "";
    std::string text = heading("The eyes");
    for (const EyeReading& eye : *report.eyes) {
        text += fmt::format("  {} eye: {}\n", eye.eye, verdict_words(eye));
        for (const EyeLight& light : eye.lights) {
            text += light_words(light) + "\n";
            for (const Catchlight& image : *report.catchlights) {
                if (image.eye == eye.eye && image.light == light.light && !image.is_panel) {
                    text += catchlight_words(image) + "\n";
                }
            }
            text += fault_words(light);
        }
        for (const Catchlight& image : *report.catchlights) {
            if (image.eye == eye.eye && image.is_panel) text += catchlight_words(image) + "\n";
        }
    }
    return text;
}

std::string eyes_text(const MeterReport& report) {
    const std::string title = heading("Eyes: light that reaches the iris, against the brighter cheek");
    if (!report.eyes) return title + "  No eyes in this scene.\n";
    Table table(
        {{"eye"}, {"verdict"}, {"from cheek", Align::kRight}, {"± stops", Align::kRight}, {"lx·s", Align::kRight}});
    for (const EyeReading& eye : *report.eyes) {
        table.add_row({eye.eye, word(eye.verdict), signed_stops(eye.stops_from_cheek),
                       error_in_stops(eye.exposure_lxs, eye.standard_error_lxs), three_figures(eye.exposure_lxs)});
    }
    return title + table.text() + lights_table(*report.eyes);
}

std::string catchlights_text(const MeterReport& report) {
    const std::string title = heading("Catchlights, as the picture is seen");
    if (!report.catchlights) return title + "  No eyes in this scene.\n";
    if (report.catchlights->empty()) return title + "  None: no light is mirrored in either eye.\n";
    Table table({{"eye"},
                 {"light"},
                 {"clock", Align::kRight},
                 {"degrees", Align::kRight},
                 {"out", Align::kRight},
                 {"size", Align::kRight},
                 {"mm", Align::kRight},
                 {"over iris", Align::kRight},
                 {"visible", Align::kRight},
                 {"hidden by"}});
    for (const Catchlight& catchlight : *report.catchlights) {
        const auto out = static_cast<double>(std::hypot(catchlight.offset_in_iris.x, catchlight.offset_in_iris.y));
        table.add_row({catchlight.eye, catchlight.light + (catchlight.is_panel ? " (panel)" : ""),
                       clock_time(catchlight.clock_deg, kSpokenClockMinutes), plain_number(catchlight.clock_deg, 0),
                       percent(out), catchlight_size(catchlight), catchlight_mm(catchlight),
                       shown(catchlight) ? signed_stops(catchlight.stops_over_iris) : "-", percent(catchlight.visible),
                       shares_of(catchlight.hidden)});
    }
    return title + table.text() +
           "  Clock to the nearest half hour; degrees clockwise from 12. Out: from the middle of the iris (0 %) to "
           "its\n"
           "  rim (100 %). Size: width x height of the whole reflection, in parts of the iris's width and in\n"
           "  millimetres. Over iris: stops that its brightest part is over the iris.\n";
}

}  // namespace understudy
