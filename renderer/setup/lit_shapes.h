// Modifiers whose light is worked out on their real surface: umbrellas, a frame of cloth, a window.
//
// A table on a plane in front of them would be wrong for whoever sits near.
#pragma once

namespace understudy {

// A flash head with a reflector, as it shines at a cloth.
struct ClothHead {
    double distance_m = 0.0;  // of its front from the cloth, on the axis
    double beam_deg = 0.0;    // the full angle at half its brightest
    double efficiency = 0.0;  // light out of the reflector over light out of the tube
};

// An umbrella and the flash head on its shaft. Its canopy is a cap of a ball.
struct UmbrellaShape {
    enum class Cloth { kWhite, kSilver, kThrough };
    double diameter_m = 0.0;  // across the rim
    double depth_m = 0.0;     // from the rim's plane to the canopy's middle, at most half the diameter
    Cloth cloth = Cloth::kWhite;
    ClothHead head;
    double head_diameter_m = 0.0;
};

// An upright frame of cloth with a flash head behind its middle.
struct FrameShape {
    double width_m = 0.0;
    double height_m = 0.0;
    ClothHead head;
    double transmission = 0.0;  // of the cloth, scattered and nearly straight together
};

// A window on an overcast day.
struct WindowShape {
    double width_m = 0.0;
    double height_m = 0.0;
    int columns = 1;  // of panes
    int rows = 1;
    double bar_m = 0.0;    // between the panes and round them
    double curtain = 0.0;  // the part of the light that a net curtain scatters; the rest goes straight on
    double ground = 0.0;   // reflectance of what lies below the horizon
};

}  // namespace understudy
