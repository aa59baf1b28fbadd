#include "spectrum/gel.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "spectrum/colour_temperature.h"
#include "spectrum/illuminant.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

std::vector<std::string> all_gels() {
    std::vector<std::string> names = gel_names();
    names.insert(names.end(), {"warm-1", "warm-159", "warm-300", "cool-1", "cool-200", "nd-0.1", "nd-4", "nd-1-stop",
                               "nd-2.5-stops", "nd-13-stops"});
    return names;
}

ColourTemperature through(const std::string& gel, double kelvin) {
    const auto found =
        nearest_colour_temperature(xyz_of(spectrum_of_temperature(kelvin) * gel_transmission(gel).value()));
    EXPECT_TRUE(found) << gel;
    return found.value_or(ColourTemperature{});
}

double stops_lost(const std::string& gel, double kelvin) {
    return -std::log2(luminous_share(spectrum_of_temperature(kelvin), gel_transmission(gel).value()));
}

TEST(Gel, LetsThroughAShareOfTheLightAtEveryWavelength) {
    for (const std::string& name : all_gels()) {
        const auto gel = gel_transmission(name);
        ASSERT_TRUE(gel) << name;
        for (std::size_t i = 0; i < Spectrum::kCount; ++i) {
            EXPECT_GE((*gel)[i], 0.0F) << name << " at " << Spectrum::wave(i);
            EXPECT_LE((*gel)[i], 1.0F) << name << " at " << Spectrum::wave(i);
        }
    }
}

// A film in air cannot pass more than its two faces let it: polyester, n = 1.57, reflects 4.92 % at each, Fresnel, so
// (1 − R)/(1 + R) = 90.6 % with all that goes back and forth. The dyes of none here reach through the whole range.
TEST(Gel, PassesItsOwnColourAsAClearFilmWould) {
    for (const std::string& name : gel_names()) {
        const Spectrum gel = *gel_transmission(name);
        float most = 0.0F;
        for (std::size_t i = 0; i < Spectrum::kCount; ++i) most = std::max(most, gel[i]);
        EXPECT_LE(most, 0.9063F) << name;
        EXPECT_GE(most, 0.80F) << name;
    }
}

// Half a mired is less than anybody sees; the curve is solved to far less.
TEST(CorrectingGel, ShiftsItsOwnLightByItsMireds) {
    const auto shift = [](const std::string& gel, double kelvin) {
        const auto bare = nearest_colour_temperature(xyz_of(spectrum_of_temperature(kelvin)));
        return mired(through(gel, kelvin).kelvin) - mired(bare->kelvin);
    };
    EXPECT_NEAR(shift("full-warm", 5500.0), 137.0, 0.05);
    EXPECT_NEAR(shift("half-warm", 5500.0), 80.0, 0.05);
    EXPECT_NEAR(shift("quarter-warm", 5500.0), 35.0, 0.05);
    EXPECT_NEAR(shift("eighth-warm", 5500.0), 17.5, 0.05);
    EXPECT_NEAR(shift("full-cool", 3200.0), -137.0, 0.05);
    EXPECT_NEAR(shift("half-cool", 3200.0), -80.0, 0.05);
    EXPECT_NEAR(shift("quarter-cool", 3200.0), -35.0, 0.05);
    EXPECT_NEAR(shift("eighth-cool", 3200.0), -17.5, 0.05);
    EXPECT_NEAR(shift("warm-300", 5500.0), 300.0, 0.05);
    EXPECT_NEAR(shift("cool-200", 3200.0), -200.0, 0.05);
}

