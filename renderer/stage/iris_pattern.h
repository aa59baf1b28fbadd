// What an iris looks like from place to place: fibres, collarette, crypts and furrows in relief, and their colour.
//
// The parts are those of anatomy (the collarette a third of the way out, fibres that run from it to the rim, hollows
// between them beside it, furrows round the outer third); how they lie is chance, and their depths are chosen by eye.
// All of it is stretched between the pupil's edge and the rim, so that a pupil can open and close.
#pragma once

#include <cstdint>
#include <vector>

#include "scatter/iris_colour.h"
#include "scatter/light4.h"
#include "sitter/eye.h"

namespace understudy {

class IrisPattern {
  public:
    explicit IrisPattern(IrisColour colour);

    struct Patch {
        Vec2 slope{0.0F};      // of the relief, rise over way, in the same axes as the place
        float melanin = 0.0F;  // volume fraction
        float share = 1.0F;    // of its light that shows: less in hollows and at both edges
    };
    // across: from the pupil's centre, metres, right and up in the eye's frame; outside the pupil. Another seed makes
    // another iris of the same colour.
    Patch patch(const Vec2& across, float pupil_radius, std::uint32_t seed) const;

    // Of a patch, without its slope.
    Light4 colour(const Patch& patch, const Waves& waves) const;

  private:
    IrisPigment pigment_;
    std::vector<Spectrum> tones_;  // from least to most melanin, in even steps of its logarithm
};

}  // namespace understudy
