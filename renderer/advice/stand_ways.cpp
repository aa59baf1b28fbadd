#include "advice/stand_ways.h"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "setup/kit_modifier.h"
#include "setup/variation.h"

namespace understudy {

namespace {

constexpr double kMostStops = 3.0;
constexpr double kThird = 1.0 / 3.0;
constexpr double kMostLowered = 1.2;
constexpr double kMostSwung = 90.0;
constexpr double kNearest = 0.5;  // from the face
constexpr double kFarthest = 3.0;
constexpr double kLeastHeight = 0.3;  // of the key's middle over the floor
constexpr double kMoveStep = 0.10;
constexpr double kSwingStep = 5.0;
constexpr double kCentimetres = 0.02;
constexpr double kDegree = 1.0;
// A board as is held under a chin, and how far off: as near as it stays out of a head-and-shoulders frame, and farther.
constexpr double kBoardWidth = 0.90;
constexpr double kBoardHeight = 0.60;
constexpr double kWhite = 0.9;
constexpr double kBoardBelow = 0.45;  // its middle under the eyes
constexpr std::array<double, 4> kBoardBefore{0.55, 0.45, 0.35, 0.25};
// Larger fronts that a studio has.
constexpr std::array<const char*, 4> kLarger{"octa-95", "octa-120", "octa-150", "softbox-120x180"};

std::string list_of(const Double3& place) {
    return fmt::format("[{}, {}, {}]", scene_number(place.x), scene_number(place.y), scene_number(place.z));
}

// Of a power so many stops stronger, as the scene file says it; none for one by the dial or from its file.
std::optional<std::string> stronger(const Power& power, double stops) {
    const double times = std::exp2(stops);
    if (const auto* meter = std::get_if<PowerFromMeter>(&power)) {
        return fmt::format("meter={:.2f}", meter->f_number * std::sqrt(times));
    }
    if (const auto* energy = std::get_if<PowerFromEnergy>(&power)) {
        return fmt::format("energy={:.1f} J", energy->joules * times);
    }
    if (const auto* flux = std::get_if<PowerFromFlux>(&power))
        return fmt::format("lumens={:.0f}", flux->lumens * times);
    if (const auto* lamp = std::get_if<PowerFromIlluminance>(&power))
        return fmt::format("lux={:.1f}", lamp->lux * times);
    if (const auto* under = std::get_if<PowerFromKey>(&power))
        return fmt::format("from_key={:.2f}", under->stops + stops);
    return std::nullopt;
}

class StandWays {
  public:
    explicit StandWays(const TrialRoom& room)
        : room_(room), face_(room.studio().points.face), key_(room.studio().lights.front().centre) {}

    std::vector<Way> all(const std::filesystem::path& kit) {
        other_powers();
        reflectors("white");
        reflectors("silver");
        if (std::holds_alternative<WindowShape>(room_.asked().lights.front().modifier.shape)) return ways_;
        height();
        arc();
        angle();
        distance();
        modifiers(kit);
        return ways_;
    }

  private:
    void other_powers() {
        for (std::size_t i = 1; i < room_.asked().lights.size(); ++i) {
            Way way{FixKind::kPower, room_.asked().lights[i].name, sizes_up_to(kMostStops), kThird};
            way.set_up = [i](TrialRoom& room, double stops) {
                // After the powers are set: whatever way the scene tells them, the light is so much stronger.
                if (!room.with_studio([](Setup&) {})) return false;
                room.turn_up(i, stops);
                return true;
            };
            const LightSettings& light = room_.asked().lights[i];
            way.tell = [light, key = key_of(i)](Fix& fix, double stops) {
                fix.number = stops;
                if (const auto power = stronger(light.power, stops)) fix.changes = {key + *power};
            };
            ways_.push_back(way);
        }
    }

    // Nearer and nearer, the surface's own first; sizes are how far before the face.
    void reflectors(const std::string& surface) {
        Way way{FixKind::kReflector, surface, {kBoardBefore.begin(), kBoardBefore.end()}};
        way.set_up = [surface, face = face_](TrialRoom& room, double before) {
            return room.with_studio([&](Setup& setup) {
                PanelSettings board;
                board.name = surface + " board";
                board.surface = surface == "silver" ? Finish(Metal::kSilver) : Finish(Reflectance{kWhite});
                board.width_m = kBoardWidth;
                board.height_m = kBoardHeight;
                board.placement.where = face + Double3(0.0, -kBoardBelow, before);
                setup.panels.push_back(board);
            });
        };
        way.tell = [surface, face = face_](Fix& fix, double before) {
            fix.number = std::hypot(before, kBoardBelow);
            fix.table = fmt::format(
                "[[panel]]\nname = \"{} board\"\nsurface = \"{}\"\nsize = [{}, {}]\nposition = {}\n", surface, surface,
                kBoardWidth, kBoardHeight, list_of(face + Double3(0.0, -kBoardBelow, before)));
        };
        way.instead = true;
        ways_.push_back(way);
    }