// One maker's printed shifts of +159, +109, +64, +26 on 5500 K, and the trade's full blue from 3200 K to 5700 K and its
// half to 4300 K and quarter to 3600 K (a theatre technicians' forum's table). Daylight of 5500 K is 5500.5 K by the
// 5 nm tables, hence the kelvin.
TEST(CorrectingGel, BringsOneLightToAnother) {
    EXPECT_NEAR(through("warm-159", 5500.0).kelvin, 2934.1, 1.0);
    EXPECT_NEAR(through("warm-109", 5500.0).kelvin, 3438.6, 1.0);
    EXPECT_NEAR(through("warm-64", 5500.0).kelvin, 4068.0, 1.0);
    EXPECT_NEAR(through("warm-26", 5500.0).kelvin, 4811.9, 1.0);
    EXPECT_NEAR(through("full-cool", 3200.0).kelvin, 5700.0, 5.0);
    EXPECT_NEAR(through("half-cool", 3200.0).kelvin, 4300.0, 5.0);
    EXPECT_NEAR(through("quarter-cool", 3200.0).kelvin, 3600.0, 5.0);
}

// What a mired is for: the same gel shifts other lights by nearly the same. Wien's approximation makes it exact; the
// lights' own departure from it is what is left, under a tenth here.
TEST(CorrectingGel, ShiftsOtherLightsNearlyAsMuch) {
    for (const double kelvin : {3200.0, 4500.0, 6500.0}) {
        const auto bare = nearest_colour_temperature(xyz_of(spectrum_of_temperature(kelvin)));
        const double shift = mired(through("full-warm", kelvin).kelvin) - mired(bare->kelvin);
        EXPECT_NEAR(shift, 137.0, 13.7) << kelvin;
    }
}

// Neither greener nor pinker than the light it is on by more than 0.006 in u, v, the whole width of the field in which
// lamps are sold as white (ANSI C78.377: ±0.006).
TEST(CorrectingGel, LeavesNoCast) {
    for (const char* name : {"full-warm", "half-warm", "quarter-warm", "eighth-warm"}) {
        EXPECT_NEAR(through(name, 5500.0).duv, 0.003, 0.003) << name;
    }
    for (const char* name : {"full-cool", "half-cool", "quarter-cool", "eighth-cool"}) {
        EXPECT_NEAR(through(name, 3200.0).duv, 0.0, 0.006) << name;
    }
}

// Common practice, no source: a full warming gel costs 2/3 to 1 stop, 1.1 for the strongest; a full cooling one on
// tungsten about a stop and a half, half of them about half that; an eighth about a quarter of a stop.
TEST(CorrectingGel, CostsWhatPhotographersFind) {
    EXPECT_GE(stops_lost("full-warm", 5500.0), 0.66);
    EXPECT_LE(stops_lost("full-warm", 5500.0), 1.1);
    EXPECT_NEAR(stops_lost("half-warm", 5500.0), 0.5, 0.2);
    EXPECT_NEAR(stops_lost("quarter-warm", 5500.0), 0.33, 0.1);
    EXPECT_NEAR(stops_lost("full-cool", 3200.0), 1.5, 0.2);
    EXPECT_NEAR(stops_lost("half-cool", 3200.0), 0.9, 0.2);
    EXPECT_NEAR(stops_lost("quarter-cool", 3200.0), 0.5, 0.1);
}

// A density of 0.3 is a factor 10^−0.3 = 0.5012; a stop is half.
TEST(NeutralDensity, TakesItsStops) {
    EXPECT_NEAR(stops_lost("nd-0.3", 5500.0), 0.3 * std::log2(10.0), 1e-5);
    EXPECT_NEAR(stops_lost("nd-0.9", 3200.0), 0.9 * std::log2(10.0), 1e-5);
    EXPECT_NEAR(stops_lost("nd-1-stop", 5500.0), 1.0, 1e-5);
    EXPECT_NEAR(stops_lost("nd-2.5-stops", 3200.0), 2.5, 1e-5);
    EXPECT_NEAR(through("nd-0.6", 3200.0).kelvin, 3200.0, 0.5);
}

