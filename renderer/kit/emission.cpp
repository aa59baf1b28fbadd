#include "kit/emission.h"

namespace understudy {

Emission emission_of(const ModifierShape& shape, const PlacedFront& front) {
    if (const auto* umbrella = std::get_if<UmbrellaShape>(&shape)) return std::make_shared<const HeadLit>(*umbrella);
    if (const auto* frame = std::get_if<FrameShape>(&shape)) return std::make_shared<const HeadLit>(*frame);
    if (const auto* window = std::get_if<WindowShape>(&shape)) {
        const Vec3 zenith(Double3(front.right.y, front.up.y, front.axis.y));
        return std::make_shared<const SkyLight>(*window, zenith);
    }
    return EvenEmission{};
}

std::optional<double> efficiency_of_lit(const ModifierShape& shape) {
    if (const auto* umbrella = std::get_if<UmbrellaShape>(&shape)) {
        return umbrella->head.efficiency * HeadLit(*umbrella).share_out();
    }
    if (const auto* frame = std::get_if<FrameShape>(&shape)) {
        return frame->head.efficiency * HeadLit(*frame).share_out();
    }
    if (std::holds_alternative<WindowShape>(shape)) return 1.0;
    return std::nullopt;
}

}  // namespace understudy
