#include "kit/emission_table.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "kit/emission_weights.h"

namespace understudy {

namespace {

constexpr std::size_t kSteps = 256;     // of sin(angle / 2), for finding the knot
constexpr float kWidest = 0.70710678F;  // sin(angle / 2) at the horizon

float at_most(float value, std::uint32_t knots) { return std::clamp(value, 0.0F, static_cast<float>(knots - 1)); }

// A knot and its neighbour above.
struct Pair {
    std::size_t low;
    std::size_t high;
    float part;
};

Pair pair_at(float place, std::uint32_t knots) {
    const auto low = static_cast<std::size_t>(place);
    return {low, std::min<std::size_t>(low + 1, knots - 1), place - static_cast<float>(low)};
}

float between(float a, float b, float part) { return a + part * (b - a); }

}  // namespace

bool EmissionLayout::folds(const ModifierShape& shape) {
    return std::holds_alternative<RectangleShape>(shape) || std::holds_alternative<DiscShape>(shape) ||
           std::holds_alternative<RingShape>(shape) || std::holds_alternative<PolygonShape>(shape) ||
           std::holds_alternative<SphereShape>(shape);
}

EmissionLayout EmissionLayout::of(const ModifierShape& shape) {
    assert(folds(shape));
    const auto half = [](double size) { return static_cast<float>(0.5 * size); };
    EmissionLayout layout;
    if (const auto* rectangle = std::get_if<RectangleShape>(&shape)) {
        layout.fold = Fold::kRectangle;
        layout.reach = half(rectangle->width_m);
        layout.second_reach = half(rectangle->height_m);
    } else if (const auto* polygon = std::get_if<PolygonShape>(&shape)) {
        layout.fold = Fold::kPolygon;
        layout.reach = half(polygon->diameter_m * std::cos(kPiDouble / polygon->sides));
        layout.second_reach = layout.reach;
        layout.sides = static_cast<std::uint32_t>(polygon->sides);
    } else if (const auto* ring = std::get_if<RingShape>(&shape)) {
        layout.reach = half(ring->diameter_m);
        layout.second_reach = half(ring->inner_m);
    } else if (const auto* sphere = std::get_if<SphereShape>(&shape)) {
        layout.fold = Fold::kBall;
        layout.reach = half(sphere->diameter_m);
        layout.second_reach = layout.reach;
    } else {
        layout.reach = half(std::get<DiscShape>(shape).diameter_m);
    }
    return layout;
}

EmissionTable::EmissionTable(EmissionLayout layout, std::vector<float> values)
    : layout_(std::move(layout)), values_(std::move(values)) {
    assert(values_.size() == layout_.size() && layout_.across >= 2 && layout_.angles.size() >= 2);
    assert(layout_.azimuths == 1 || (layout_.round() ? layout_.azimuths % 2 == 1 : layout_.azimuths % 4 == 0));
    for (const float angle : layout_.angles) sines_.push_back(std::sin(0.5F * angle));
    std::uint16_t knot = 0;
    for (std::size_t step = 0; step <= kSteps; ++step) {
        const float least = kWidest * static_cast<float>(step) / static_cast<float>(kSteps);
        while (knot + 2U < sines_.size() && sines_[knot + 1U] <= least) ++knot;
        first_knot_.push_back(knot);
    }
    if (layout_.sides > 0) side_slope_ = std::tan(kPi / static_cast<float>(layout_.sides));
    for (std::uint32_t side = 0; side < layout_.sides; ++side) {
        const float turn = 2.0F * kPi * static_cast<float>(side) / static_cast<float>(layout_.sides);
        turns_.push_back({{std::cos(turn), -std::sin(turn)}, {std::sin(turn), std::cos(turn)}});
    }
    const double flux_as_given = flux();
    assert(flux_as_given > 0.0);
    for (float& value : values_) value = static_cast<float>(static_cast<double>(value) / flux_as_given);
    const EmissionWeights weights = emission_weights(layout_);
    double area = 0.0;
    for (const double across : weights.across) {
        for (const double along : weights.along) area += across * along;
    }
    even_radiance_ = static_cast<float>(1.0 / (kPiDouble * area));
}

double EmissionTable::flux() const { return emission_flux(layout_, values_); }

EmissionPlace EmissionTable::place_of(const Vec3& place) const {
    if (layout_.fold == EmissionLayout::Fold::kPolygon) return polygon_place(place);
    if (layout_.fold == EmissionLayout::Fold::kBall) return ball_place(place);
    EmissionPlace folded;
    const auto last = static_cast<float>(layout_.across - 1);
    if (layout_.fold == EmissionLayout::Fold::kRectangle) {
        folded.first.x = std::copysign(1.0F, place.x);
        folded.second.y = std::copysign(1.0F, place.y);
        folded.across = at_most(std::abs(place.x) / layout_.reach * last, layout_.across);
        folded.along =
            at_most(std::abs(place.y) / layout_.second_reach * static_cast<float>(layout_.along - 1), layout_.along);
        return folded;
    }
    const float radius = std::sqrt(place.x * place.x + place.y * place.y);
    folded.across =
        at_most((radius - layout_.second_reach) / (layout_.reach - layout_.second_reach) * last, layout_.across);
    if (radius > 0.0F) {
        folded.first = Vec3(place.x / radius, place.y / radius, 0.0F);
        folded.second = Vec3(-folded.first.y, folded.first.x, 0.0F);
    }
    return folded;
}

// The first coordinate runs from the centre to the side, the second along half a side.
EmissionPlace EmissionTable::polygon_place(const Vec3& place) const {
    // A side lies at the top, so left mirrors right; then the side is the one whose middle is nearest.
    const float mirrored = std::copysign(1.0F, place.x);
    const Vec2 half(std::abs(place.x), place.y);
    const auto out_of = [&](std::size_t side) { return glm::dot(turns_[side].second, half); };
    std::size_t side = 0;
    while (side + 1 < turns_.size() && out_of(side + 1) > out_of(side)) ++side;
    const Turn& turn = turns_[side];
    const float out = glm::dot(turn.second, half);
    const float aside = glm::dot(turn.first, half);
    const float flipped = std::copysign(1.0F, aside);
    EmissionPlace folded;
    folded.first = flipped * Vec3(mirrored * turn.first.x, turn.first.y, 0.0F);
    folded.second = Vec3(mirrored * turn.second.x, turn.second.y, 0.0F);
    folded.across = at_most(out / layout_.reach * static_cast<float>(layout_.across - 1), layout_.across);
    const float half_side = out * side_slope_;
    const float share = half_side > 0.0F ? std::abs(aside) / half_side : 0.0F;
    folded.along = at_most(share * static_cast<float>(layout_.along - 1), layout_.along);
    return folded;
}

EmissionPlace EmissionTable::ball_place(const Vec3& place) const {
    EmissionPlace folded;
    folded.normal = glm::normalize(place);
    const float sine = std::sqrt(std::max(0.0F, 0.5F * (1.0F - folded.normal.z)));
    folded.across = at_most(sine * static_cast<float>(layout_.across - 1), layout_.across);
    const float aside2 = folded.normal.x * folded.normal.x + folded.normal.y * folded.normal.y;
    // Along the meridian, away from the axis.
    const Vec2 meridian = aside2 > 0.0F ? Vec2(folded.normal.x, folded.normal.y) / std::sqrt(aside2) : Vec2(1.0F, 0.0F);
    folded.second = Vec3(-meridian.y, meridian.x, 0.0F);
    folded.first = glm::cross(folded.second, folded.normal);
    return folded;
}

EmissionTable::Step EmissionTable::angle_step(float cosine) const {
    const float sine = std::sqrt(std::max(0.0F, 0.5F * (1.0F - cosine)));
    const auto step = std::min(static_cast<std::size_t>(sine * (static_cast<float>(kSteps) / kWidest)), kSteps);
    std::size_t low = first_knot_[step];
    while (low + 2 < sines_.size() && sines_[low + 1] <= sine) ++low;
    return {low, low + 1, std::min(1.0F, (sine - sines_[low]) / (sines_[low + 1] - sines_[low]))};
}

EmissionTable::Step EmissionTable::azimuth_step(float first, float second) const {
    if (layout_.azimuths == 1) return {0, 0, 0.0F};
    if (layout_.round()) {
        const float place =
            0.5F * azimuth_on_square(first, std::abs(second)) * static_cast<float>(layout_.azimuths - 1);
        const Pair pair = pair_at(at_most(place, layout_.azimuths), layout_.azimuths);
        return {pair.low, pair.high, pair.part};
    }
    const float place = 0.25F * azimuth_on_square(first, second) * static_cast<float>(layout_.azimuths);
    const auto low = std::min(static_cast<std::size_t>(place), static_cast<std::size_t>(layout_.azimuths - 1));
    return {low, low + 1 < layout_.azimuths ? low + 1 : 0, place - static_cast<float>(low)};
}

float EmissionTable::radiance(const EmissionPlace& place, const Vec3& direction) const {
    const float cosine = glm::dot(place.normal, direction);
    if (cosine <= 0.0F) return 0.0F;
    const Step angle = angle_step(cosine);
    if (0.5F * (1.0F - cosine) > sines_.back() * sines_.back()) return 0.0F;
    const Step azimuth = azimuth_step(glm::dot(place.first, direction), glm::dot(place.second, direction));
    const std::size_t directions = layout_.directions();
    const auto value_in = [&](std::size_t across, std::size_t along) {
        const float* values = &values_[(across * layout_.along + along) * directions];
        const float* near = values + azimuth.low * sines_.size();
        const float* far = values + azimuth.high * sines_.size();
        return between(between(near[angle.low], near[angle.high], angle.part),
                       between(far[angle.low], far[angle.high], angle.part), azimuth.part);
    };
    const Pair across = pair_at(place.across, layout_.across);
    if (layout_.along == 1) return between(value_in(across.low, 0), value_in(across.high, 0), across.part);
    const Pair along = pair_at(place.along, layout_.along);
    return between(between(value_in(across.low, along.low), value_in(across.low, along.high), along.part),
                   between(value_in(across.high, along.low), value_in(across.high, along.high), along.part),
                   across.part);
}

float EmissionTable::rough_radiance(const EmissionPlace& place, const Vec3& direction) const {
    const float cosine = glm::dot(place.normal, direction);
    if (cosine <= 0.0F || 0.5F * (1.0F - cosine) > sines_.back() * sines_.back()) return 0.0F;
    const auto nearest = [](const Step& step) { return step.part < 0.5F ? step.low : step.high; };
    const std::size_t angle = nearest(angle_step(cosine));
    const std::size_t azimuth =
        nearest(azimuth_step(glm::dot(place.first, direction), glm::dot(place.second, direction)));
    const auto across = static_cast<std::size_t>(std::floor(place.across + 0.5F));
    const auto along = static_cast<std::size_t>(std::floor(place.along + 0.5F));
    return values_[(across * layout_.along + along) * layout_.directions() + azimuth * sines_.size() + angle];
}

}  // namespace understudy