TEST(Gels, OneBehindTheOtherMultiply) {
    const Spectrum both = stacked_transmission({"half-warm", "nd-0.3"});
    const Spectrum warm = *gel_transmission("half-warm");
    for (std::size_t i = 0; i < Spectrum::kCount; ++i) {
        EXPECT_NEAR(both[i], warm[i] * std::pow(10.0F, -0.3F), 1e-6F);
    }
    const Spectrum light = spectrum_of_temperature(5500.0);
    const Spectrum grey = stacked_transmission({"nd-0.3", "nd-0.6"});
    EXPECT_NEAR(-std::log2(luminous_share(light, grey)), 0.9 * std::log2(10.0), 1e-5);
    EXPECT_EQ(luminous_share(light, stacked_transmission({})), 1.0);
    // A warm and a cool one undo each other's colour, not each other's loss.
    const auto undone = nearest_colour_temperature(xyz_of(light * stacked_transmission({"full-warm", "full-cool"})));
    EXPECT_NEAR(mired(undone->kelvin), mired(5500.0), 13.7);  // a tenth of their shift, as above
    EXPECT_GT(-std::log2(luminous_share(light, stacked_transmission({"full-warm", "full-cool"}))), 1.5);
}

// The colour that a gel is called is what it makes of daylight: the order of the linear channels.
TEST(PlainColour, IsTheColourItIsCalled) {
    const auto seen = [](const char* name) {
        const Spectrum light = spectrum_of_temperature(5500.0);
        const Xyz through = xyz_of(light * gel_transmission(name).value());
        return linear_srgb_of_xyz_matrix() *
               (adaptation_to_d65(xyz_of(light)) * Double3(through.x, through.y, through.z));
    };
    const Double3 red = seen("red");
    EXPECT_GT(red.r, 5.0 * std::max(red.g, red.b));
    const Double3 green = seen("green");
    EXPECT_GT(green.g, 5.0 * std::max(green.r, green.b));
    const Double3 blue = seen("blue");
    EXPECT_GT(blue.b, 5.0 * std::max(blue.r, blue.g));
    const Double3 yellow = seen("yellow");
    EXPECT_GT(std::min(yellow.r, yellow.g), 5.0 * yellow.b);
    const Double3 cyan = seen("cyan");
    EXPECT_GT(std::min(cyan.g, cyan.b), 5.0 * cyan.r);
    const Double3 magenta = seen("magenta");
    EXPECT_GT(std::min(magenta.r, magenta.b), 5.0 * magenta.g);
    const Double3 amber = seen("amber");
    EXPECT_GT(amber.r, 2.0 * amber.g);
    EXPECT_GT(amber.g, 5.0 * amber.b);
    const Double3 orange = seen("orange");
    EXPECT_GT(orange.r / orange.g, amber.r / amber.g);
    const Double3 lavender = seen("lavender");
    EXPECT_GT(lavender.b, lavender.r);
    EXPECT_GT(lavender.r, lavender.g);
    const Double3 pink = seen("pink");
    EXPECT_GT(pink.r, pink.b);
    EXPECT_GT(pink.b, pink.g);
}

// Common practice, no source: a yellow is nearly free, the primaries cost three stops and more, blue most of all.
TEST(PlainColour, CostsMoreTheDeeperItIs) {
    EXPECT_LT(stops_lost("yellow", 5500.0), 0.5);
    EXPECT_LT(stops_lost("amber", 5500.0), 1.5);
    EXPECT_GT(stops_lost("red", 5500.0), 2.5);
    EXPECT_GT(stops_lost("blue", 5500.0), 3.5);
}

TEST(Gel, IsNoneForAnyOtherName) {
    for (const char* name : {"",           "warm",        "warm-",     "warm-0",           "warm-301",  "warm--5",
                             "warm-1e2",   "warm-12 ",    "warm-nan",  "cool-201",         "cool-x",    "nd-0",
                             "nd-0.09",    "nd-4.1",      "nd-",       "nd--0.3",          "nd-inf",    "nd-0.3x",
                             "nd-0-stops", "nd-14-stops", "nd--stops", "nd-1-stops-stops", "Full-warm", "full-warm ",
                             "full",       "CTO",         "nd0.3"}) {
        EXPECT_FALSE(gel_transmission(name)) << "\"" << name << "\"";
    }
}

}  // namespace
}  // namespace understudy