    // The key moved: size to place.
    template <class Place>
    Way& key_way(FixKind kind, double last, double fine, const Place& place) {
        Way way{kind, "", sizes_up_to(last), fine};
        way.set_up = [place](TrialRoom& room, double size) {
            const Double3 there = place(size);
            if (there.y < kLeastHeight) return false;
            return room.with_studio([&](Setup& setup) { put_key_at(setup, there); });
        };
        ways_.push_back(way);
        return ways_.back();
    }

    std::string key_of(std::size_t light) const {
        return fmt::format("light.{}.", key_part(room_.asked().lights[light].name));
    }

    void height() {
        const double down = key_.y > face_.y ? -1.0 : 1.0;
        const auto place = [key = key_](double by) { return key + Double3(0.0, by, 0.0); };
        key_way(FixKind::kHeight, down * kMostLowered, kCentimetres, place).tell = [key = key_, at = key_of(0), place](
                                                                                       Fix& fix, double by) {
            fix.number = by;
            fix.after = key.y + by;
            fix.changes = {at + "position=" + list_of(place(by))};
        };
    }

    // Down and round to the front, its distance kept, over the same line on the floor.
    void arc() {
        const Double3 away = key_ - face_;
        const double distance = glm::length(away);
        const double out = std::hypot(away.x, away.z);
        const double up = degrees(std::asin(away.y / distance));
        const Double3 along = out > kCentimetres ? Double3(away.x / out, 0.0, away.z / out) : Double3(0.0, 0.0, 1.0);
        const auto place = [face = face_, up, distance, along](double by) {
            const double lift = radians(up + by);
            return face + distance * (std::cos(lift) * along + Double3(0.0, std::sin(lift), 0.0));
        };
        key_way(FixKind::kArc, -up, kDegree, place).tell = [key = key_, at = key_of(0), place](Fix& fix, double by) {
            fix.after = place(by).y;
            fix.number = fix.after - key.y;
            fix.changes = {at + "position=" + list_of(place(by))};
        };
    }

    void angle() {
        const Double3 away = key_ - face_;
        const double round = degrees(std::atan2(away.x, away.z));
        if (std::abs(round) < kSwingStep) return;
        const double out = std::hypot(away.x, away.z);
        const auto place = [face = face_, away, round, out](double by) {
            const double turn = radians(round + by);
            return face + Double3(out * std::sin(turn), away.y, out * std::cos(turn));
        };
        const double room = std::min(kMostSwung, std::abs(round));
        key_way(FixKind::kAngle, std::copysign(room, -round), kDegree, place).tell = [at = key_of(0), place, round](
                                                                                         Fix& fix, double by) {
            fix.number = by;
            fix.after = round + by;
            fix.changes = {at + "position=" + list_of(place(by))};
        };
    }

    // Along the floor, at its height.
    void distance() {
        const Double3 away = key_ - face_;
        const double out = std::hypot(away.x, away.z);
        if (out < kMoveStep) return;
        const double now = glm::length(away);
        const auto place = [key = key_, along = Double3(away.x / out, 0.0, away.z / out)](double by) {
            return key + by * along;
        };
        const auto tell = [face = face_, at = key_of(0), place, now](Fix& fix, double by) {
            fix.after = glm::length(place(by) - face);
            fix.number = fix.after - now;
            fix.changes = {at + "position=" + list_of(place(by))};
        };
        key_way(FixKind::kDistance, std::max(0.0, kFarthest - now), kCentimetres, place).tell = tell;
        Way& nearer = key_way(FixKind::kDistance, -std::max(0.0, now - kNearest), kCentimetres, place);
        nearer.tell = tell;
        nearer.instead = true;
    }

    void modifiers(const std::filesystem::path& kit) {
        constexpr double kClearlyLarger = 1.15;
        const double size = front_size(room_.stage().emitters().front());
        for (const char* name : kLarger) {
            const auto larger = read_kit_file(name, kit);
            if (!larger) continue;
            const double ratio = front_size(Emitter(larger->shape, room_.studio().lights.front())) / size;
            if (ratio < kClearlyLarger) continue;
            Way way{FixKind::kModifier, name, {ratio}};
            way.set_up = [modifier = *larger](TrialRoom& room, double) {
                return room.with_studio([&](Setup& setup) { setup.lights.front().modifier = modifier; });
            };
            way.tell = [name, key = key_of(0)](Fix& fix, double times) {
                fix.number = times;
                fix.changes = {key + "modifier=" + name};
            };
            way.instead = true;
            ways_.push_back(way);
        }
    }

    // Twice the farthest point of its edge from the middle.
    double front_size(const Emitter& front) const {
        constexpr int kOutline = 32;
        double largest = 0.0;
        for (const Vec3& point : front.outline(Vec3(face_), kOutline)) {
            largest = std::max(largest, 2.0 * static_cast<double>(glm::distance(point, front.centre())));
        }
        return largest;
    }

    const TrialRoom& room_;
    Double3 face_;
    Double3 key_;
    std::vector<Way> ways_;
};

}  // namespace

void put_key_at(Setup& setup, const Double3& place) { setup.lights.front().placement.where = place; }

std::vector<Way> stand_ways(const TrialRoom& room, const std::filesystem::path& kit) {
    return StandWays(room).all(kit);
}

}  // namespace understudy
