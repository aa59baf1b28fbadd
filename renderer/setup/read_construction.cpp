#include "setup/read_construction.h"

#include <cmath>

#include <fmt/format.h>

#include "setup/check_construction.h"

namespace understudy {

namespace {

using Body = Construction::Body;

constexpr Range kPartSize{0.001, 3.0};
constexpr Range kShare{0.0, 1.0};
// Smoother metals are narrower than the table's steps.
constexpr Range kRoughness{0.05, 1.0};

// Common practice, no source, like the cloths below: the white of a box's inside, a box's or a dish's silver, a
// blackened plate.
constexpr Lining kWhite{false, 0.9, 0.3};
constexpr Lining kSilver{true, 0.88, 0.25};
constexpr Lining kBlack{false, 0.04, 0.3};
// A frosted bulb: more goes through than through any cloth, and straighter.
constexpr DiffusingCloth kGlass{0.88, 0.09, 0.6, 0.25};

void keep(double& value, const std::optional<double>& read) { value = read.value_or(value); }

std::optional<TableReader> part(TableReader& table, std::string_view key) {
    return TableReader(*table.find(key), fmt::format("{} {}", table.name(), key), table.log());
}

bool is_table(TableReader& table, std::string_view key) {
    const Value* value = table.find(key);
    return value != nullptr && std::holds_alternative<ValueTable>(value->content);
}

bool is_truth(TableReader& table, std::string_view key) {
    const Value* value = table.find(key);
    return value != nullptr && std::holds_alternative<bool>(value->content);
}

// By name, or { reflectance = 0.9 }, or { silver = 0.88, roughness = 0.25 }.
void read_lining(TableReader& table, std::string_view key, Lining& lining) {
    if (!is_table(table, key)) {
        lining =
            table.choice<Lining>(key, {{"white", kWhite}, {"silver", kSilver}, {"black", kBlack}}).value_or(lining);
        return;
    }
    TableReader own = *part(table, key);
    if (own.has("reflectance") == own.has("silver")) {
        own.log().add(own.place(),
                      own.name() + (own.has("silver") ? " has both reflectance and silver" : " has no reflectance"),
                      "reflectance, of a matt wall, or silver, that of a metal");
        return;
    }
    lining = own.has("silver") ? kSilver : kWhite;
    keep(lining.reflectance, own.quantity(lining.metal ? "silver" : "reflectance", kPlainNumber, {0.0, 0.98}));
    if (lining.metal) keep(lining.roughness, own.quantity("roughness", kPlainNumber, kRoughness));
    own.report_unknown_keys();
}

void read_cloth(TableReader& own, DiffusingCloth& cloth) {
    keep(cloth.transmittance, own.quantity("transmittance", kPlainNumber, {0.02, 0.98}));
    keep(cloth.reflectance, own.quantity("reflectance", kPlainNumber, {0.0, 0.98}));
    keep(cloth.straight, own.quantity("straight", kPlainNumber, kShare));
    keep(cloth.roughness, own.quantity("roughness", kPlainNumber, kRoughness));
    if (cloth.transmittance + cloth.reflectance > 1.0) {
        own.log().add(own.place(),
                      fmt::format("{} lets pass {:.3g} and reflects {:.3g} of the light, more than all", own.name(),
                                  cloth.transmittance, cloth.reflectance),
                      "transmittance and reflectance of at most 1 together");
    }
}

// false, true, "glass" or a table.
std::optional<DiffusingCloth> read_front_cloth(TableReader& table) {
    DiffusingCloth cloth;
    if (is_truth(table, "front_cloth")) {
        return *table.truth("front_cloth") ? std::optional(cloth) : std::nullopt;
    }
    if (!is_table(table, "front_cloth")) {
        return table.choice<DiffusingCloth>("front_cloth", {{"cloth", cloth}, {"glass", kGlass}});
    }
    TableReader own = *part(table, "front_cloth");
    read_cloth(own, cloth);
    own.report_unknown_keys();
    return cloth;
}

// A part that is not there unless it is said; `= false` takes away what a base has.
bool taken_away(TableReader& table, std::string_view key) {
    if (!table.has(key)) return true;
    if (is_table(table, key)) return false;
    if (table.truth(key).value_or(false)) table.wrong(key, "is true", "a table of its sizes, or false");
    return true;
}

void need(TableReader& own, std::string_view key, std::string_view example) {
    if (own.has(key)) return;
    own.log().add(own.place(), fmt::format("{} has no {}", own.name(), key), fmt::format("{} = {}", key, example));
}

std::optional<InnerCloth> read_inner_cloth(TableReader& table) {
    if (taken_away(table, "inner_cloth")) return std::nullopt;
    TableReader own = *part(table, "inner_cloth");
    need(own, "behind_front", "\"12 cm\"");
    InnerCloth inner;
    keep(inner.behind_front_m, own.quantity("behind_front", kLength, kPartSize));
    keep(inner.gap_m, own.quantity("gap", kLength, {0.0, 0.5}));
    read_cloth(own, inner.cloth);
    own.report_unknown_keys();
    return inner;
}

std::optional<Deflector> read_deflector(TableReader& table) {
    if (taken_away(table, "deflector")) return std::nullopt;
    TableReader own = *part(table, "deflector");
    need(own, "diameter", "\"15 cm\"");
    need(own, "before_back", "\"10 cm\"");
    Deflector deflector;
    deflector.lining = kWhite;
    keep(deflector.diameter_m, own.quantity("diameter", kLength, kPartSize));
    keep(deflector.before_back_m, own.quantity("before_back", kLength, kPartSize));
    if (own.has("surface")) read_lining(own, "surface", deflector.lining);
    own.report_unknown_keys();
    return deflector;
}

// By its cells' width and depth, or by their width and the full angle beyond which nothing passes.
std::optional<Grid> read_grid(TableReader& table) {
    if (taken_away(table, "grid")) return std::nullopt;
    TableReader own = *part(table, "grid");
    Grid grid;
    grid.cells = own.choice<Grid::Cells>("cells", {{"round", Grid::Cells::kRound}, {"square", Grid::Cells::kSquare}})
                     .value_or(grid.cells);
    need(own, "width", "\"6 mm\"");
    grid.width_m = own.quantity("width", kLength, {0.001, 0.3}).value_or(0.006);
    if (own.has("depth") == own.has("angle")) {
        own.log().add(own.place(), own.name() + (own.has("depth") ? " has both depth and angle" : " has no depth"),
                      "depth, or angle, the full one beyond which nothing passes");
    }
    grid.depth_m = own.quantity("depth", kLength, {0.001, 0.5}).value_or(grid.width_m);
    const double angle = own.quantity("angle", kAngle, {4.0, 150.0}).value_or(0.0);
    if (angle > 0.0) grid.depth_m = grid.width_m / std::tan(0.5 * radians(angle));
    own.report_unknown_keys();
    return grid;
}

void read_tube(TableReader& table, Tube& tube) {
    if (!is_table(table, "tube")) {
        if (table.has("tube")) table.wrong("tube", "is no table", "a table such as { ring = \"5 cm\" }");
        return;
    }
    TableReader own = *part(table, "tube");
    if (own.has("ring") && own.has("ball")) {
        own.log().add(own.key_place_of("ball"), own.name() + " has both ring and ball", "only one of the two");
        return;
    }
    tube.ring = !own.has("ball");
    keep(tube.diameter_m, own.quantity(tube.ring ? "ring" : "ball", kLength, kPartSize));
    if (tube.ring) keep(tube.thickness_m, own.quantity("thickness", kLength, {0.002, 0.05}));
    keep(tube.before_back_m, own.quantity("before_back", kLength, kPartSize));
    tube.glass = own.choice<Tube::Glass>("glass", {{"none", Tube::Glass::kNone},
                                                   {"clear", Tube::Glass::kClear},
                                                   {"frosted", Tube::Glass::kFrosted}})
                     .value_or(tube.glass);
    if (tube.glass == Tube::Glass::kFrosted) {
        keep(tube.glass_diameter_m, own.quantity("glass_diameter", kLength, kPartSize));
    }
    own.report_unknown_keys();
}

double front_radius_m(const ModifierShape& front) {
    if (const auto* disc = std::get_if<DiscShape>(&front)) return 0.5 * disc->diameter_m;
    if (const auto* sphere = std::get_if<SphereShape>(&front)) return 0.5 * sphere->diameter_m;
    return 0.0;
}

// How deep, and how wide at the back: said, or what the front and the focus give.
void read_depth(TableReader& table, const ModifierShape& front, Construction& construction) {
    const double radius = front_radius_m(front);
    if (construction.body == Body::kBall) {
        construction.depth_m = radius;
        construction.tube.before_back_m = radius;
        return;
    }
    if (construction.body == Body::kParabola) {
        need(table, "focal_length", "\"25 cm\"");
        // radius² = 4 f · depth.
        const double focal_length = table.quantity("focal_length", kLength, kPartSize).value_or(0.5 * radius);
        construction.depth_m = radius * radius / (4.0 * focal_length);
        construction.tube.before_back_m = focal_length;
        return;
    }
    need(table, "depth", "\"35 cm\"");
    construction.depth_m = table.quantity("depth", kLength, kPartSize).value_or(0.3);
    if (construction.body == Body::kRing) return;
    need(table, "back", "\"16 cm\"");
    construction.back_diameter_m = table.quantity("back", kLength, kPartSize).value_or(0.1);
}

std::optional<Body> read_body(TableReader& table, const ModifierShape& front) {
    const std::optional<Body> body = table.choice<Body>("body", {{"box", Body::kBox},
                                                                 {"cone", Body::kCone},
                                                                 {"bowl", Body::kBowl},
                                                                 {"parabola", Body::kParabola},
                                                                 {"ring", Body::kRing},
                                                                 {"ball", Body::kBall}});
    if (!body) return std::nullopt;
    const bool box = std::holds_alternative<RectangleShape>(front) || std::holds_alternative<PolygonShape>(front);
    const auto refuse = [&](bool fits, std::string_view what, std::string_view expected) {
        if (!fits) table.log().add(table.place_of("body"), fmt::format("{} {}", table.name(), what), expected);
        return fits;
    };
    bool fits = true;
    if (*body == Body::kBox) {
        fits = refuse(box, "is a box with a round front", R"(shape = "rectangle" or "polygon")");
    } else if (*body == Body::kRing) {
        fits = refuse(std::holds_alternative<RingShape>(front), "is a ring's channel without its front",
                      R"(shape = "ring")");
    } else if (*body == Body::kBall) {
        fits = refuse(std::holds_alternative<SphereShape>(front), "is a ball with a flat front", R"(shape = "sphere")");
    } else {
        fits = refuse(std::holds_alternative<DiscShape>(front), "is a round body without a round front",
                      R"(shape = "disc")");
    }
    return fits ? body : std::nullopt;
}

// Without a body all of them: no use in calling any unknown.
std::vector<std::string_view> keys_of(const std::optional<Body>& body) {
    std::vector<std::string_view> keys{"tube", "front_cloth", "grid"};
    if (body == Body::kBall) return keys;
    keys.emplace_back("walls");
    if (body != Body::kRing) keys.insert(keys.end(), {"deflector", "inner_cloth"});
    if (!body || body == Body::kParabola) keys.emplace_back("focal_length");
    if (body != Body::kParabola) keys.emplace_back("depth");
    if (body != Body::kParabola && body != Body::kRing) keys.emplace_back("back");
    return keys;
}

}  // namespace

std::optional<Construction> read_construction(TableReader& table, const ModifierShape& front) {
    const std::optional<Body> body = read_body(table, front);
    for (const std::string_view key : keys_of(body)) table.find(key);
    if (!body) return std::nullopt;
    Construction construction;
    construction.body = *body;
    construction.lining = kWhite;
    read_depth(table, front, construction);
    if (*body != Body::kBall && table.has("walls")) read_lining(table, "walls", construction.lining);
    if (table.has("tube")) read_tube(table, construction.tube);
    if (table.has("front_cloth")) construction.front_cloth = read_front_cloth(table);
    construction.grid = read_grid(table);
    if (*body != Body::kBall && *body != Body::kRing) {
        construction.deflector = read_deflector(table);
        construction.inner_cloth = read_inner_cloth(table);
    }
    if (!table.log().empty() || !construction_fits(table, construction, front)) return std::nullopt;
    return construction;
}

}  // namespace understudy
