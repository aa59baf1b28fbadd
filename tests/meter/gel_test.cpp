// What a gel does to readings and powers, and the colours that arrive at the face.
#include <cmath>

#include "meter/light_colours.h"
#include "metered.h"
#include "spectrum/colour_temperature.h"

namespace understudy {
namespace {

// An even globe: from a traced bulb no two paths bring the same, and what one reads at a few wavelengths would be
// noise.
std::string bulb(const std::string& lines) {
    return kEmpty +
           "[camera]\niso = 100\n[[light]]\nmodifier = { shape = \"sphere\", diameter = \"10 cm\" }\nelevation = "
           "0\ndistance = \"2 m\"\n" +
           lines + "\n";
}

double exposure(const MeterReport& report) { return face_reading(report, Receptor::kFlat, Facing::kKey).exposure_lxs; }

// A neutral gel's stops are exact, so all of this is: 10^−0.3 for "nd-0.3".
TEST(Gelled, EnergyLosesTheGelsStops) {
    const MeterReport bare = metered(bulb("energy = 500"));
    const MeterReport gelled = metered(bulb("energy = 500\ngel = \"nd-0.3\""));
    EXPECT_NEAR(exposure(gelled) / exposure(bare), std::pow(10.0, -0.3), 1e-5);
    EXPECT_NEAR(gelled.powers[0].energy_j, 500.0, 1e-3);
    EXPECT_NEAR(gelled.powers[0].lumens / bare.powers[0].lumens, std::pow(10.0, -0.3), 1e-6);
    EXPECT_NEAR(gelled.colours[0].gel_loss_stops, 0.3 * std::log2(10.0), 1e-5);
}

TEST(Gelled, LumensAreTheLampsOwn) {
    const MeterReport bare = metered(bulb("lumens = 2000"));
    const MeterReport gelled = metered(bulb("lumens = 2000\ngel = [\"nd-1-stop\", \"nd-2-stops\"]"));
    EXPECT_NEAR(exposure(gelled) / exposure(bare), 0.125, 1e-5);
}

// A meter does not know what is in front of the lamp: the reading asked for is the reading, and the pack is turned up.
TEST(Gelled, AReadingIsTakenWithTheGelOn) {
    const MeterReport bare = metered(bulb("meter = 8"));
    const MeterReport gelled = metered(bulb("meter = 8\ngel = \"full-warm\""));
    EXPECT_NEAR(exposure(gelled), exposure(bare), 1e-4 * exposure(bare));
    EXPECT_NEAR(gelled.powers[0].f_number, 8.0, 1e-6);
    const double more = std::log2(gelled.powers[0].energy_j / bare.powers[0].energy_j);
    EXPECT_NEAR(more, gelled.colours[0].gel_loss_stops, 1e-4);
    EXPECT_GT(more, 2.0 / 3.0);  // common practice, no source: a full warming gel costs 2/3 to 1.1 stops
    EXPECT_LT(more, 1.1);
}

TEST(Gelled, FromKeyCountsReadingsToo) {
    const MeterReport report = metered(bulb("meter = 8\ngel = \"nd-0.9\"") +
                                       "[[light]]\nmodifier = \"bulb\"\nangle = 60\nfrom_key = -1\ngel = \"blue\"\n");
    EXPECT_NEAR(report.powers[1].f_number, 8.0 / std::sqrt(2.0), 1e-6);
}

// Nothing in the studio has a colour of its own: what arrives is the lamp's light. A reading's own precision is 0.3 %,
// but in an empty studio every path brings the same colour.
TEST(ColourAtTheFace, IsTheLampsInAnEmptyStudio) {
    const auto colour = [](const std::string& lines) { return metered(bulb("meter = 8\n" + lines)).colours.at(0); };
    EXPECT_NEAR(*colour("colour_temperature = 5500").kelvin, 5500.0, 3.0);
    EXPECT_NEAR(*colour("colour_temperature = 3200").kelvin, 3200.0, 1.0);
    EXPECT_NEAR(*colour("colour_temperature = 3200").duv, 0.0, 1e-4);
    // 5500 K with +137 mired: 10⁶/(181.818 + 137).
    EXPECT_NEAR(*colour("gel = \"full-warm\"").kelvin, 3136.6, 2.0);
    EXPECT_NEAR(*colour("colour_temperature = 3200\ngel = \"full-cool\"").kelvin, shifted_kelvin(3200.0, -137.0), 5.0);
    const ColourReading fluorescent = colour("spectrum = \"FL11\"");  // CIE 15:2004: 0.3805, 0.3769
    EXPECT_NEAR(*fluorescent.x, 0.3805, 2e-4);
    EXPECT_NEAR(*fluorescent.y, 0.3769, 2e-4);
    const ColourReading blue = colour("gel = \"blue\"");
    EXPECT_FALSE(blue.kelvin);
    EXPECT_LT(*blue.x, 0.2);
    EXPECT_EQ(blue.gels, std::vector<std::string>{"blue"});
}

// A gold board beside the lamp's way, turned to send its light to the face, warms what arrives; a white one does not.
TEST(ColourAtTheFace, HasThePanelsInIt) {
    const auto kelvin = [](const std::string& surface) {
        return *metered(bulb("meter = 8\nangle = 0") + "[[panel]]\nsurface = " + surface +
                        "\nposition = [0.7, 1.25, 0.7]\naim = [-0.5, 1.25, 1.0]\nsize = [1, 1]\n")
                    .colours.at(0)
                    .kelvin;
    };
    EXPECT_LT(kelvin("\"gold\""), kelvin("\"white\"") - 50.0);
    EXPECT_NEAR(kelvin("\"white\""), 5500.0, 15.0);
}

TEST(ColourAtTheFace, OfTheRoomIsItsIlluminants) {
    const MeterReport report = metered(bulb("meter = 8") + "[room]\nambient = 40\nambient_spectrum = \"FL2\"\n");
    ASSERT_EQ(report.colours.size(), 2U);
    EXPECT_EQ(report.colours[1].light, "ambient");
    EXPECT_NEAR(*report.colours[1].x, 0.3721, 2e-4);  // CIE 15:2004
    EXPECT_NEAR(*report.colours[1].y, 0.3751, 2e-4);
    EXPECT_EQ(report.colours[1].gel_loss_stops, 0.0);
}

// A head that looks away, and nothing that sends its light back.
TEST(ColourAtTheFace, IsNoneWhereNoLightComes) {
    const MeterReport report =
        metered(bulb("meter = 8") +
                "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.2 }\nposition = [0, 1, -2]"
                "\naim = [0, 1, -4]\nenergy = 100\ngel = \"red\"\n");
    EXPECT_FALSE(report.colours.at(1).x);
    EXPECT_FALSE(report.colours.at(1).kelvin);
    EXPECT_GT(report.colours.at(1).gel_loss_stops, 1.0);
}

}  // namespace
}  // namespace understudy
