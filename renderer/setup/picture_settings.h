// The picture that a scene file asks for.
#pragma once

#include <string>

namespace understudy {

enum class Treatment { kColour, kBlackAndWhite };

// Hairs are thinner than a pixel. Fewer and wider ones, the same hair in sum, are sooner drawn and less grainy.
enum class StrandWidth { kWidened, kTrue };

struct WhiteBalance {
    bool as_lit = false;     // the white of the light that falls on the face
    double kelvin = 5500.0;  // otherwise
    std::string illuminant;  // "", or a name known to spectrum/illuminant.h in place of kelvin
};

// How light is followed that enters the sitter's skin.
enum class SkinLight {
    kUnderSkin,  // to where it comes out again
    kAtSurface,  // as if it came out where it went in: quicker, harder
};

struct PictureSettings {
    int width = 640;
    int height = 800;
    Treatment treatment = Treatment::kColour;
    int samples = 64;
    WhiteBalance white_balance;
    unsigned seed = 0;
    SkinLight skin = SkinLight::kUnderSkin;
    StrandWidth strands = StrandWidth::kWidened;
};

}  // namespace understudy
