#include "kit/table_cells.h"

#include <algorithm>
#include <cmath>

#include "base/turns.h"
#include "kit/emission_weights.h"

namespace understudy {

namespace {

// A coordinate within half a step of knot i of so many, in steps, cut off at both ends.
float within(std::size_t i, std::size_t count, float u) {
    const auto knot = static_cast<float>(i);
    const float low = std::max(0.0F, knot - 0.5F);
    const float high = std::min(static_cast<float>(count - 1), knot + 0.5F);
    return low + u * (high - low);
}

Vec3 direction_of(const Vec2& aside, float sine) {
    const float cosine = 1.0F - 2.0F * sine * sine;
    const float across = 2.0F * sine * std::sqrt(std::max(0.0F, 1.0F - sine * sine));
    return {across * aside, cosine};
}

}  // namespace

CellPlace CellPlace::turned_by(float turns) const {
    const Vec2 turn = turned(turns);
    const auto round = [&](const Vec3& v) {
        return Vec3(turn.x * v.x - turn.y * v.y, turn.y * v.x + turn.x * v.y, v.z);
    };
    return {round(place), round(normal), round(first), round(second), measure};
}

TableCells::TableCells(const EmissionLayout& layout) : layout_(layout) {
    for (const float angle : layout.angles) sines_.push_back(std::sin(0.5F * angle));
}

CellPlace TableCells::place(std::size_t across, std::size_t along, float u, float v) const {
    const float a = within(across, layout_.across, u) / static_cast<float>(layout_.across - 1);
    const float b = layout_.along > 1 ? within(along, layout_.along, v) / static_cast<float>(layout_.along - 1) : 0.0F;
    CellPlace cell{Vec3(0.0F), Vec3(0.0F, 0.0F, 1.0F), Vec3(1.0F, 0.0F, 0.0F), Vec3(0.0F, 1.0F, 0.0F), 1.0F};
    switch (layout_.fold) {
        case EmissionLayout::Fold::kRectangle:
            cell.place = Vec3(a * layout_.reach, b * layout_.second_reach, 0.0F);
            break;
        case EmissionLayout::Fold::kPolygon: {
            const float half_side = a * layout_.reach * std::tan(kPi / static_cast<float>(layout_.sides));
            cell.place = Vec3(b * half_side, a * layout_.reach, 0.0F);
            cell.measure = a;
            break;
        }
        case EmissionLayout::Fold::kRound: {
            const float radius = layout_.second_reach + a * (layout_.reach - layout_.second_reach);
            cell.place = Vec3(radius, 0.0F, 0.0F);
            cell.measure = radius;
            break;
        }
        case EmissionLayout::Fold::kBall:
            cell.normal = direction_of({1.0F, 0.0F}, a);
            cell.place = layout_.reach * cell.normal;
            cell.first = glm::cross(cell.second, cell.normal);
            cell.measure = a;
            break;
    }
    return cell;
}

CellDirection TableCells::direction(std::size_t azimuth, std::size_t angle, float u, float v) const {
    const float low = angle > 0 ? 0.5F * (sines_[angle - 1] + sines_[angle]) : 0.0F;
    const float high = angle + 1 < sines_.size() ? 0.5F * (sines_[angle] + sines_[angle + 1]) : sines_.back();
    const float sine = low + u * (high - low);
    float round = 0.0F;
    if (layout_.round()) {
        round = 2.0F * within(azimuth, layout_.azimuths, v) / static_cast<float>(layout_.azimuths - 1);
    } else {
        round = 4.0F * (static_cast<float>(azimuth) + v - 0.5F) / static_cast<float>(layout_.azimuths);
        if (round < 0.0F) round += 4.0F;
    }
    const Vec2 aside = from_square(round);
    const float length2 = glm::dot(aside, aside);
    const Vec3 local = direction_of(aside / std::sqrt(length2), sine);
    return {local, local.z * sine / length2};
}

Vec3 TableCells::knot_direction(std::size_t azimuth, std::size_t angle) const {
    const float share =
        static_cast<float>(azimuth) / static_cast<float>(layout_.round() ? layout_.azimuths - 1 : layout_.azimuths);
    return direction_of(glm::normalize(from_square((layout_.round() ? 2.0F : 4.0F) * share)), sines_[angle]);
}

}  // namespace understudy
