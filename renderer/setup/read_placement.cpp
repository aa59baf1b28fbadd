#include "setup/read_placement.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace understudy {
namespace {

constexpr Range kFloorPlan{-100.0, 100.0};
constexpr Range kHeight{0.0, 20.0};
constexpr Range kDistance{0.05, 100.0};
constexpr Range kHalfTurn{-180.0, 180.0};
constexpr Range kQuarterTurn{-90.0, 90.0};

std::optional<double> read_height(TableReader& table, const PlacementDefaults& defaults) {
    if (defaults.is_camera && table.is_text("height")) {
        const std::string height = table.text("height").value_or("");
        if (height == "eye") {
            return std::nullopt;
        }
        if (!height.empty() && std::isalpha(static_cast<unsigned char>(height.front())) != 0) {
            table.unknown_name("height", height, {"eye", "or a length"});
            return std::nullopt;
        }
    }
    return table.quantity("height", kLength, kHeight);
}

// The face is at the eye height whatever the head, so no distance below this difference reaches the height.
void check_reach(TableReader& table, const StandPlacement& stand, std::optional<double> eye_height_m) {
    if (!eye_height_m || !stand.height_m) {
        return;
    }
    const double least = std::abs(*stand.height_m - *eye_height_m);
    if (least > stand.distance_m + 1e-9) {  // a length in decimals may be off in its last binary digit
        table.log().add(stand.said_at,
                        fmt::format("{} height {:.4g} m cannot be reached from {:.4g} m away", table.name(),
                                    *stand.height_m, stand.distance_m),
                        fmt::format("a distance of at least {:.4g} m", std::ceil(least * 1000.0 - 1e-6) / 1000.0));
    }
}

StandPlacement read_stand(TableReader& table, const PlacementDefaults& defaults, std::optional<double> eye_height_m) {
    StandPlacement stand;
    stand.angle_deg = table.quantity("angle", kAngle, kHalfTurn).value_or(defaults.angle_deg);
    const std::optional<double> height = read_height(table, defaults);
    stand.elevation_deg = table.quantity("elevation", kAngle, kQuarterTurn);
    const std::optional<double> distance = table.quantity("distance", kLength, kDistance);
    stand.distance_m = distance.value_or(defaults.distance_m);
    const bool both = table.has("height") && table.has("elevation");
    if (both) {
        table.log().add(table.key_place_of("elevation"), table.name() + " has both height and elevation",
                        "only one of the two");
    }
    if (height) {
        stand.height_m = height;
    } else if (!table.has("height") && !table.has("elevation")) {
        stand.height_m = defaults.height_m;
        stand.elevation_deg = defaults.elevation_deg;
    }
    stand.said_at = table.has("height") ? table.place_of("height") : table.place_of("distance");
    const bool distance_wrong = table.has("distance") && !distance;
    if (!both && !distance_wrong) {
        check_reach(table, stand, eye_height_m);
    }
    return stand;
}

Aim read_aim(TableReader& table, const PlacementDefaults& defaults) {
    if (table.is_list("aim")) {
        const std::optional<Double3> point = table.point("aim", kLength, kFloorPlan);
        return {Aim::Target::kPoint, point.value_or(Double3(0.0))};
    }
    const Value* value = table.find("aim");
    if (value != nullptr && !table.is_text("aim")) {
        table.wrong("aim", "is " + kind_of(*value), "a name such as \"face\", or a point [x, y, z]");
        return {};
    }
    const std::optional<Aim::Target> target = table.choice<Aim::Target>("aim", {{"face", Aim::Target::kFace},
                                                                                {"eyes", Aim::Target::kEyes},
                                                                                {"chest", Aim::Target::kChest},
                                                                                {"crown", Aim::Target::kCrown},
                                                                                {"backdrop", Aim::Target::kBackdrop},
                                                                                {"camera", Aim::Target::kCamera}});
    if (defaults.is_camera && target == Aim::Target::kCamera) {
        table.wrong("aim", "is the camera itself", "one of face, eyes, chest, crown, backdrop, or [x, y, z]");
    }
    return {target.value_or(Aim::Target::kFace), Double3(0.0)};
}

void refuse_stand_beside_position(TableReader& table) {
    for (const std::string_view key : {"angle", "height", "elevation", "distance"}) {
        if (table.has(key)) {
            table.log().add(table.key_place_of(key), fmt::format("{} has both position and {}", table.name(), key),
                            "either position, or angle, height and distance");
        }
    }
}

}  // namespace

Placement read_placement(TableReader& table, const PlacementDefaults& defaults, std::optional<double> eye_height_m) {
    Placement placement;
    const std::optional<Double3> position = table.point("position", kLength, kFloorPlan);
    const bool has_position = table.has("position");
    const StandPlacement stand = read_stand(table, defaults, has_position ? std::nullopt : eye_height_m);
    placement.said_at = stand.said_at;
    if (has_position) {
        refuse_stand_beside_position(table);
        placement.where = position.value_or(Double3(0.0));
        placement.said_at = table.place_of("position");
    } else {
        placement.where = stand;
    }
    placement.aim = read_aim(table, defaults);
    if (!defaults.is_camera) {
        placement.feather_deg = table.quantity("feather", kAngle, kHalfTurn).value_or(0.0);
    }
    placement.roll_deg = table.quantity("roll", kAngle, kHalfTurn).value_or(0.0);
    return placement;
}

}  // namespace understudy
