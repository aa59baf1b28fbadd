// Receptors and the f-numbers they give (ISO 2720: flat C = 250, dome C = 340).

#include <cmath>

#include "metered.h"

namespace understudy {
namespace {

// A hemisphere seen from θ off its axis shows (1 + cos θ)/2 of its front, a flat disc cos θ.
TEST(Receptor, DomeAndFlatFromTheSide) {
    struct Row {
        double angle_deg, dome, flat;
    };
    for (const Row& row : {Row{0.0, 1.0, 1.0}, Row{30.0, 0.933013, 0.866025}, Row{45.0, 0.853553, 0.707107},
                           Row{60.0, 0.75, 0.5}, Row{90.0, 0.5, 0.0}, Row{120.0, 0.25, 0.0}, Row{180.0, 0.0, 0.0}}) {
        const MeterReport report =
            metered(kEmpty +
                    "[camera]\nheight = 1.25\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.02 }\n"
                    "angle = " +
                    std::to_string(row.angle_deg) + "\nelevation = 0\ndistance = 8\nmeter = 4\n");
        const double square_on = face_reading(report, Receptor::kFlat, Facing::kKey).exposure_lxs;
        const Reading dome = face_reading(report, Receptor::kDome, Facing::kCamera);
        const Reading flat = face_reading(report, Receptor::kFlat, Facing::kCamera);
        EXPECT_NEAR(dome.exposure_lxs / square_on, row.dome, 0.003) << row.angle_deg;
        EXPECT_NEAR(flat.exposure_lxs / square_on, row.flat, 0.003) << row.angle_deg;
    }
}

// Key 160 lx·s from 45° with fill 80 lx·s on the axis: dome 216.569, flat 193.137 lx·s.
TEST(Receptor, KeyAndFillTogether) {
    const MeterReport report =
        metered(kEmpty +
                "[camera]\niso = 100\nheight = 1.25\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.02 }\n"
                "angle = 45\nelevation = 0\ndistance = 4\nmeter = 8\n"
                "[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.02 }\n"
                "angle = 0\nelevation = 0\ndistance = 4\nfrom_key = -1\n");
    EXPECT_NEAR(face_reading(report, Receptor::kDome, Facing::kCamera).exposure_lxs, 216.569, 0.5);
    EXPECT_NEAR(face_reading(report, Receptor::kFlat, Facing::kCamera).exposure_lxs, 193.137, 0.5);
}

// N = √(H·S/C) at ISO 100: f/2 10, f/4 40, f/8 160, f/16 640 lx·s.
TEST(Receptor, AMeteredLightReadsWhatItIsSetTo) {
    struct Row {
        double f_number, exposure;
    };
    for (const Row& row : {Row{2.0, 10.0}, Row{4.0, 40.0}, Row{8.0, 160.0}, Row{16.0, 640.0}}) {
        const MeterReport report =
            metered(kEmpty + "[camera]\niso = 100\n[[light]]\nmodifier = \"softbox-60x90\"\nmeter = " +
                    std::to_string(row.f_number) + "\n");
        const Reading reading = face_reading(report, Receptor::kFlat, Facing::kKey);
        expect_reading(reading, row.exposure, 0.003, "f/" + std::to_string(row.f_number));
        EXPECT_NEAR(reading.f_number, row.f_number, 0.01 * row.f_number);
        EXPECT_DOUBLE_EQ(report.powers[0].f_number, row.f_number);
    }
}

// The dome's constant: 160 lx·s is f/6.860 at ISO 100.
TEST(Receptor, TheDomeHasItsOwnConstant) {
    const MeterReport report = metered(
        kEmpty + "[camera]\niso = 100\n[[light]]\nmodifier = { shape = \"sphere\", diameter = 0.02 }\nmeter = 8\n");
    EXPECT_NEAR(face_reading(report, Receptor::kDome, Facing::kKey).f_number, 6.8599, 0.03);
}

// A continuous light's exposure goes with the shutter, a flash's does not.
TEST(Receptor, TheShutterReachesContinuousLightOnly) {
    const auto exposures = [](const char* shutter) {
        const MeterReport report =
            metered(kEmpty + "[camera]\nshutter = \"" + shutter +
                    "\"\n[[light]]\nmodifier = \"bulb\"\nenergy = 10\nangle = 30\n"
                    "[[light]]\nmodifier = \"bulb\"\nlumens = 1000\nangle = -30\n[room]\nambient = \"100 lx\"\n");
        const Reading reading = face_reading(report, Receptor::kFlat, Facing::kCamera);
        return std::array<double, 3>{reading.by_light[0].exposure_lxs, reading.by_light[1].exposure_lxs,
                                     reading.by_light[2].exposure_lxs};
    };
    const auto fast = exposures("1/200");
    const auto slow = exposures("1/50");
    EXPECT_NEAR(slow[0] / fast[0], 1.0, 0.01);
    EXPECT_NEAR(slow[1] / fast[1], 4.0, 0.04);
    EXPECT_NEAR(slow[2] / fast[2], 4.0, 0.04);
    EXPECT_NEAR(fast[2], 100.0 / 200.0, 0.005);
}

// A room of 200 lx at 1/200 s: 1 lx·s where f/4 at ISO 200 wants 20, 4.32 stops under (common practice, no source: a
// first picture without flash is to be black).
TEST(Ambient, AnOrdinaryRoomIsFourStopsUnderAtTheUsualSettings) {
    const MeterReport report = metered(kEmpty +
                                       "[camera]\naperture = 4.0\nshutter = \"1/200\"\niso = 200\n"
                                       "[[light]]\nmodifier = \"bulb\"\nenergy = 0.01\n[room]\nambient = \"200 lx\"\n");
    EXPECT_NEAR(report.ambient_stops_from_camera, std::log2(1.0 / 20.0), 1e-9);
    EXPECT_LE(report.ambient_stops_from_camera, -4.0);
    EXPECT_NEAR(face_reading(report, Receptor::kFlat, Facing::kCamera).stops_from_camera, std::log2(1.0 / 20.0), 0.1);
}

// 300 lx is EV 6.907 at ISO 100 (E = 2.5·2^EV); f/8 at 1/125 is EV 12.966, 6.06 stops over it.
TEST(Ambient, ABrightRoomAgainstEight) {
    const MeterReport report = metered(kEmpty +
                                       "[camera]\naperture = 8.0\nshutter = \"1/125\"\niso = 100\n"
                                       "[[light]]\nmodifier = \"bulb\"\nenergy = 0.01\n[room]\nambient = \"300 lx\"\n");
    EXPECT_NEAR(report.ev100, 12.9658, 1e-4);
    EXPECT_NEAR(report.ambient_stops_from_camera, 6.9069 - 12.9658, 1e-3);
}

TEST(Readings, WhatTheLightsGiveAddsUpAndIsKnownWell) {
    const MeterReport report = metered(
        "[sitter]\nhead = \"ball\"\n[[light]]\nmodifier = \"softbox-60x90\"\nmeter = 4\n"
        "[[light]]\nmodifier = \"octa-120\"\nangle = 40\ndistance = 2\nfrom_key = -1\n[room]\nambient = \"100 lx\"\n");
    for (const Reading& reading : report.readings) {
        double sum = 0.0;
        for (const LightReading& light : reading.by_light) sum += light.exposure_lxs;
        EXPECT_NEAR(sum, reading.exposure_lxs, 1e-9 * sum) << reading.point;
        ASSERT_EQ(reading.by_light.size(), 3U);
        EXPECT_EQ(reading.by_light[2].light, "ambient");
        EXPECT_GT(reading.exposure_lxs, 0.0);
        EXPECT_LE(reading.standard_error_lxs / reading.exposure_lxs, 0.006) << reading.point;
    }
}

}  // namespace
}  // namespace understudy
