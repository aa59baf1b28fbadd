#include "kit/sky_light.h"

#include "scatter/microfacet.h"

namespace understudy {

namespace {

// lx on the outside of the window for a zenith of luminance 1.
double light_on_window(const Vec3& zenith, float ground) {
    constexpr int kSide = 256;
    double sum = 0.0;
    for (int i = 0; i < kSide * kSide; ++i) {
        const int row = i / kSide;
        const Vec3 into_room =
            sample_cosine((static_cast<float>(i % kSide) + 0.5F) / kSide, (static_cast<float>(row) + 0.5F) / kSide);
        sum += static_cast<double>(overcast_radiance(-glm::dot(into_room, zenith), ground));
    }
    return kPiDouble * sum / (kSide * kSide);
}

}  // namespace

SkyLight::SkyLight(const WindowShape& shape, const Vec3& zenith)
    : zenith_(zenith),
      ground_(static_cast<float>(shape.ground)),
      width_(static_cast<float>(shape.width_m)),
      height_(static_cast<float>(shape.height_m)),
      bar_(static_cast<float>(shape.bar_m)),
      column_((width_ - bar_) / static_cast<float>(shape.columns)),
      row_((height_ - bar_) / static_cast<float>(shape.rows)) {
    const double glass =
        (shape.width_m - (shape.columns + 1) * shape.bar_m) * (shape.height_m - (shape.rows + 1) * shape.bar_m);
    const double light = light_on_window(zenith_, ground_);
    zenith_radiance_ = static_cast<float>(1.0 / (glass * light));
    straight_ = static_cast<float>(1.0 - shape.curtain) * zenith_radiance_;
    // The curtain hangs far enough before the bars to be lit evenly.
    scattered_ = static_cast<float>(shape.curtain / (kPiDouble * shape.width_m * shape.height_m));
}

std::vector<float> SkyLight::edges(float whole, float step, std::size_t most) const {
    const auto panes = static_cast<std::size_t>(std::lround((whole - bar_) / step));
    const std::size_t pieces = (most - panes - 1) / panes;
    std::vector<float> result;
    for (std::size_t i = 0; i < panes; ++i) {
        const float bar_from = static_cast<float>(i) * step;
        if (bar_ > 0.0F) result.push_back(bar_from / whole);
        for (std::size_t piece = 0; piece < pieces; ++piece) {
            const float part = static_cast<float>(piece) / static_cast<float>(pieces);
            result.push_back((bar_from + bar_ + part * (step - bar_)) / whole);
        }
    }
    if (bar_ > 0.0F) result.push_back((whole - bar_) / whole);
    result.push_back(1.0F);
    return result;
}

}  // namespace understudy
