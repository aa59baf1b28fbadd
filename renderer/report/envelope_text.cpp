#include "report/envelope_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

bool is_step(Movement movement) { return movement == Movement::kForward || movement == Movement::kAside; }

struct Words {
    const char* what;
    const char* less;
    const char* more;
    const char* key;  // in JSON
};

Words words_of(Movement movement) {
    switch (movement) {
        case Movement::kTurn:
            return {"head", "to camera left", "to camera right", "turn_deg"};
        case Movement::kChin:
            return {"chin", "down", "up", "chin_deg"};
        case Movement::kLean:
            return {"head leaned", "to camera left", "to camera right", "lean_deg"};
        case Movement::kForward:
            return {"a step", "back", "toward the camera", "forward_m"};
        case Movement::kAside:
            return {"a step", "to camera left", "to camera right", "aside_m"};
        case Movement::kGazeAcross:
            return {"eyes alone", "to camera left", "to camera right", "gaze_across_deg"};
        case Movement::kGazeUp:
            break;
    }
    return {"eyes alone", "down", "up", "gaze_up_deg"};
}

std::string amount(Movement movement, double by) {
    return is_step(movement) ? centimetres(std::abs(by)) : plain_number(std::abs(by), 0) + " degrees";
}

void add_row(Table& table, Movement movement, const char* way, const EnvelopeEnd& end) {
    table.add_row({fmt::format("{} {}", words_of(movement).what, way),
                   end.lapses ? amount(movement, end.holds_to) : "at least " + amount(movement, end.holds_to),
                   end.lapses ? lapse_words(end.lapse) : "nothing, as far as was tried"});
}

Json end_json(const EnvelopeEnd& end) {
    Json lapse = nullptr;
    if (end.lapses) {
        lapse = {{"at", number(*end.lapses)},
                 {"camera_left_eye_lost", end.lapse.eye_lost[0]},
                 {"camera_right_eye_lost", end.lapse.eye_lost[1]},
                 {"pattern", end.lapse.pattern ? Json(word(*end.lapse.pattern)) : Json(nullptr)},
                 {"exposure_stops", end.lapse.stops ? number(*end.lapse.stops) : Json(nullptr)},
                 {"no_room", end.lapse.no_room}};
    }
    return {{"holds_to", number(end.holds_to)}, {"lapse", lapse}};
}

std::string counted_eyes(const Envelope& envelope) {
    const auto& eyes = envelope.now.eyes.eyes;
    if (eyes[0].alive() && eyes[1].alive()) return "both eyes";
    if (!eyes[0].alive() && !eyes[1].alive()) return "";
    return eyes[0].alive() ? "the camera-left eye" : "the camera-right eye";
}

std::string lost_eyes(const Envelope& envelope) {
    const std::string counted = counted_eyes(envelope);
    if (counted == "both eyes") return "";
    return counted.empty()
               ? "  Both eyes are lost as set, so they are not counted here: see what advise would change.\n"
               : "  The other eye is lost as set, so it is not counted here: see what advise would change.\n";
}

}  // namespace

std::string movement_words(Movement movement, double by) {
    const Words words = words_of(movement);
    if (by == 0.0) return "as set";
    return fmt::format("{} {} {}", words.what, amount(movement, by), by < 0.0 ? words.less : words.more);
}

std::string lapse_words(const Lapse& lapse) {
    if (lapse.no_room) return "a light or the camera in the way";
    std::string words;
    const auto add = [&](const std::string& more) { words += (words.empty() ? "" : ", ") + more; };
    if (lapse.eye_lost[0] && lapse.eye_lost[1]) {
        add("both eyes lost");
    } else if (lapse.eye_lost[0] || lapse.eye_lost[1]) {
        add(lapse.eye_lost[0] ? "camera-left eye lost" : "camera-right eye lost");
    }
    if (lapse.pattern) add("pattern " + word(*lapse.pattern));
    if (lapse.stops) add(fmt::format("exposure over a third of a stop {}", *lapse.stops < 0.0 ? "down" : "up"));
    return words;
}

std::string envelope_summary(const Envelope& envelope) {
    const std::string counted = counted_eyes(envelope);
    return fmt::format(
        "{}{}{}exposure within a third of a stop hold while the sitter does no more than this, one thing "
        "at a time.",
        envelope.now.pattern ? word(*envelope.now.pattern) + " pattern, " : std::string(), counted,
        counted.empty() ? "" : " and ");
}

std::string envelope_text(const Envelope& envelope) {
    Table table({{"movement"}, {"holds for"}, {"what ends it"}});
    for (const EnvelopeRange& range : envelope.ranges) {
        const Words words = words_of(range.movement);
        add_row(table, range.movement, words.less, range.less);
        add_row(table, range.movement, words.more, range.more);
    }
    return heading("Before you move anything") + "  " + envelope_summary(envelope) + "\n" + table.text() +
           lost_eyes(envelope);
}

Json envelope_json(const Envelope& envelope) {
    Json ranges = Json::object();
    for (const EnvelopeRange& range : envelope.ranges) {
        ranges[words_of(range.movement).key] = {{"less", end_json(range.less)}, {"more", end_json(range.more)}};
    }
    const auto& eyes = envelope.now.eyes.eyes;
    return {{"pattern", envelope.now.pattern ? Json(word(*envelope.now.pattern)) : Json(nullptr)},
            {"eyes_counted", {{"camera_left", eyes[0].alive()}, {"camera_right", eyes[1].alive()}}},
            {"exposure_within_stops", number(kExposureHolds)},
            {"ranges", ranges}};
}

}  // namespace understudy
