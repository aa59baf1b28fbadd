#include "report/power_text.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "kit/flash_energy.h"
#include "report/f_number.h"
#include "report/table.h"
#include "report/ways_out_text.h"
#include "report/words.h"

namespace understudy {
namespace {

std::string light_output(const LightPower& power) {
    return three_figures(power.lumens) + (power.flash ? " lm·s" : " lm");
}

std::string setting_of(const LightPower& power) {
    if (!power.flash) return power.lux > 0.0 ? three_figures(power.lux) + " lx" : "-";
    return std::isfinite(power.energy_j) && power.energy_j > 0.0 ? three_figures(power.energy_j) + " J" : "-";
}

std::string tube_of(const LightPower& power) {
    return power.flash && power.efficacy_lms_per_j > 0.0 ? three_figures(power.efficacy_lms_per_j) + " lm·s/J" : "-";
}

// Where the joules come from, said once for all lights that share it.
std::string efficacy_notes(const std::vector<LightPower>& powers) {
    const auto any = [&](EfficacyFrom from) {
        return std::any_of(powers.begin(), powers.end(), [&](const LightPower& power) {
            return power.flash && power.efficacy_lms_per_j > 0.0 && power.efficacy_from == from;
        });
    };
    std::string notes;
    if (any(EfficacyFrom::kUsual)) {
        notes += fmt::format(
            "  {:.0f} lm·s a joule is a usual flash tube's, not yours: published figures go from {:.0f} to {:.0f}. One "
            "reading\n  of your own unit ([flash.NAME], calibration) makes joules and dials true.\n",
            kFlashEfficacy, kLeastFlashEfficacy, kMostFlashEfficacy);
    }
    for (const LightPower& power : powers) {
        if (power.efficacy_from != EfficacyFrom::kReading) continue;
        const bool usual =
            power.efficacy_lms_per_j >= kLeastFlashEfficacy && power.efficacy_lms_per_j <= kMostFlashEfficacy;
        notes += fmt::format("  {}: {} lm·s a joule, from the reading of its head{}.\n", power.light,
                             three_figures(power.efficacy_lms_per_j),
                             usual ? ""
                                   : fmt::format("; that is not within the published {:.0f} to {:.0f}, so check "
                                                 "the reading",
                                                 kLeastFlashEfficacy, kMostFlashEfficacy));
    }
    return notes;
}

// In tenths of a stop, which is what heads and meters count in.
std::string in_tenths(double stops) {
    const std::string tenths = plain_number(10.0 * stops, 1);
    return (stops > 0.0 && tenths != "0.0" ? "+" : "") + tenths;
}

std::string modelling_lamp(const LightPower& power) {
    return power.modelling_stops ? signed_stops(*power.modelling_stops) : "-";
}

// A second light five stops under the first adds 0.04 stop to it: less than a head steps by.
constexpr double kUnnoticedStops = -5.0;

std::string lamps_that_show(const std::vector<LightPower>& powers) {
    std::string text;
    for (const LightPower& power : powers) {
        if (!power.modelling_stops || !(*power.modelling_stops > kUnnoticedStops)) continue;
        text += fmt::format(
            "  {}: so weak a flash leaves its modelling lamp in a real picture, {} stops from it; turn "
            "the lamp down or off.\n",
            power.light, signed_stops(*power.modelling_stops));
    }
    return text;
}

std::string dials_text(const std::vector<LightPower>& powers) {
    const bool none =
        std::none_of(powers.begin(), powers.end(), [](const LightPower& power) { return power.dial.has_value(); });
    if (none) return "";
    Table table({{"light"},
                 {"head"},
                 {"dial"},
                 {"from full", Align::kRight},
                 {"left over, tenths", Align::kRight},
                 {"range"},
                 {"modelling lamp", Align::kRight}});
    std::string troubles;
    for (const LightPower& power : powers) {
        if (!power.dial) continue;
        const DialReading& dial = *power.dial;
        const bool out = dial.out_by_stops != 0.0;
        table.add_row({power.light, dial.head, out ? "out of range" : dial.setting, signed_stops(dial.stops_from_full),
                       out ? "-" : in_tenths(dial.left_over_stops), dial.range, modelling_lamp(power)});
        if (out) troubles += ways_out_text(power);
    }
    const bool lamps = std::any_of(powers.begin(), powers.end(),
                                   [](const LightPower& power) { return power.modelling_stops.has_value(); });
    const std::string lamp_note = lamps ? "  Modelling lamp: stops from its own flash while the shutter is open; it "
                                          "sets the pupils and is not in the picture.\n"
                                        : "";
    return heading("Dials, in each head's own notation") + table.text() + lamp_note + lamps_that_show(powers) +
           troubles;
}

}  // namespace

std::string powers_text(const MeterReport& report) {
    Table table({{"light"},
                 {"kind"},
                 {"set to", Align::kRight},
                 {"tube", Align::kRight},
                 {"modifier passes", Align::kRight},
                 {"light out", Align::kRight},
                 {"lens"},
                 {"meter"}});
    for (const LightPower& power : report.powers) {
        table.add_row({power.light, power.flash ? "flash" : "continuous", setting_of(power), tube_of(power),
                       power.flash ? percent(power.modifier_efficiency) : "-", light_output(power),
                       marked_f_number(power.f_number), whole_stop_and_tenths(power.f_number)});
    }
    return heading("Lights, each alone: read at the face, flat receptor square to the light, the sitter away") +
           table.text() + efficacy_notes(report.powers) + dials_text(report.powers);
}

std::string pupil_text(const MeterReport& report) {
    if (!report.pupil) return "";
    const PupilReading& pupil = *report.pupil;
    std::string why = "the usual width: the scene has no lamp that is on all the time";
    if (pupil.from == PupilFrom::kTold) why = "as the scene says";
    if (pupil.from == PupilFrom::kStandingLight) {
        why = fmt::format("{} lx at the eyes from what is on all the time (a flash is too short)",
                          three_figures(pupil.illuminance_lx));
    }
    return heading("Pupils") + fmt::format("  {} mm wide, {}.\n", plain_number(pupil.diameter_mm, 1), why);
}

}  // namespace understudy
