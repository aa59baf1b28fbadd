#include "report/warning_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/words.h"
#include "setup/sitter_settings.h"

namespace understudy {
namespace {

struct Called {
    const char* id;
    const char* unit;
};

Called called(WarningKind kind) {
    switch (kind) {
        case WarningKind::kOverhead:
            return {"overhead", "cm"};
        case WarningKind::kBelowFloor:
            return {"below-floor", "cm"};
        case WarningKind::kCeiling:
            return {"above-ceiling", "cm"};
        case WarningKind::kOutsideRoom:
            return {"outside-room", "cm"};
        case WarningKind::kBehindBackdrop:
            return {"behind-backdrop", "cm"};
        case WarningKind::kLensBlocked:
            return {"lens-blocked", "percent"};
        case WarningKind::kInPicture:
            return {"in-picture", "percent"};
        case WarningKind::kIntoLens:
            return {"into-lens", "degrees"};
        case WarningKind::kGlassesGlare:
            return {"glasses-glare", "percent"};
        case WarningKind::kGaze:
            return {"gaze", "degrees"};
        case WarningKind::kKeyCut:
            return {"key-cut", "percent"};
        case WarningKind::kLightCut:
            return {"light-cut", "percent"};
        case WarningKind::kShadow:
            return {"sitter-shadow", "percent"};
        case WarningKind::kAmbient:
            break;
    }
    return {"ambient", "stops"};
}

std::string pixels(const std::optional<PixelBox>& box) {
    if (!box) return "";
    return fmt::format(", pixels {:.0f} to {:.0f} across and {:.0f} to {:.0f} down", box->left, box->right, box->top,
                       box->bottom);
}

// A share that is there is never printed as nothing.
std::string some_percent(double number) {
    if (number > 0.0 && number < 0.5) return "under 1 %";
    return plain_number(number, 0) + " %";
}

// ", 1.2 stops"; nothing to say where it is all.
std::string in_stops(double percent_lost) {
    const double stops = -std::log2(1.0 - percent_lost / 100.0);
    return std::isfinite(stops) ? ", " + plain_number(stops, 1) + " stops" : std::string();
}

std::string centimetres(double number) { return plain_number(number, 0) + " cm"; }

std::string words_of_a_stand(const Warning& warning) {
    switch (warning.kind) {
        case WarningKind::kOverhead:
            return fmt::format("reaches over the sitter, {} above the head.", centimetres(warning.number));
        case WarningKind::kBelowFloor:
            return fmt::format("reaches {} below the floor: it cannot stand so low.", centimetres(warning.number));
        case WarningKind::kCeiling:
            return fmt::format("does not fit under the ceiling: {} of clearance.", centimetres(warning.number));
        case WarningKind::kBehindBackdrop:
            return fmt::format("reaches {} behind the backdrop.", centimetres(warning.number));
        default:
            return fmt::format("reaches {} beyond a wall of the room.", centimetres(warning.number));
    }
}

std::string words_of_a_view(const Warning& warning) {
    switch (warning.kind) {
        case WarningKind::kLensBlocked:
            return fmt::format("stands between lens and face and hides {} of it.", some_percent(warning.number));
        case WarningKind::kInPicture:
            return fmt::format("stands in the picture: {} of the frame{}.", some_percent(warning.number),
                               pixels(warning.box));
        default:
            return fmt::format(
                "shines into the lens{}, {} degrees off its axis: {} stops from the key's reading fall on the glass. "
                "The veil that this may lay over the picture is not rendered; a hood or a flag keeps it off.",
                warning.number > 90.0 ? " as it shines all around" : "", plain_number(warning.number, 0),
                signed_stops(warning.also.value_or(0.0)));
    }
}

std::string ways_out_of_glare(const Warning& warning) {
    std::vector<std::string> ways;
    if (warning.tip_deg) {
        ways.push_back(fmt::format("tip the glasses {} by {} degrees",
                                   *warning.tip_deg > 0.0 ? "forward, their ends up," : "back, their ends down,",
                                   plain_number(std::abs(*warning.tip_deg), 0)));
    }
    if (warning.raise_m) ways.push_back(fmt::format("raise it by {}", centimetres(100.0 * *warning.raise_m)));
    if (ways.empty())
        return "No small tip of the glasses and no metre of height takes it away; turn the head or the light.";
    return fmt::format("To be rid of it {}.", fmt::join(ways, ", or "));
}

std::string words_of_glare(const Warning& warning) {
    return fmt::format("is mirrored in the glasses: its image covers {} of the {} eye, {} stops from mid-grey. {}",
                       some_percent(warning.number), warning.by, signed_stops(warning.also.value_or(0.0)),
                       ways_out_of_glare(warning));
}

std::string words_of_gaze(const Warning& warning) {
    return fmt::format(
        "would turn the eyes {} degrees from straight ahead: they stop at {}, which few eyes reach (about 45 aside, 28 "
        "up "
        "and 47 down: Lee and others 2019). Turn the head, or let the sitter look elsewhere.",
        plain_number(warning.number, 0), plain_number(kFarthestGazeDeg, 0));
}

std::string words_of_light(const Warning& warning) {
    switch (warning.kind) {
        case WarningKind::kKeyCut:
        case WarningKind::kLightCut:
            return fmt::format("is cut from the face by {}: {} of its front is hidden there.", warning.by,
                               some_percent(warning.number));
        case WarningKind::kShadow:
            return fmt::format("throws the sitter's shadow on the backdrop{}: it takes up to {} of the light there{}.",
                               pixels(warning.box), some_percent(warning.number), in_stops(warning.number));
        default:
            return fmt::format("light of the room is {} stops from the camera's exposure: it adds {} stop.",
                               signed_stops(warning.number), plain_number(warning.also.value_or(0.0), 2));
    }
}

}  // namespace

std::string warning_id(WarningKind kind) { return called(kind).id; }

std::string warning_unit(WarningKind kind) { return called(kind).unit; }

std::string warning_words(const Warning& warning) {
    const std::string thing = warning.thing;
    if (warning.kind <= WarningKind::kBehindBackdrop) return thing + ' ' + words_of_a_stand(warning);
    if (warning.kind == WarningKind::kGaze) return thing + ' ' + words_of_gaze(warning);
    if (warning.kind <= WarningKind::kIntoLens) return thing + ' ' + words_of_a_view(warning);
    if (warning.kind == WarningKind::kGlassesGlare) return thing + ' ' + words_of_glare(warning);
    return thing + ' ' + words_of_light(warning);
}

std::vector<std::string> cautions(const MeterReport& report) {
    const auto& powers = report.powers;
    const auto is_flash = [](const LightPower& power) { return power.flash; };
    const bool any_flash = std::any_of(powers.begin(), powers.end(), is_flash);
    const bool any_lamp = !std::all_of(powers.begin(), powers.end(), is_flash);
    const bool overhead = std::any_of(report.warnings.begin(), report.warnings.end(),
                                      [](const Warning& warning) { return warning.kind == WarningKind::kOverhead; });
    std::vector<std::string> lines;
    if (overhead) {
        lines.emplace_back(
            "Overhead: a safety cord on the light itself, a counterweight on the boom, nobody under it while it is "
            "moved.");
    }
    lines.emplace_back("Stands: a weight on each, its longest leg under the load.");
    lines.emplace_back("Cables: down the stand and under a leg, taped down where people walk.");
    if (any_lamp) lines.emplace_back("Heat: lamps stay hot after use; cloth, paper and gels clear of them.");
    if (any_flash) {
        lines.emplace_back(
            "Flash: ask the sitter before the day whether flashing light is a trouble; let modelling lamps cool.");
    }
    lines.emplace_back(
        "This is a rehearsal, not a check of rigging or wiring: local rules and licensed practice come first.");
    return lines;
}

}  // namespace understudy
