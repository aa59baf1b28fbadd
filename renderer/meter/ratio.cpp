#include "meter/ratio.h"

#include <cmath>

namespace understudy {

const Reading* brighter_cheek(const std::vector<Reading>& readings) {
    const Reading* brighter = nullptr;
    for (const Reading& reading : readings) {
        if (!reading.point.starts_with("cheek-")) continue;
        if (brighter == nullptr || reading.exposure_lxs > brighter->exposure_lxs) brighter = &reading;
    }
    return brighter;
}

std::optional<Ratio> lighting_ratio(const std::vector<Reading>& readings) {
    const Reading* left = find_reading(readings, "cheek-camera-left", Receptor::kFlat, Facing::kSurface);
    const Reading* right = find_reading(readings, "cheek-camera-right", Receptor::kFlat, Facing::kSurface);
    const Reading* face = find_reading(readings, "face", Receptor::kDome, Facing::kCamera);
    if (left == nullptr || right == nullptr || face == nullptr) return std::nullopt;
    Ratio ratio;
    const bool left_lit = left->exposure_lxs >= right->exposure_lxs;
    ratio.lit_cheek = left_lit ? "camera-left" : "camera-right";
    const double lit = left_lit ? left->exposure_lxs : right->exposure_lxs;
    const double shadow = left_lit ? right->exposure_lxs : left->exposure_lxs;
    ratio.key_to_fill = lit / shadow;
    ratio.stops = std::log2(ratio.key_to_fill);
    const double key = face->by_light.front().exposure_lxs;
    const double fill = face->exposure_lxs - key;
    ratio.face_key_to_fill = fill > 0.0 ? key / fill : HUGE_VAL;
    ratio.face_key_and_fill_to_fill = ratio.face_key_to_fill + 1.0;
    return ratio;
}

}  // namespace understudy
