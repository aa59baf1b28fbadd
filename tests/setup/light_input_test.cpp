// Lights, their modifiers and their places, as a scene file says them.
#include <cmath>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

const StandPlacement& stand_of(const Placement& placement) { return std::get<StandPlacement>(placement.where); }

TEST(LightInput, EveryPower) {
    const ScratchLibrary scratch;
    const auto light = [&](const std::string& lines) {
        const auto setup = scratch.parse(kLight + "[[light]]\nmodifier = \"bulb\"\n" + lines);
        EXPECT_TRUE(setup) << all_text(setup.problems());
        return setup->lights[1];
    };
    EXPECT_DOUBLE_EQ(std::get<PowerFromEnergy>(light("energy = \"120 Ws\"").power).joules, 120.0);
    EXPECT_DOUBLE_EQ(std::get<PowerFromKey>(light("from_key = 1").power).stops, 1.0);
    EXPECT_DOUBLE_EQ(std::get<PowerFromMeter>(light("meter = 5.6").power).f_number,
                     4.0 * std::sqrt(2.0));  // as engraved
    const LightSettings lamp = light("lumens = \"2000 lm\"");
    EXPECT_DOUBLE_EQ(std::get<PowerFromFlux>(lamp.power).lumens, 2000.0);
    EXPECT_EQ(lamp.source, SourceKind::kContinuous);
    EXPECT_EQ(light("source = \"continuous\"\nmeter = 4").source, SourceKind::kContinuous);
    EXPECT_EQ(light("spectrum = \"FL11\"").colour.illuminant, "FL11");
}

TEST(LightInput, EveryShape) {
    const ScratchLibrary scratch;
    const auto modifier = [&](const std::string& table) {
        const auto setup = scratch.parse("[[light]]\nmeter = 4\nmodifier = { " + table + " }\n");
        EXPECT_TRUE(setup) << all_text(setup.problems());
        return setup->lights[0].modifier;
    };
    const ModifierSettings box = modifier(R"(shape = "rectangle", width = "0.6 m", height = "90 cm")");
    EXPECT_EQ(box.name, "rectangle");
    EXPECT_DOUBLE_EQ(std::get<RectangleShape>(box.shape).width_m, 0.6);
    EXPECT_DOUBLE_EQ(std::get<RectangleShape>(box.shape).height_m, 0.9);
    EXPECT_DOUBLE_EQ(box.efficiency, 0.5);
    EXPECT_DOUBLE_EQ(std::get<DiscShape>(modifier("shape = \"disc\", diameter = 0.4").shape).diameter_m, 0.4);
    const RingShape ring = std::get<RingShape>(modifier("shape = \"ring\", diameter = 0.4, inner = 0.2").shape);
    EXPECT_DOUBLE_EQ(ring.inner_m, 0.2);
    EXPECT_EQ(std::get<PolygonShape>(modifier("shape = \"polygon\", sides = 64, diameter = 1").shape).sides, 64);
    EXPECT_DOUBLE_EQ(modifier("shape = \"sphere\", diameter = 0.1").efficiency, 1.0);
    EXPECT_DOUBLE_EQ(modifier("shape = \"sphere\", diameter = 0.1, efficiency = 0.3").efficiency, 0.3);
    EXPECT_DOUBLE_EQ(std::get<DomeShape>(modifier("shape = \"dome\", diameter = 1, depth = 0.5").shape).depth_m, 0.5);
}

// An umbrella is a quarter as deep as wide and its head stands where its beam fills it, unless the file says more.
TEST(LightInput, UmbrellasFramesAndWindows) {
    const ScratchLibrary scratch;
    const auto light = [&](const std::string& table) {
        const auto setup = scratch.parse("[[light]]\nmeter = 4\nmodifier = { " + table + " }\n");
        EXPECT_TRUE(setup) << all_text(setup.problems());
        return setup->lights[0];
    };
    const auto plain =
        std::get<UmbrellaShape>(light(R"(shape = "umbrella", cloth = "silver", diameter = 1)").modifier.shape);
    EXPECT_EQ(plain.cloth, UmbrellaShape::Cloth::kSilver);
    EXPECT_DOUBLE_EQ(plain.depth_m, 0.25);
    EXPECT_DOUBLE_EQ(plain.head.distance_m, 0.6);
    EXPECT_DOUBLE_EQ(plain.head.beam_deg, 70.0);
    EXPECT_DOUBLE_EQ(plain.head_diameter_m, 0.18);
    const auto own = std::get<UmbrellaShape>(light("shape = \"umbrella\", cloth = \"through\", diameter = 1, depth = "
                                                   "0.3, head = \"50 cm\", beam = 90, head_efficiency = 0.6, "
                                                   "head_diameter = 0.1")
                                                 .modifier.shape);
    EXPECT_DOUBLE_EQ(own.depth_m, 0.3);
    EXPECT_DOUBLE_EQ(own.head.distance_m, 0.5);
    EXPECT_DOUBLE_EQ(own.head.beam_deg, 90.0);
    EXPECT_DOUBLE_EQ(own.head.efficiency, 0.6);
    EXPECT_DOUBLE_EQ(own.head_diameter_m, 0.1);
    const auto frame = std::get<FrameShape>(
        light("shape = \"frame\", width = 2, height = 1.5, head = 1.2, transmission = 0.7").modifier.shape);
    EXPECT_DOUBLE_EQ(frame.head.distance_m, 1.2);
    EXPECT_DOUBLE_EQ(frame.transmission, 0.7);
    const LightSettings sky =
        light("shape = \"window\", width = 1.2, height = 1.5, columns = 2, rows = 3, curtain = 0.4, ground = 0.1");
    EXPECT_EQ(sky.source, SourceKind::kContinuous);
    const auto window = std::get<WindowShape>(sky.modifier.shape);
    EXPECT_EQ(window.columns, 2);
    EXPECT_EQ(window.rows, 3);
    EXPECT_DOUBLE_EQ(window.bar_m, 0.05);
    EXPECT_DOUBLE_EQ(window.curtain, 0.4);
    EXPECT_DOUBLE_EQ(window.ground, 0.1);
}

TEST(LightInput, PlacesAndAims) {
    const ScratchLibrary scratch;
    const auto placement = [&](const std::string& lines) {
        const auto setup = scratch.parse(kLight + lines);
        EXPECT_TRUE(setup) << all_text(setup.problems());
        return setup->lights[0].placement;
    };
    EXPECT_EQ(std::get<Double3>(placement("position = [-1, 2, \"1 ft\"]").where), Double3(-1.0, 2.0, 0.3048));
    const Placement raised = placement("elevation = 65\ndistance = 0.5\nfeather = 10\nroll = 90\naim = [0, 1, 0.1]");
    EXPECT_DOUBLE_EQ(*stand_of(raised).elevation_deg, 65.0);
    EXPECT_FALSE(stand_of(raised).height_m);
    EXPECT_DOUBLE_EQ(raised.feather_deg, 10.0);
    EXPECT_DOUBLE_EQ(raised.roll_deg, 90.0);
    EXPECT_EQ(raised.aim.target, Aim::Target::kPoint);
    EXPECT_EQ(raised.aim.point_m, Double3(0.0, 1.0, 0.1));
    EXPECT_EQ(placement("aim = \"crown\"").aim.target, Aim::Target::kCrown);
    EXPECT_EQ(placement("angle = -180").said_at.file, (scratch.folder() / "scene.toml").string());
    EXPECT_EQ(stand_of(placement("height = 1.8")).said_at.line, 4);
}

}  // namespace
}  // namespace understudy
