#include "advice/stand_fixes.h"

#include <array>
#include <cmath>

#include "advice/fix_search.h"
#include "setup/kit_modifier.h"

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

class StandFixes {
  public:
    StandFixes(TrialRoom& room, const std::filesystem::path& kit)
        : room_(room), kit_(kit), face_(room.studio().points.face), key_(room.studio().lights.front().centre) {}

    std::vector<Fix> find() {
        other_powers();
        reflector("white");
        if (fixes_.empty() || fixes_.back().kind != FixKind::kReflector) reflector("silver");
        if (std::holds_alternative<WindowShape>(room_.asked().lights.front().modifier.shape)) return fixes_;
        height();
        arc();
        angle();
        distance();
        modifier();
        return fixes_;
    }

  private:
    void keep(FixKind kind, const std::optional<Found>& found, double after = 0.0, const std::string& thing = "") {
        if (found) fixes_.push_back({kind, found->size, after, thing, found->look});
    }

    Change key_at(const std::function<Double3(double)>& place) {
        return [this, place](double size) {
            const Double3 there = place(size);
            if (there.y < kLeastHeight) return false;
            return room_.with_studio([&](Setup& setup) { put_key_at(setup, there); });
        };
    }

    void other_powers() {
        for (std::size_t i = 1; i < room_.asked().lights.size(); ++i) {
            const Change change = [this, i](double stops) {
                // After the powers are set: whatever way the scene tells them, the light is so much stronger.
                if (!room_.with_studio([](Setup&) {})) return false;
                room_.turn_up(i, stops);
                return true;
            };
            keep(FixKind::kPower, least_change(room_, change, sizes_up_to(kMostStops), kThird), 0.0,
                 room_.asked().lights[i].name);
        }
    }

    void reflector(const std::string& surface) {
        for (const double before : kBoardBefore) {
            const Change change = [&](double) {
                return room_.with_studio([&](Setup& setup) {
                    PanelSettings board;
                    board.name = surface + " board";
                    board.surface = surface == "silver" ? Finish(Metal::kSilver) : Finish(Reflectance{kWhite});
                    board.width_m = kBoardWidth;
                    board.height_m = kBoardHeight;
                    board.placement.where = face_ + Double3(0.0, -kBoardBelow, before);
                    setup.panels.push_back(board);
                });
            };
            const auto found = least_change(room_, change, {before}, 1.0);
            if (!found) continue;
            keep(FixKind::kReflector, Found{std::hypot(before, kBoardBelow), found->look}, 0.0, surface);
            return;
        }
    }

    void height() {
        const double down = key_.y > face_.y ? -1.0 : 1.0;
        const auto found = least_change(room_, key_at([&](double by) { return key_ + Double3(0.0, by, 0.0); }),
                                        sizes_up_to(down * kMostLowered), kCentimetres);
        keep(FixKind::kHeight, found, found ? key_.y + found->size : 0.0);
    }

    // Down and round to the front, its distance kept, over the same line on the floor.
    void arc() {
        const Double3 away = key_ - face_;
        const double distance = glm::length(away);
        const double out = std::hypot(away.x, away.z);
        const double up = degrees(std::asin(away.y / distance));
        const Double3 along = out > kCentimetres ? Double3(away.x / out, 0.0, away.z / out) : Double3(0.0, 0.0, 1.0);
        const auto place = [&](double by) {
            const double lift = radians(up + by);
            return face_ + distance * (std::cos(lift) * along + Double3(0.0, std::sin(lift), 0.0));
        };
        const auto found = least_change(room_, key_at(place), sizes_up_to(-up), kDegree);
        if (found) keep(FixKind::kArc, Found{place(found->size).y - key_.y, found->look}, place(found->size).y);
    }

    void angle() {
        const Double3 away = key_ - face_;
        const double round = degrees(std::atan2(away.x, away.z));
        if (std::abs(round) < kSwingStep) return;
        const double out = std::hypot(away.x, away.z);
        const auto place = [&](double by) {
            const double turn = radians(round + by);
            return face_ + Double3(out * std::sin(turn), away.y, out * std::cos(turn));
        };
        const double room = std::min(kMostSwung, std::abs(round));
        const auto found = least_change(room_, key_at(place), sizes_up_to(std::copysign(room, -round)), kDegree);
        keep(FixKind::kAngle, found, found ? round + found->size : 0.0);
    }

    // Along the floor, at its height.
    void distance() {
        const Double3 away = key_ - face_;
        const double out = std::hypot(away.x, away.z);
        if (out < kMoveStep) return;
        const Double3 along(away.x / out, 0.0, away.z / out);
        const auto place = [&](double by) { return key_ + by * along; };
        const double now = glm::length(away);
        const auto farther =
            least_change(room_, key_at(place), sizes_up_to(std::max(0.0, kFarthest - now)), kCentimetres);
        const auto nearer =
            farther ? std::nullopt
                    : least_change(room_, key_at(place), sizes_up_to(-std::max(0.0, now - kNearest)), kCentimetres);
        const auto& found = farther ? farther : nearer;
        if (!found) return;
        const double after = glm::length(place(found->size) - face_);
        keep(FixKind::kDistance, Found{after - now, found->look}, after);
    }

    void modifier() {
        const double size = front_size();
        for (const char* name : kLarger) {
            const auto larger = read_kit_file(name, kit_);
            if (!larger) continue;
            const Change change = [&](double) {
                return room_.with_studio([&](Setup& setup) { setup.lights.front().modifier = *larger; });
            };
            if (!change(1.0)) continue;
            const double ratio = front_size() / size;
            constexpr double kClearlyLarger = 1.15;
            if (ratio < kClearlyLarger) continue;
            const auto found = least_change(room_, change, {1.0}, 1.0);
            if (!found) continue;
            keep(FixKind::kModifier, Found{ratio, found->look}, 0.0, name);
            return;
        }
    }

    double front_size() const {
        constexpr int kOutline = 32;
        double largest = 0.0;
        const Emitter& key = room_.stage().emitters().front();
        for (const Vec3& point : key.outline(Vec3(face_), kOutline)) {
            largest = std::max(largest, 2.0 * static_cast<double>(glm::distance(point, key.centre())));
        }
        return largest;
    }

    TrialRoom& room_;
    const std::filesystem::path& kit_;
    Double3 face_;
    Double3 key_;
    std::vector<Fix> fixes_;
};

}  // namespace

void put_key_at(Setup& setup, const Double3& place) { setup.lights.front().placement.where = place; }

std::vector<Fix> stand_fixes(TrialRoom& room, const std::filesystem::path& kit) { return StandFixes(room, kit).find(); }

}  // namespace understudy
