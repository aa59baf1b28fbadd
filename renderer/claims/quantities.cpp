#include "claims/quantities.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "meter/ratio.h"
#include "report/f_number.h"
#include "report/words.h"

namespace understudy {

double stops_between_readings(const Reading* from, const Reading* to) {
    if (from == nullptr || to == nullptr || from->exposure_lxs <= 0.0 || to->exposure_lxs <= 0.0) return kNone;
    return std::log2(to->exposure_lxs / from->exposure_lxs);
}

const Reading* face_reading(const ClaimReading& reading, Receptor receptor, Facing facing) {
    return find_reading(reading.report.readings, "face", receptor, facing);
}

const Reading* skin_reading(const ClaimReading& reading, const std::string& point) {
    return find_reading(reading.report.readings, point, Receptor::kFlat, Facing::kSurface);
}

double face_f_number(const ClaimReading& reading) {
    return face_reading(reading, Receptor::kFlat, Facing::kKey)->f_number;
}

double nose_edge_mm(const ClaimReading& reading) {
    const auto& face = reading.report.face;
    return face && face->nose_edge_m ? 1000.0 * *face->nose_edge_m : kNone;
}

double lit_edge_mm(const ClaimReading& reading) { return 1000.0 * kNoseOff * reading.key_width.four_fifths; }

double width_over_distance(const ClaimReading& reading) { return reading.key_width.whole; }

double across_face_stops(const ClaimReading& reading) {
    return reading.report.face ? reading.report.face->fall_off.across_face_stops : kNone;
}

double to_chest_stops(const ClaimReading& reading) {
    return reading.report.face ? reading.report.face->fall_off.to_chest_stops : kNone;
}

double cheek_stops(const ClaimReading& reading) { return reading.report.ratio ? reading.report.ratio->stops : kNone; }

double shine_stops(const ClaimReading& reading) {
    const auto& face = reading.report.face;
    return face && face->highlight ? face->highlight->peak_stops : kNone;
}

double key_lumens(const ClaimReading& reading) { return reading.report.powers.front().lumens; }

double key_joules(const ClaimReading& reading) { return reading.report.powers.front().energy_j; }

double front_over_white_stops(const ClaimReading& reading) {
    const double luminance = reading.key_width.radiance * key_lumens(reading);  // lx·s/sr
    return std::log2(luminance * kPiDouble / face_reading(reading, Receptor::kFlat, Facing::kKey)->exposure_lxs);
}

double backdrop_stops(const ClaimReading& reading) {
    if (!reading.report.backdrop) return kNone;
    double brightest = -HUGE_VAL;
    for (const BackdropPlace& place : *reading.report.backdrop) {
        if (place.tone && place.hidden_by.empty()) brightest = std::max(brightest, place.tone->stops_from_grey);
    }
    const double shift = 2.0 * std::log2(reading.report.aperture / face_f_number(reading));
    return std::isfinite(brightest) ? brightest + shift : kNone;
}

std::string told_mm(double value) {
    return std::isfinite(value) ? plain_number(value, value < 9.95 ? 1 : 0) + " mm" : "none";
}
std::string told_stops(double value) { return std::isfinite(value) ? plain_number(value, 2) + " stops" : "none"; }
std::string told_signed_stops(double value) {
    if (!std::isfinite(value)) return signed_stops(value);
    return fmt::format("{}{} stops", value > 0.0 ? "+" : "", plain_number(value, 2));
}
std::string told_share(double value) { return plain_number(value, 2); }
std::string told_percent(double value) { return std::isfinite(value) ? percent(value) : "none"; }
std::string told_ratio(double value) { return to_one(value); }
std::string told_metres(double value) { return plain_number(value, 2) + " m"; }
std::string told_lens(double value) { return whole_stop_and_tenths(value); }

ToldQuantity the_meter() { return {"meter at the face", "face_f_number", face_f_number, told_lens}; }
ToldQuantity the_nose_edge() { return {"nose shadow's edge", "nose_edge_mm", nose_edge_mm, told_mm}; }
ToldQuantity the_lit_edge() { return {"edge 20 mm off, 10 to 90 %", "lit_edge_mm", lit_edge_mm, told_mm}; }
ToldQuantity the_width() {
    return {"key's width over distance", "width_over_distance", width_over_distance, told_share};
}
ToldQuantity the_fall_off() { return {"lost over the face", "across_face_stops", across_face_stops, told_stops}; }
ToldQuantity the_chest() { return {"lost down to the chest", "to_chest_stops", to_chest_stops, told_stops}; }
ToldQuantity the_cheeks() { return {"lit cheek over the other", "cheek_stops", cheek_stops, told_stops}; }
ToldQuantity the_shine() { return {"sheen over skin", "shine_stops", shine_stops, told_stops}; }

ToldQuantity the_backdrop() { return {"backdrop, from grey", "backdrop_stops", backdrop_stops, told_signed_stops}; }
ToldQuantity the_pack_setting() {
    return {"power for this reading", "key_j", key_joules,
            [](double value) { return fmt::format("{} J", three_figures(value)); }};
}

std::string compared(double before, double after, double least, const std::string& more, const std::string& less,
                     const std::string& same) {
    if (!(std::abs(after - before) > least)) return same;
    return after > before ? more : less;
}

}  // namespace understudy
