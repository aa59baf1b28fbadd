#include "report/advice_text.h"

#include <cmath>
#include <sstream>
#include <vector>

#include <fmt/format.h>

#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

constexpr int kSpokenClockMinutes = 30;

std::string side_of(double number) { return number < 0.0 ? "camera left" : "camera right"; }
std::string whole(double number) { return plain_number(std::abs(number), 0); }
std::string metres(double number) { return plain_number(number, 2) + " m"; }

std::vector<std::string> lines_in(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::string eye_words(const EyeState& eye, const char* name) {
    const std::string light =
        std::isfinite(eye.stops_from_cheek)
            ? fmt::format("{} ({} stops from the lit cheek)", word(eye.verdict), signed_stops(eye.stops_from_cheek))
            : word(eye.verdict);
    const std::string image =
        eye.shown >= kLeastShown
            ? fmt::format("catchlight of {} at {}, {} of it shows", without_controls(eye.catchlight),
                          clock_time(eye.clock_deg, kSpokenClockMinutes), percent(eye.shown))
            : std::string("no catchlight");
    return fmt::format("{} eye {}, {}", name, light, image);
}

std::string pattern_of(const SetupLook& look) { return look.pattern ? word(*look.pattern) : "not told"; }
std::string ratio_of(const SetupLook& look) {
    return look.eyes.ratio && std::isfinite(look.eyes.ratio->stops) ? plain_number(look.eyes.ratio->stops, 1) : "none";
}
std::string edge_of(const SetupLook& look) {
    return look.nose_edge_m ? plain_number(1000.0 * *look.nose_edge_m, 0) + " mm" : std::string("none");
}

std::string changed(const std::string& name, const std::string& before, const std::string& after) {
    return before == after ? name + " stays " + after : name + " " + before + " to " + after;
}

std::string effects(const SetupLook& now, const SetupLook& after) {
    const double stops = std::log2(after.eyes.face_lxs / now.eyes.face_lxs);
    return fmt::format("       {}; {}; {}; face {} stops\n", changed("pattern", pattern_of(now), pattern_of(after)),
                       changed("cheeks' ratio in stops", ratio_of(now), ratio_of(after)),
                       changed("shadow's edge", edge_of(now), edge_of(after)), signed_stops(stops));
}

std::string number_words(FixKind kind, double number, double after) {
    switch (kind) {
        case FixKind::kGaze:
        case FixKind::kChin:
        case FixKind::kTurn:
        case FixKind::kAngle:
            return whole(number) + " degrees";
        case FixKind::kPower:
            return plain_number(number, 1) + " stops";
        case FixKind::kModifier:
            return plain_number(number, 1) + " times as wide";
        case FixKind::kStepBack:
        case FixKind::kStepAside:
        case FixKind::kReflector:
        case FixKind::kHeight:
        case FixKind::kArc:
            break;
        case FixKind::kDistance:
            return metres(after) + " from the face";
    }
    return centimetres(std::abs(number));
}

std::string faces_words(const Fix& fix) {
    std::string text;
    for (const OnFace& on : fix.faces) {
        if (!text.empty()) text += "; ";
        text += on.face + ": ";
        text += on.enough   ? "enough"
                : on.number ? number_words(fix.kind, *on.number, on.after)
                            : "not enough, nor twice as much";
    }
    return text.empty() ? "" : "       on other faces, " + text + "\n";
}

// As a shell takes it; nothing for what it would take otherwise.
std::string quoted(const std::string& text) {
    return text.find('\'') == std::string::npos ? "'" + without_controls(text) + "'" : std::string();
}

std::string how_to_try(const Fix& fix, const std::string& scene) {
    if (!fix.table.empty()) {
        std::string text = "       to see it, add to the scene file:\n";
        for (const std::string& line : lines_in(fix.table)) text += "         " + line + "\n";
        return text;
    }
    std::string command = "understudy render " + scene;
    for (const std::string& change : fix.changes) {
        const std::string argument = quoted(change);
        if (argument.empty()) return "";
        command += " --with " + argument;
    }
    return fix.changes.empty() ? "" : "       to see it: " + command + "\n";
}

std::string fixes_text(const Advice& advice) {
    if (advice.now.eyes.both_alive()) {
        return "\nNothing to mend: both eyes have their light and a catchlight.\n";
    }
    if (advice.fixes.empty()) {
        return "\nNo single change that was tried lights both eyes. Combine two: lower the light and lift the chin, "
               "say.\n";
    }
    std::string text = heading("Any one of these lights both eyes; the cheapest first");
    int number = 0;
    for (const Fix& fix : advice.fixes) {
        text += fmt::format("  {:>2}.  {}\n", ++number, instruction(fix, without_controls(advice.key)));
        text += fmt::format("       {}\n", eye_words(fix.look.eyes.eyes[0], "camera-left"));
        text += fmt::format("       {}\n", eye_words(fix.look.eyes.eyes[1], "camera-right"));
        text += effects(advice.now, fix.look) + faces_words(fix) + how_to_try(fix, advice.scene);
    }
    return text;
}

std::string height_words(const CutOff& cut) {
    if (!cut.ever_alive) return "lost at any height";
    return cut.at ? metres(*cut.at) : "not up to 3.5 m";
}

std::string heights_text(const Advice& advice) {
    Table table({{"face"}, {"camera-left eye", Align::kRight}, {"camera-right eye", Align::kRight}});
    for (const HeightCutOff& cut : advice.heights) {
        table.add_row({cut.face, height_words(cut.above_m[0]), height_words(cut.above_m[1])});
    }
    return heading(fmt::format("An eye is lost when the middle of {} is higher than", without_controls(advice.key))) +
           table.text() +
           fmt::format("  It stands at {} now. Straight up and down, over its place on the floor.\n",
                       metres(advice.key_height_m));
}

std::string turn_words(const CutOff& cut) {
    if (!cut.ever_alive) return "lost at any turn";
    return cut.at ? whole(*cut.at) + " degrees" : "not within 60 degrees";
}

std::string turns_text(const Advice& advice) {
    Table table({{"head turns to"}, {"camera-left eye", Align::kRight}, {"camera-right eye", Align::kRight}});
    const auto& turns = advice.turns;
    table.add_row({"camera left", turn_words(turns.left_deg[0]), turn_words(turns.left_deg[1])});
    table.add_row({"camera right", turn_words(turns.right_deg[0]), turn_words(turns.right_deg[1])});
    return heading("An eye is lost when the head turns farther than") + table.text() +
           "  From how it is now, the eyes kept on what they look at.\n";
}

}  // namespace

