// A scene file's text, metered: the way from words to lx·s that a user goes.
#pragma once

#include <memory>
#include <string>

#include <gtest/gtest.h>

#include "meter/meter.h"
#include "meter/ratio.h"
#include "support/studio_from.h"

namespace understudy {

inline MeterReport metered(const std::string& toml) {
    const Studio studio = studio_from(toml);
    const Stage stage(studio, Stage::With::kSitter);
    const Stage nobody(studio, Stage::With::kNobody);
    const LitStudio lit = value_of(set_powers(studio, nobody));
    return read_meter(studio, stage, nobody, lit);
}

// An empty studio: nobody, no backdrop, the face point at (0, 1.25, 0).
inline const std::string kEmpty = "[sitter]\nhead = \"none\"\neye_height = 1.25\n[backdrop]\nsurface = \"none\"\n";

// Where kEmpty's lights shine for 1/200 s, so that 20 000 lm send out 100 lm·s.
inline constexpr double kLumens = 20000.0;
inline constexpr double kLumenSeconds = 100.0;

// A lamp of kLumens by its shape ('disc", diameter = 1.0'), its middle and its aim, both [x, y, z].
inline std::string lamp(const std::string& shape, const std::string& position, const std::string& aim) {
    return "[[light]]\nmodifier = { shape = " + shape + " }\nposition = " + position + "\naim = " + aim +
           "\nlumens = 20000\n";
}

inline Reading reading_of(const MeterReport& report, const std::string& point, Receptor receptor, Facing facing) {
    const Reading* reading = find_reading(report.readings, point, receptor, facing);
    if (reading == nullptr) throw std::runtime_error("no such reading: " + point);
    return *reading;
}

inline Reading face_reading(const MeterReport& report, Receptor receptor, Facing facing) {
    return reading_of(report, "face", receptor, facing);
}

// Within three of the reading's own standard errors, or within a share of the value where those are smaller.
inline void expect_reading(const Reading& reading, double expected, double share, const std::string& what) {
    const double tolerance = std::max(3.0 * reading.standard_error_lxs, share * expected);
    EXPECT_NEAR(reading.exposure_lxs, expected, tolerance) << what;
    EXPECT_LE(reading.standard_error_lxs, 0.006 * expected) << what << ": too noisy to tell";
}

}  // namespace understudy
