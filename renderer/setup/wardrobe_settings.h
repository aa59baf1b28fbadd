// What the sitter wears: clothes, glasses, a hat.
#pragma once

#include <optional>

#include "setup/finish.h"
#include "spectrum/spectrum.h"

namespace understudy {

enum class Outfit { kCrewNeck, kHighNeck, kOpenCollar, kJacket, kBareShoulders };

// How a cloth is made: its nap, its folds and its thickness follow from it.
enum class Fabric { kJersey, kCotton, kWool, kVelvet, kFelt };

// The old plain top's. Invented.
inline constexpr float kUsualCloth = 0.11F;

struct ClothesSettings {
    Outfit outfit = Outfit::kCrewNeck;
    std::optional<Fabric> fabric;  // of the outer garment; none: what such a garment is usually made of
    Spectrum colour{kUsualCloth};  // reflectance of the outer garment
    Spectrum shirt_colour{0.8F};   // of the shirt under a jacket
};

enum class GlassesFrame { kRound, kSquare, kHalfRim };
enum class LensCoating { kPlain, kCoated };

struct GlassesSettings {
    GlassesFrame frame = GlassesFrame::kSquare;
    Finish colour = Reflectance{0.04};  // of the frame: a reflectance, a colour or a metal
    LensCoating glass = LensCoating::kCoated;
    double lean_deg = 9.0;       // of the lenses: plus brings their upper edge forward
    double curvature_m = 0.110;  // radius of the lenses' front
};

struct HatSettings {
    double brim_m = 0.06;   // from the crown to the edge
    double tilt_deg = 0.0;  // plus lowers the brim over the eyes
    Spectrum colour{kUsualCloth};
};

}  // namespace understudy
