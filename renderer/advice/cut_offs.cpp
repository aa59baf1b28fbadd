#include "advice/cut_offs.h"

#include <cmath>

#include "advice/stand_ways.h"

namespace understudy {

namespace {

constexpr double kHighest = 3.5;  // metres: no stand in a room goes higher
constexpr double kHeightStep = 0.25;
constexpr double kCentimetres = 0.02;
constexpr double kFarthestTurn = 60.0;
constexpr double kTurnStep = 15.0;
constexpr double kDegree = 1.0;

using Alive = std::function<std::array<bool, 2>(double)>;

// Both eyes are asked for at once.
std::array<CutOff, 2> lost_along(const Alive& alive, double from, double to, double step, double fine) {
    std::array<CutOff, 2> lost;
    std::array<double, 2> last{from, from};
    const double sign = to > from ? 1.0 : -1.0;
    for (double here = from; sign * (to - here) > -1e-9; here += sign * step) {
        const auto now = alive(here);
        for (std::size_t e = 0; e < 2; ++e) {
            if (lost.at(e).at) continue;
            if (now.at(e)) last.at(e) = here;
            if (!now.at(e) && lost.at(e).ever_alive) lost.at(e).at = here;
            lost.at(e).ever_alive = lost.at(e).ever_alive || now.at(e);
        }
        if (lost[0].at && lost[1].at) break;
    }
    for (std::size_t e = 0; e < 2; ++e) {
        if (!lost.at(e).at) continue;
        double same = last.at(e);
        double gone = *lost.at(e).at;
        while (std::abs(gone - same) > fine) {
            const double middle = 0.5 * (same + gone);
            (alive(middle).at(e) ? same : gone) = middle;
        }
        lost.at(e).at = same;
    }
    return lost;
}

}  // namespace

HeightCutOff height_cut_off(TrialRoom& room, const std::string& face) {
    const Double3 key = room.studio().lights.front().centre;
    const double eyes = room.studio().points.face.y;
    const Alive alive = [&](double height) -> std::array<bool, 2> {
        const bool stands = room.with_studio([&](Setup& setup) { put_key_at(setup, Double3(key.x, height, key.z)); });
        if (!stands) return {false, false};
        return which_alive(room);
    };
    return {face, lost_along(alive, eyes + kHeightStep, kHighest, kHeightStep, kCentimetres)};
}

TurnCutOff turn_cut_off(TrialRoom& room) {
    const Alive alive = [&](double turn) -> std::array<bool, 2> {
        if (!room.as_if_turned(turn)) return {false, false};
        return which_alive(room);
    };
    return {lost_along(alive, 0.0, -kFarthestTurn, kTurnStep, kDegree),
            lost_along(alive, 0.0, kFarthestTurn, kTurnStep, kDegree)};
}

}  // namespace understudy
