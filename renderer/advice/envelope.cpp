#include "advice/envelope.h"

#include <cmath>

#include <fmt/format.h>
#include <tbb/parallel_for.h>

namespace understudy {

namespace {

constexpr std::size_t kParts = 2;  // of the search, each in a room of its own

class EnvelopeSearch {
  public:
    EnvelopeSearch(TrialRoom& room, const SetupLook& now) : room_(room), now_(now), gaze_(gaze_of(room)) {}

    EnvelopeEnd end(const MovementSpan& span, double sign) {
        EnvelopeEnd end;
        for (double size = span.step; size < span.farthest + 0.5 * span.step; size += span.step) {
            const Lapse lapse = lapse_at(span.movement, sign * size);
            if (lapse.any()) {
                end.lapses = sign * size;
                end.lapse = lapse;
                end.beyond = sign * size;
                end.beyond_lapse = lapse;
                narrow(span, end);
                return end;
            }
            end.holds_to = sign * size;
            end.beyond = end.holds_to;
        }
        return end;
    }

  private:
    void narrow(const MovementSpan& span, EnvelopeEnd& end) {
        while (std::abs(*end.lapses - end.holds_to) > 1.5 * span.fine) {
            const double middle = end.holds_to + span.fine * std::round(0.5 * (*end.lapses - end.holds_to) / span.fine);
            const Lapse lapse = lapse_at(span.movement, middle);
            if (lapse.any()) {
                end.lapses = middle;
                end.lapse = lapse;
            } else {
                end.holds_to = middle;
            }
        }
    }

    Lapse lapse_at(Movement movement, double by) {
        Lapse lapse;
        const bool sits = room_.with_sitter(
            [&](SitterSettings& sitter) { sitter = moved(room_.asked().sitter, movement, by, gaze_); });
        if (!sits) {
            lapse.no_room = true;
            return lapse;
        }
        const auto alive = which_alive(room_);
        for (std::size_t e = 0; e < 2; ++e) lapse.eye_lost.at(e) = now_.eyes.eyes.at(e).alive() && !alive.at(e);
        if (const auto pattern = pattern_in(room_); pattern && pattern != now_.pattern) lapse.pattern = pattern;
        const double stops = std::log2(read_face(room_) / now_.eyes.face_lxs);
        if (std::abs(stops) > kExposureHolds) lapse.stops = stops;
        return lapse;
    }

    TrialRoom& room_;
    const SetupLook& now_;
    GazeAngles gaze_;
};

}  // namespace

Expected<Envelope> find_envelope(const Setup& setup, const Library& library) {
    const auto head = load_sighted_head(setup, library);
    if (!head) return head.problems();
    std::vector<TrialRoom> rooms;
    for (std::size_t part = 0; part < kParts; ++part) {
        auto room = TrialRoom::open(setup, library, *head);
        if (!room) return room.problems();
        rooms.push_back(std::move(*room));
    }
    Envelope envelope;
    envelope.title = setup.title;
    envelope.now = look_of(rooms.front());
    envelope.gaze = gaze_of(rooms.front());
    for (const MovementSpan& span : kMovements) envelope.ranges.push_back({span.movement, {}, {}});
    tbb::parallel_for(std::size_t{0}, kParts, [&](std::size_t part) {
        EnvelopeSearch search(rooms[part], envelope.now);
        for (std::size_t m = 0; m < kMovements.size(); ++m) {
            (part == 0 ? envelope.ranges[m].less : envelope.ranges[m].more) =
                search.end(kMovements.at(m), part == 0 ? -1.0 : 1.0);
        }
    });
    return envelope;
}

}  // namespace understudy
