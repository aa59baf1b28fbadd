// The white of the eye from place to place: pinker toward the corners, a few faint vessels, darker into the limbus.
//
// A reasoned model, with no source: blood of a depth that changes over the white. Vessels run, in windings, about from
// the corners toward the cornea and fade before it; they are where smooth chance crosses zero.
#pragma once

#include <cstdint>

#include "scatter/light4.h"
#include "sitter/eye.h"

namespace understudy {

class ScleraPattern {
  public:
    ScleraPattern();

    // way: from the eyeball's centre, unit, in the eye's frame.
    Light4 colour(const Vec3& way, std::uint32_t seed, const Waves& waves) const;
    // Where the white runs into the cornea, on both sides of the line.
    Light4 limbus_colour(const Waves& waves) const;

    // Of the corneal sphere this far off the axis, how much the white covers still: from all of it at the limbus to
    // nothing a little inside.
    static float covers_cornea(float off_axis);

  private:
    Spectrum white_;
    Spectrum blood_per_cm_;
};

}  // namespace understudy
