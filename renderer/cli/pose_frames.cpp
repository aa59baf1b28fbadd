#include "cli/pose_frames.h"

#include <cmath>

#include <fmt/format.h>

#include "report/envelope_text.h"
#include "report/table.h"
#include "report/words.h"

namespace understudy {

namespace {

std::vector<PoseFrame> frames_of(Movement movement, const EnvelopeEnd& end) {
    if (!end.lapses) return {{movement, 0.5 * end.holds_to, {}}, {movement, end.holds_to, {}}};
    return {{movement, end.holds_to, {}}, {movement, end.beyond, end.beyond_lapse}};
}

// What is said under a frame.
std::vector<std::string> lines_of(const PoseFrame& frame) {
    if (frame.lapse.any()) return {lapse_words(frame.lapse)};
    return {frame.by == 0.0 ? "" : "holds"};
}

}  // namespace

std::vector<PoseFrame> pose_frames(const Envelope& envelope) {
    std::vector<PoseFrame> frames;
    for (const EnvelopeRange& range : envelope.ranges) {
        const auto less = frames_of(range.movement, range.less);
        const auto more = frames_of(range.movement, range.more);
        frames.insert(frames.end(), less.rbegin(), less.rend());
        frames.push_back({range.movement, 0.0, {}});
        frames.insert(frames.end(), more.begin(), more.end());
    }
    return frames;
}

Comparison comparison_of(const std::vector<PoseFrame>& frames, const Setup& setup, const Envelope& envelope,
                         const FilmCard& card, const MeterReport& report) {
    Comparison comparison;
    comparison.columns = kPoseColumns;
    const Setup as_set = fitted(setup, cell_width(kPoseColumns, false));
    std::size_t films = 1;  // the first is of the pose as set
    for (const PoseFrame& frame : frames) {
        ComparedCell cell;
        cell.setup = as_set;
        cell.setup.sitter =
            frame.by == 0.0 ? setup.sitter : moved(setup.sitter, frame.movement, frame.by, envelope.gaze);
        cell.card = card;
        cell.report = report;
        cell.developed_f_number = setup.camera.exposure.aperture;
        cell.film = frame.by == 0.0 ? 0 : films++;
        comparison.cells.push_back(std::move(cell));
    }
    comparison.films = films;
    return comparison;
}

ContactSheet sheet_of(const Envelope& envelope, const std::vector<PoseFrame>& frames,
                      const std::vector<CellPictures>& pictures) {
    ContactSheet sheet;
    sheet.title = envelope.title.empty() ? "Poses" : without_controls(envelope.title) + ": poses";
    sheet.note = envelope_summary(envelope);
    sheet.columns = kPoseColumns;
    for (std::size_t i = 0; i < frames.size(); ++i) {
        const PoseFrame& frame = frames[i];
        sheet.cells.push_back({movement_words(frame.movement, frame.by), pictures[i].picture, pictures[i].eyes,
                               lines_of(frame), frame.lapse.any() ? "does not hold" : ""});
    }
    return sheet;
}

}  // namespace understudy
