#include "setup/read_camera.h"

#include <algorithm>
#include <cctype>

#include "setup/read_f_number.h"
#include "setup/read_placement.h"

namespace understudy {
namespace {

Focus read_focus(TableReader& table) {
    const Value* value = table.find("focus");
    if (value == nullptr) {
        return {};
    }
    const std::string* text = std::get_if<std::string>(&value->content);
    if (text != nullptr && !text->empty() && std::isalpha(static_cast<unsigned char>(text->front())) != 0) {
        const std::optional<Focus::On> on = table.choice<Focus::On>(
            "focus",
            {{"near-eye", Focus::On::kNearEye}, {"face", Focus::On::kFace}, {"backdrop", Focus::On::kBackdrop}});
        return {on.value_or(Focus::On::kNearEye), 0.0};
    }
    return {Focus::On::kDistance, table.quantity("focus", kLength, {0.05, 1000.0}).value_or(1.0)};
}

}  // namespace

CameraSettings read_camera(TableReader table, std::optional<double> eye_height_m) {
    CameraSettings camera;
    camera.focal_length_m = table.quantity("focal_length", kFilmLength, {0.005, 2.0}).value_or(camera.focal_length_m);
    if (const auto sides = table.quantities("sensor", 2, kFilmLength, {0.001, 0.5})) {
        camera.sensor_long_m = std::max((*sides)[0], (*sides)[1]);
        camera.sensor_short_m = std::min((*sides)[0], (*sides)[1]);
    }
    camera.placement = read_placement(table, {0.0, std::nullopt, 2.2, true}, eye_height_m);
    ExposureSettings& exposure = camera.exposure;
    exposure.aperture = read_f_number(table, "aperture", {0.5, 256.0}).value_or(exposure.aperture);
    exposure.shutter_s = table.quantity("shutter", kShutter, {1e-5, 3600.0}).value_or(exposure.shutter_s);
    exposure.iso = table.quantity("iso", kPlainNumber, {1.0, 1e6}).value_or(exposure.iso);
    camera.focus = read_focus(table);
    table.report_unknown_keys();
    return camera;
}

}  // namespace understudy