std::string instruction(const Fix& fix, const std::string& key) {
    const double n = fix.number;
    switch (fix.kind) {
        case FixKind::kGaze:
            return fmt::format("eyes {} degrees toward {}, the head kept", whole(n), key);
        case FixKind::kChin:
            return fmt::format("chin {} {} degrees", n > 0.0 ? "up" : "down", whole(n));
        case FixKind::kTurn:
            return fmt::format("turn the head {} degrees to {}", whole(n), side_of(n));
        case FixKind::kStepBack:
            return fmt::format("the sitter moves back {}", centimetres(n));
        case FixKind::kStepAside:
            return fmt::format("the sitter moves {} to {}", centimetres(std::abs(n)), side_of(n));
        case FixKind::kPower:
            return fmt::format("turn up {} by {} stops", without_controls(fix.thing), plain_number(n, 1));
        case FixKind::kReflector:
            return fmt::format("a {} board 90 x 60 cm under the chin, its middle {} from the face", fix.thing,
                               centimetres(n));
        case FixKind::kHeight:
            return fmt::format("{} {} by {}, its middle to {} from the floor", n < 0.0 ? "lower" : "raise", key,
                               centimetres(std::abs(n)), metres(fix.after));
        case FixKind::kArc:
            return fmt::format("{} {} by {} along its arc, its middle to {} from the floor, its distance kept",
                               n < 0.0 ? "lower" : "raise", key, centimetres(std::abs(n)), metres(fix.after));
        case FixKind::kAngle:
            return fmt::format("swing {} {} degrees to {}, to {} degrees from the lens", key, whole(n), side_of(n),
                               whole(fix.after));
        case FixKind::kDistance:
            return fmt::format("{} {} along the floor until it is {} from the face", n > 0.0 ? "move back" : "bring in",
                               key, metres(fix.after));
        case FixKind::kModifier:
            break;
    }
    return fmt::format("fit {} on {}: {} times as wide", fix.thing, key, plain_number(n, 1));
}

std::string advice_text(const Advice& advice) {
    const std::string title = advice.title.empty() ? "Untitled" : without_controls(advice.title);
    const auto& eyes = advice.now.eyes.eyes;
    return title + "\n" + heading("Now") + "  " + eye_words(eyes[0], "camera-left") + "\n  " +
           eye_words(eyes[1], "camera-right") + "\n" +
           fmt::format("  pattern {}, cheeks' ratio {} stops, shadow's edge {}\n", pattern_of(advice.now),
                       ratio_of(advice.now), edge_of(advice.now)) +
           fixes_text(advice) + heights_text(advice) + turns_text(advice) +
           "\n  An eye counts when it is no more than 2 stops under the lit cheek and a fifth of a catchlight shows.\n"
           "  Before you lower or swing a boom: nobody under it, the counterweight checked, a hand on the stand.\n";
}

}  // namespace understudy
