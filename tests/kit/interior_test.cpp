#include <chrono>
#include <cstdio>

#include <gtest/gtest.h>

#include "kit/grid_cells.h"
#include "kit/light_walk.h"
#include "kit/trace_emission.h"

namespace understudy {
namespace {

struct Case {
    const char* name;
    Construction construction;
    ModifierShape front;
};

std::vector<Case> cases() {
    std::vector<Case> all;
    Construction box;
    box.depth_m = 0.35;
    box.back_diameter_m = 0.16;
    box.lining = {false, 0.9, 0.3};
    box.front_cloth = DiffusingCloth{};
    all.push_back({"softbox", box, RectangleShape{0.6, 0.9}});
    box.inner_cloth = InnerCloth{0.12, DiffusingCloth{}};
    all.push_back({"softbox inner", box, RectangleShape{0.6, 0.9}});
    all.push_back({"octa inner", box, PolygonShape{8, 1.2}});
    box.grid = Grid{Grid::Cells::kSquare, 0.05, 0.06};
    all.push_back({"octa grid", box, PolygonShape{8, 1.2}});
    Construction dish;
    dish.body = Construction::Body::kBowl;
    dish.depth_m = 0.15;
    dish.back_diameter_m = 0.16;
    dish.deflector = Deflector{0.15, 0.1, Lining{}};
    all.push_back({"dish", dish, DiscShape{0.55}});
    dish.lining = {true, 0.9, 0.3};
    all.push_back({"silver dish", dish, DiscShape{0.55}});
    Construction standard;
    standard.body = Construction::Body::kBowl;
    standard.depth_m = 0.12;
    standard.back_diameter_m = 0.11;
    standard.lining = {true, 0.85, 0.2};
    standard.tube.glass = Tube::Glass::kFrosted;
    all.push_back({"standard", standard, DiscShape{0.18}});
    standard.grid = Grid{Grid::Cells::kRound, 0.00635, 0.035};
    all.push_back({"standard 20", standard, DiscShape{0.18}});
    Construction parabola;
    parabola.body = Construction::Body::kParabola;
    parabola.depth_m = 0.65 * 0.65 / (4 * 0.25);
    parabola.lining = {true, 0.9, 0.1};
    parabola.tube.before_back_m = 0.25;
    all.push_back({"parabola", parabola, DiscShape{1.3}});
    Construction ring;
    ring.body = Construction::Body::kRing;
    ring.depth_m = 0.08;
    ring.tube.diameter_m = 0.37;
    ring.tube.before_back_m = 0.03;
    ring.front_cloth = DiffusingCloth{};
    all.push_back({"ring", ring, RingShape{0.45, 0.28}});
    Construction ball;
    ball.body = Construction::Body::kBall;
    ball.depth_m = 0.325;
    ball.tube.before_back_m = 0.25;
    ball.front_cloth = DiffusingCloth{};
    all.push_back({"lantern", ball, SphereShape{0.65}});
    return all;
}

TEST(Interior, Shown) {
    for (const Case& c : cases()) {
        const auto start = std::chrono::steady_clock::now();
        const TracedEmission traced = trace_emission(c.construction, c.front).value();
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
        const LightWalk walk(c.construction, c.front);
        const WalkTotals totals = walk.follow(100000, 7);
        std::printf("%-14s %6.2f s  size %6zu  eff %.4f ± %.4f  traced %.4f  conserved %.5f\n", c.name, took.count(),
                    traced.table.values().size(), traced.efficiency, traced.standard_error, traced.traced_flux,
                    totals.out + totals.absorbed);
    }
}

}  // namespace
}  // namespace understudy
