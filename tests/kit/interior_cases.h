// Modifiers of every body, with and without cloths and grids, as they are built in the trade.
#pragma once

#include <string>
#include <vector>

#include "setup/construction.h"
#include "setup/setup.h"

namespace understudy {

struct InteriorCase {
    std::string name;
    Construction construction;
    ModifierShape front;
};

inline Construction white_box() {
    Construction box;
    box.depth_m = 0.35;
    box.back_diameter_m = 0.16;
    box.front_cloth = DiffusingCloth{};
    return box;
}

inline Construction silver_reflector() {
    Construction reflector;
    reflector.body = Construction::Body::kBowl;
    reflector.depth_m = 0.11;
    reflector.back_diameter_m = 0.10;
    reflector.lining = {true, 0.85, 0.25};
    reflector.tube.glass = Tube::Glass::kFrosted;
    return reflector;
}

inline Construction parabola(double diameter_m, double focal_length_m) {
    Construction dish;
    dish.body = Construction::Body::kParabola;
    dish.depth_m = diameter_m * diameter_m / (16.0 * focal_length_m);
    dish.lining = {true, 0.9, 0.05};
    dish.tube = {false, 0.02, 0.0, focal_length_m};
    return dish;
}

// A ball of cloth with its tube in the middle.
inline Construction ball(double radius_m, double reflectance, double transmittance) {
    Construction lantern;
    lantern.body = Construction::Body::kBall;
    lantern.depth_m = radius_m;
    lantern.tube = {false, 0.02, 0.0, radius_m};
    lantern.front_cloth = DiffusingCloth{transmittance, reflectance, 0.0, 0.35};
    return lantern;
}

inline std::vector<InteriorCase> interior_cases() {
    std::vector<InteriorCase> all;
    Construction box = white_box();
    all.push_back({"box", box, RectangleShape{0.6, 0.9}});
    box.inner_cloth = InnerCloth{0.12, 0.03, DiffusingCloth{}};
    all.push_back({"octa with inner cloth", box, PolygonShape{8, 1.2}});
    box.grid = Grid{Grid::Cells::kSquare, 0.05, 0.06};
    all.push_back({"octa with fabric grid", box, PolygonShape{8, 1.2}});
    Construction dish;
    dish.body = Construction::Body::kBowl;
    dish.depth_m = 0.15;
    dish.back_diameter_m = 0.16;
    dish.deflector = Deflector{0.15, 0.1, Lining{}};
    all.push_back({"dish", dish, DiscShape{0.55}});
    all.push_back({"silver reflector", silver_reflector(), DiscShape{0.18}});
    Construction snoot;
    snoot.body = Construction::Body::kCone;
    snoot.depth_m = 0.24;
    snoot.back_diameter_m = 0.15;
    snoot.lining = {false, 0.3, 0.3};
    all.push_back({"snoot", snoot, DiscShape{0.065}});
    Construction ring;
    ring.body = Construction::Body::kRing;
    ring.depth_m = 0.08;
    ring.tube = {true, 0.37, 0.01, 0.03};
    ring.front_cloth = DiffusingCloth{};
    all.push_back({"ring", ring, RingShape{0.45, 0.28}});
    all.push_back({"parabola", parabola(1.3, 0.25), DiscShape{1.3}});
    all.push_back({"ball", ball(0.325, 0.32, 0.62), SphereShape{0.65}});
    return all;
}

}  // namespace understudy
