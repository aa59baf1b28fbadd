// The light of a window on an overcast day: the sky above the horizon, the ground below it, the frame's bars in
// between and, before them, a net curtain if there is one.
//
// CIE standard overcast sky (ISO 15469:2004, type 16; Moon and Spencer, "Illumination from a Non-Uniform Sky", 1942): a
// luminance of L(γ) = Lz (1 + 2 sin γ) / 3 at the elevation γ, three times brighter overhead than at the horizon. An
// open horizontal plane under it receives 7/9 π Lz, and the ground, matt, sends its part of that back evenly.
#pragma once

#include <vector>

#include "base/geometry.h"
#include "setup/lit_shapes.h"

namespace understudy {

// Over the zenith's luminance, for the sine of the elevation in −1 … 1.
inline float overcast_radiance(float sine, float ground_reflectance) {
    if (sine > 0.0F) return (1.0F + 2.0F * sine) / 3.0F;
    return ground_reflectance * (7.0F / 9.0F);
}

class SkyLight {
  public:
    // zenith: unit, straight up in the front's own axes.
    SkyLight(const WindowShape& shape, const Vec3& zenith);

    // For 1 lm out of the window, 1/(sr·m²). Both in the front's own axes.
    float radiance(const Vec3& place, const Vec3& direction) const {
        if (direction.z <= 0.0F) return 0.0F;
        const float straight =
            on_glass(place) ? straight_ * overcast_radiance(-glm::dot(direction, zenith_), ground_) : 0.0F;
        return straight + scattered_;
    }
    // The zenith's luminance for 1 lm out of the window.
    float zenith_radiance() const { return zenith_radiance_; }

    // Where bars and even pieces of panes begin and end, in shares of the width and of the height, from 0 to 1. As many
    // bars and pieces as may be, at least twice the panes and one more: the sky shows through a pane's upper part, the
    // ground through its lower.
    std::vector<float> edges_across(std::size_t most) const { return edges(width_, column_, most); }
    std::vector<float> edges_up(std::size_t most) const { return edges(height_, row_, most); }

  private:
    std::vector<float> edges(float whole, float step, std::size_t most) const;
    bool on_glass(const Vec3& place) const {
        const auto between = [&](float across, float whole, float step) {
            const float from_bar = across + 0.5F * whole - bar_;  // the first pane begins at 0
            const float in_pane = from_bar - step * std::floor(from_bar / step);
            return from_bar >= 0.0F && in_pane <= step - bar_;
        };
        return between(place.x, width_, column_) && between(place.y, height_, row_);
    }

    Vec3 zenith_;
    float ground_;
    float width_, height_, bar_;
    float column_, row_;  // from one bar to the next
    float zenith_radiance_ = 0.0F;
    float straight_ = 0.0F;
    float scattered_ = 0.0F;
};

}  // namespace understudy
