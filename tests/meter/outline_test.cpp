// The head against the backdrop: a hair light from behind brightens the edge.
#include <cmath>

#include "meter/metered.h"

namespace understudy {
namespace {

const std::string kPortrait =
    "[picture]\nwidth = 320\nheight = 400\n[sitter]\nhead = \"aspen\"\nhair = { style = \"cropped\", fringe = false, "
    "colour = \"dark-brown\" }\n[backdrop]\nsurface = \"black\"\n[[light]]\nmodifier = { shape = \"rectangle\", width "
    "= "
    "0.9, height = 0.9 }\nmeter = 4.0\n";
const std::string kHairLight =
    "[[light]]\nname = \"hair\"\nmodifier = { shape = \"rectangle\", width = 0.3, height = 0.9 }\nangle = 170\nheight "
    "= "
    "2.2\ndistance = 1.2\nfrom_key = 0\n";

// A photographer puts it there for that: by a stop or more in the middle of the outline's places.
TEST(Outline, IsBrighterWithALightFromBehind) {
    const auto without = metered(kPortrait).outline;
    const auto with = metered(kPortrait + kHairLight).outline;
    ASSERT_TRUE(without && with);
    EXPECT_GT(with->places.size(), 15U);
    EXPECT_GT(with->median_stops, without->median_stops + 1.0);
}

// On a white backdrop that is lit as the face is, hair is the darker of the two.
TEST(Outline, IsDarkerThanAWhiteBackdrop) {
    const std::string lit =
        "[[light]]\nname = \"backdrop\"\nmodifier = { shape = \"rectangle\", width = 0.9, height = 0.9 }\naim = "
        "\"backdrop\"\nangle = 120\nheight = 2.2\ndistance = 1.2\nfrom_key = 1\n";
    std::string white = kPortrait;
    white.replace(white.find("\"black\""), 7, "\"white\"");
    const auto outline = metered(white + lit).outline;
    ASSERT_TRUE(outline);
    EXPECT_LT(outline->median_stops, -1.0);
    for (const OutlinePlace& place : outline->places) {
        EXPECT_NEAR(place.stops, std::log2(place.edge / place.beyond), 1e-9);
    }
}

TEST(Outline, IsNoneWithoutAHead) {
    EXPECT_FALSE(metered(kEmpty + lamp("\"sphere\", diameter = 0.2", "[0, 2, 2]", "\"face\"")).outline);
}

}  // namespace
}  // namespace understudy
