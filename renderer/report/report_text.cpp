#include "report/report_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/eyes_text.h"
#include "report/f_number.h"
#include "report/face_text.h"
#include "report/power_text.h"
#include "report/ratio_text.h"
#include "report/report_colour.h"
#include "report/surroundings_text.h"
#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

// Said once, under the readings: with other constants another meter differs and nobody is wrong (ISO 2720:1974 allows
// 240 … 400 lx·s flat and 320 … 540 dome).
constexpr const char* kCalibration =
    "  Meter constants: C = 250 lx·s for a flat receptor, 340 for a dome. Another meter may be set up otherwise\n"
    "  and differ by up to half a stop. \"From camera\" is stops over (+) or under (-) the camera's aperture.\n";

std::string camera_text(const MeterReport& report) {
    const std::string title = report.title.empty() ? "Untitled" : without_controls(report.title);
    return fmt::format("{}\nCamera: {}, {}, ISO {:.0f}; EV {} at ISO 100\n", title, spoken_f_number(report.aperture),
                       shutter_time(report.shutter_s), report.iso, plain_number(report.ev100, 1));
}

std::string readings_text(const MeterReport& report) {
    Table table({{"point"},
                 {"receptor"},
                 {"facing"},
                 {"lens"},
                 {"meter"},
                 {"from camera", Align::kRight},
                 {"± stops", Align::kRight},
                 {"lx·s", Align::kRight}});
    for (const Reading& reading : report.readings) {
        table.add_row({reading.point, word(reading.receptor), word(reading.facing), marked_f_number(reading.f_number),
                       whole_stop_and_tenths(reading.f_number), signed_stops(reading.stops_from_camera),
                       error_in_stops(reading.exposure_lxs, reading.standard_error_lxs),
                       three_figures(reading.exposure_lxs)});
    }
    return heading("Meter readings, all lights on") + table.text() + kCalibration;
}

std::string shares_text(const MeterReport& report) {
    Table table({{"point"}, {"receptor"}, {"facing"}, {"light"}, {"alone reads"}, {"share", Align::kRight}});
    for (const Reading& reading : report.readings) {
        for (const LightReading& light : reading.by_light) {
            table.add_row({reading.point, word(reading.receptor), word(reading.facing), light.light,
                           spoken_f_number(light.f_number), percent(light.exposure_lxs / reading.exposure_lxs)});
        }
    }
    return heading("What each light gives at each point") + table.text();
}

std::string ambient_text(const MeterReport& report) {
    const std::string title = heading("Room light");
    if (!(report.ambient_lxs > 0.0)) return title + "  None.\n";
    const double added_stops = std::log2(1.0 + std::exp2(report.ambient_stops_from_camera));
    return title + fmt::format(
                       "  {} lx·s at the face while the shutter is open: {} stops from the camera's aperture.\n"
                       "  On a face metered at that aperture it adds {} stop.\n",
                       three_figures(report.ambient_lxs), signed_stops(report.ambient_stops_from_camera),
                       plain_number(added_stops, 2));
}

}  // namespace

std::string report_text(const MeterReport& report) {
    return camera_text(report) + eyes_in_words(report) + face_text(report) + powers_text(report) +
           colours_text(report.colours) + readings_text(report) + shares_text(report) + ratio_text(report) +
           ambient_text(report) + room_text(report) + backdrop_text(report) + outline_text(report) + eyes_text(report) +
           catchlights_text(report) + pupil_text(report) + warnings_text(report) + cautions_text(report);
}

}  // namespace understudy
