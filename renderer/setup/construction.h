// What a modifier is built of, in the words of the trade, in SI units: enough to trace light through its inside.
//
// The axis runs out of the front; depths and distances are along it.
#pragma once

#include <optional>

namespace understudy {

// A wall, a plate: matt paint or cloth, or a rough metal.
struct Lining {
    bool metal = false;
    double reflectance = 0.9;  // of a metal, at normal incidence
    double roughness = 0.3;    // of a metal: width of its facets' slopes
};

// A diffusing cloth: shares of the light that falls on it; what is left is absorbed.
struct DiffusingCloth {
    double transmittance = 0.62;
    double reflectance = 0.32;
    double straight = 0.35;   // share of the transmitted light that keeps near its direction
    double roughness = 0.35;  // how near: width of the lobe, as of a metal's facets
};

// The flash tube, bare or under a glass.
struct Tube {
    bool ring = true;             // else a ball
    double diameter_m = 0.05;     // of the ring's middle line, or of the ball
    double thickness_m = 0.008;   // of a ring's tube
    double before_back_m = 0.05;  // its middle, before the back
    enum class Glass { kNone, kClear, kFrosted } glass = Glass::kNone;
    double glass_diameter_m = 0.08;  // of a frosted one, which shines as a ball
};

struct Deflector {
    double diameter_m = 0.0;
    double before_back_m = 0.0;
    Lining lining;
};

struct InnerCloth {
    double behind_front_m = 0.0;
    double gap_m = 0.0;  // between its edge and the walls
    DiffusingCloth cloth;
};

// Cells before the front, their walls black. Round ones stand for a honeycomb.
struct Grid {
    enum class Cells { kRound, kSquare } cells = Cells::kRound;
    double width_m = 0.0;
    double depth_m = 0.0;
};

struct Construction {
    enum class Body {
        kCone,      // straight walls from the back to the front's edge; round
        kBowl,      // the same, hollow: radius² grows evenly with the distance from the back
        kParabola,  // the tube's light made parallel
        kBox,       // flat walls from a small square or polygon to the front
        kRing,      // a channel between two tubes
        kBall,      // cloth or glass all round the tube; a bare bulb too
    } body = Body::kBox;
    double depth_m = 0.0;          // from the front to the back; of a parabola, to its vertex; of a ball, its radius
    double back_diameter_m = 0.0;  // of the back's plate
    Lining lining;
    Tube tube;
    std::optional<Deflector> deflector;
    std::optional<InnerCloth> inner_cloth;
    std::optional<DiffusingCloth> front_cloth;
    std::optional<Grid> grid;
};

}  // namespace understudy
