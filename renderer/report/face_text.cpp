#include "report/face_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

constexpr double kPerSquareCentimetre = 1e4;

std::string side_of(double degrees) { return degrees < 0.0 ? "camera left" : "camera right"; }

std::string line(const std::string& name, const std::string& words) {
    return fmt::format("  {:<17} {}\n", name, words);
}

std::string key_words(const PatternReading& pattern) {
    const std::string across = std::abs(pattern.across_deg) < 0.5
                                   ? "straight ahead"
                                   : fmt::format("{} degrees to {}", plain_number(std::abs(pattern.across_deg), 0),
                                                 side_of(pattern.across_deg));
    const double up = pattern.up_deg;
    return fmt::format("{}, {} degrees {} the face's own level", across, plain_number(std::abs(up), 0),
                       up < 0.0 ? "under" : "over");
}

std::string way_words(double from_down_deg) {
    const double turned = std::abs(from_down_deg);
    if (turned <= 5.0) return "straight down";
    return fmt::format("{} degrees from straight down, to {}", plain_number(turned, 0), side_of(from_down_deg));
}

std::string lip_words(double to_lip) {
    if (to_lip >= 1.0) return "it reaches the upper lip";
    if (to_lip <= 0.0) return "it stays above the nose's base";
    return fmt::format("it goes {} of the way from the nose to the upper lip", percent(to_lip));
}

std::string nose_words(const PatternReading& pattern) {
    if (!pattern.nose) return "none that the camera sees";
    const NoseShadow& nose = *pattern.nose;
    return fmt::format("{} long, {}; {}{}", centimetres(nose.length_m), way_words(nose.from_down_deg),
                       lip_words(nose.to_lip), nose.closed ? "; it closes with the cheek's shadow" : "");
}

std::string triangle_words(const PatternReading& pattern) {
    if (!pattern.triangle) return "none";
    const CheekTriangle& triangle = *pattern.triangle;
    return fmt::format("{} of the eye's width, {} of the nose's length", percent(triangle.of_eye_width),
                       percent(triangle.of_nose_length));
}

std::string next_words(const FaceReading& face) {
    std::string words;
    for (const NextPattern& next : face.next) {
        const std::string move = next.swing_deg != 0.0
                                     ? fmt::format("swing the key {} degrees to {}",
                                                   plain_number(std::abs(next.swing_deg), 0), side_of(next.swing_deg))
                                     : fmt::format("{} it {} along its arc", next.raise_m > 0.0 ? "raise" : "lower",
                                                   centimetres(std::abs(next.raise_m)));
        words += line(words.empty() ? "next to it" : "", fmt::format("{}: {}", word(next.pattern), move));
    }
    return words;
}

std::string pattern_lines(const FaceReading& face) {
    if (!face.pattern) return line("pattern", "not told: the camera sees too little of one of the cheeks");
    const PatternReading& pattern = *face.pattern;
    std::string text = line("pattern", pattern_words(face));
    text += line("key stands", key_words(pattern));
    text += line("lit cheeks",
                 fmt::format("near {}, far {}", percent(pattern.near_cheek_lit), percent(pattern.far_cheek_lit)));
    text += line("nose shadow", nose_words(pattern));
    text += line("triangle", triangle_words(pattern));
    return text + next_words(face);
}

std::string fill_lines(const FaceReading& face) {
    if (face.fill_shadows.empty()) return line("fill's shadow", "none of the other lights throws one of the nose");
    std::string text;
    for (const FillShadow& shadow : face.fill_shadows) {
        text += line(
            text.empty() ? "fill's shadow" : "",
            fmt::format("{}: {} ({} stop)", without_controls(shadow.light),
                        shadow.visible ? "shows a shadow of its own" : "does not show", plain_number(shadow.stops, 2)));
    }
    return text;
}

std::string highlight_words(const FaceReading& face) {
    if (!face.highlight) return "none: the camera sees no lit forehead";
    return fmt::format("{} stops over the skin at its brightest, {} cm2", plain_number(face.highlight->peak_stops, 1),
                       plain_number(kPerSquareCentimetre * face.highlight->area_m2, 1));
}

std::string softness_lines(const FaceReading& face) {
    const KeyFallOff& fall_off = face.fall_off;
    return line("shadow's edge",
                face.nose_edge_m
                    ? fmt::format("{} mm from full shadow to full light", plain_number(1000.0 * *face.nose_edge_m, 0))
                    : std::string("none to measure: no edge of a nose shadow lies on skin that faces the light")) +
           line("key's size", fmt::format("{} x {} of its distance", plain_number(fall_off.width_over_distance, 2),
                                          plain_number(fall_off.height_over_distance, 2))) +
           line("fall-off",
                fmt::format("{} stop over the face (14 cm), {} down to the chest",
                            plain_number(fall_off.across_face_stops, 2), plain_number(fall_off.to_chest_stops, 2))) +
           line("sitter may move", fmt::format("{} nearer to the key or {} away for a third of a stop",
                                               centimetres(fall_off.nearer_m), centimetres(fall_off.farther_m)));
}

}  // namespace

std::string pattern_words(const FaceReading& face) {
    if (!face.pattern) return "not told";
    std::string words = word(face.pattern->pattern);
    if (face.pattern->side != LitSide::kFaceOn) words += ", " + word(face.pattern->side);
    if (!face.clamshell_with.empty()) words += ", clamshell with " + without_controls(face.clamshell_with);
    return words;
}

std::string face_text(const MeterReport& report) {
    if (!report.face) return "";
    const FaceReading& face = *report.face;
    return heading("The key on the face") + pattern_lines(face) + line("highlight", highlight_words(face)) +
           fill_lines(face) + softness_lines(face);
}

}  // namespace understudy
