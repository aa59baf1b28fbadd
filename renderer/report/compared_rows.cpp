#include "report/compared_rows.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "meter/ratio.h"
#include "report/f_number.h"
#include "report/face_text.h"
#include "report/warning_words.h"
#include "report/words.h"

namespace understudy {
namespace {

constexpr std::size_t kMostCatchlights = 3;  // told of an eye
constexpr double kSeen = 0.005;              // share of a reflection that is none any more

// Nothing but "no light" and "none" comes without one.
std::string with_unit(const std::string& stops) { return stops.starts_with("no") ? stops : stops + " stops"; }

const Reading* toward_key(const ComparedScene& scene) {
    return find_reading(scene.report.readings, "face", Receptor::kFlat, Facing::kKey);
}

std::string meter_words(const ComparedScene& scene) {
    const Reading* face = toward_key(scene);
    return face == nullptr ? "" : whole_stop_and_tenths(face->f_number);
}

std::string from_camera_words(const ComparedScene& scene) {
    const Reading* face = toward_key(scene);
    return face == nullptr ? "" : with_unit(signed_stops(face->stops_from_camera));
}

std::string ratio_words(const ComparedScene& scene) {
    if (!scene.report.ratio) return "";
    const Ratio& ratio = *scene.report.ratio;
    return std::isfinite(ratio.stops) ? to_one(ratio.key_to_fill) + ", " + with_unit(plain_number(ratio.stops, 1))
                                      : "no light on one";
}

std::string key_to_fill_words(const ComparedScene& scene) {
    if (!scene.report.ratio) return "";
    const double ratio = scene.report.ratio->face_key_to_fill;
    return std::isfinite(ratio) ? to_one(ratio) : "no other light";
}

std::string down_words(const ComparedScene& scene) {
    const auto& readings = scene.report.readings;
    const Reading* upper = find_reading(readings, "forehead", Receptor::kFlat, Facing::kSurface);
    const Reading* lower = find_reading(readings, "throat", Receptor::kFlat, Facing::kSurface);
    if (upper == nullptr || lower == nullptr) return "";
    return with_unit(signed_stops(std::log2(upper->exposure_lxs / lower->exposure_lxs)));
}

std::string eye_words(const ComparedScene& scene, const std::string& name) {
    if (!scene.report.eyes) return "";
    for (const EyeReading& eye : *scene.report.eyes) {
        if (eye.eye == name)
            return fmt::format("{}, {} from cheek", word(eye.verdict), signed_stops(eye.stops_from_cheek));
    }
    return "";
}

std::string catchlight_words(const Catchlight& light) {
    constexpr int kSpokenClockMinutes = 30;
    if (light.visible < kSeen) {
        return fmt::format("{} hidden{}", light.light, light.hidden_by.empty() ? "" : ": " + light.hidden_by);
    }
    // Iris radii to the iris's whole width.
    std::string words =
        fmt::format("{} {}, {:.0f} x {:.0f} %", light.light, clock_time(light.clock_deg, kSpokenClockMinutes),
                    50.0 * light.width_in_iris, 50.0 * light.height_in_iris);
    if (light.visible < 1.0 - kSeen) {
        words += fmt::format(", {} seen{}", percent(light.visible),
                             light.hidden_by.empty() ? "" : " (" + light.hidden_by + ")");
    }
    return words;
}

std::string catchlights_words(const ComparedScene& scene, const std::string& eye) {
    if (!scene.report.catchlights) return "";
    std::vector<Catchlight> lights;
    for (const Catchlight& light : *scene.report.catchlights) {
        if (light.eye == eye) lights.push_back(light);
    }
    if (lights.empty()) return "none";
    std::stable_sort(lights.begin(), lights.end(),
                     [](const Catchlight& a, const Catchlight& b) { return a.visible > b.visible; });
    std::vector<std::string> words;
    for (const Catchlight& light : lights) {
        if (words.size() < kMostCatchlights) words.push_back(catchlight_words(light));
    }
    if (lights.size() > kMostCatchlights) words.push_back(fmt::format("{} more", lights.size() - kMostCatchlights));
    return fmt::format("{}", fmt::join(words, "; "));
}

std::string pattern_row(const ComparedScene& scene) {
    return scene.report.face ? pattern_words(*scene.report.face) : "";
}

std::string edge_words(const ComparedScene& scene) {
    if (!scene.report.face) return "";
    const auto& edge = scene.report.face->nose_edge_m;
    return edge ? plain_number(1000.0 * *edge, 0) + " mm" : "none";
}

std::string fall_off_words(const ComparedScene& scene) {
    if (!scene.report.face) return "";
    const KeyFallOff& key = scene.report.face->fall_off;
    return fmt::format("{} face, {} chest, stops", plain_number(key.across_face_stops, 2),
                       plain_number(key.to_chest_stops, 2));
}

std::string shine_words(const ComparedScene& scene) {
    if (!scene.report.face) return "";
    const auto& highlight = scene.report.face->highlight;
    return highlight ? with_unit("+" + plain_number(highlight->peak_stops, 1)) : "none";
}

// In the picture as it is developed. Where the sitter stands before the backdrop it is not seen.
std::string backdrop_words(const ComparedScene& scene) {
    if (!scene.report.backdrop) return "";
    const double shift = 2.0 * std::log2(scene.report.aperture / scene.developed_f_number);
    std::vector<double> stops;
    for (const BackdropPlace& place : *scene.report.backdrop) {
        if (place.tone && place.hidden_by.empty()) stops.push_back(place.tone->stops_from_grey + shift);
    }
    if (stops.empty()) return "not seen";
    const auto [least, most] = std::minmax_element(stops.begin(), stops.end());
    const std::string darkest = signed_stops(*least);
    const std::string brightest = signed_stops(*most);
    std::string words = with_unit(darkest == brightest ? darkest : darkest + " to " + brightest);
    if (*most > -std::log2(kMidGrey)) words += ", clipped";
    return words;
}

std::string warnings_words(const ComparedScene& scene) {
    std::vector<std::string> ids;
    for (const Warning& warning : scene.report.warnings) {
        const std::string id = warning_id(warning.kind);
        if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
    }
    return ids.empty() ? "none" : fmt::format("{}", fmt::join(ids, ", "));
}

constexpr std::array kRows{
    ComparedRow{"meter at the face", meter_words},
    ComparedRow{"from camera", from_camera_words},
    ComparedRow{"cheek over cheek", ratio_words},
    ComparedRow{"forehead over throat", down_words},
    ComparedRow{"key to fill, K:F", key_to_fill_words},
    ComparedRow{"pattern", pattern_row},
    ComparedRow{"nose shadow's edge", edge_words},
    ComparedRow{"key's fall-off", fall_off_words},
    ComparedRow{"shine on forehead", shine_words},
    ComparedRow{"eye at left", [](const ComparedScene& scene) { return eye_words(scene, "camera-left"); }},
    ComparedRow{"eye at right", [](const ComparedScene& scene) { return eye_words(scene, "camera-right"); }},
    ComparedRow{"catchlight at left",
                [](const ComparedScene& scene) { return catchlights_words(scene, "camera-left"); }},
    ComparedRow{"catchlight at right",
                [](const ComparedScene& scene) { return catchlights_words(scene, "camera-right"); }},
    ComparedRow{"backdrop, from grey", backdrop_words},
    ComparedRow{"warnings", warnings_words},
};

}  // namespace

std::span<const ComparedRow> compared_rows() { return kRows; }

}  // namespace understudy
