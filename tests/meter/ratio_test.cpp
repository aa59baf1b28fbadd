// Lighting ratios as the trade counts them: (K + F) : F, dome toward the camera (US Army Subcourse SS0510, 1994).

#include "metered.h"

namespace understudy {
namespace {

// Two bulbs to both sides of the lens at the eye line, so that neither is in the other's way and both count alike.
double key_and_fill_to_fill(const std::string& key_distance, const std::string& fill) {
    const MeterReport report = metered(
        "[sitter]\nhead = \"aspen\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = \"bulb\"\nangle = 10\n"
        "elevation = 0\nenergy = 100\ndistance = \"" +
        key_distance + "\"\n[[light]]\nname = \"fill\"\nmodifier = \"bulb\"\nangle = -10\nelevation = 0\n" + fill +
        "\n");
    if (!report.ratio) throw std::runtime_error("no ratio");
    EXPECT_NEAR(report.ratio->face_key_and_fill_to_fill, report.ratio->face_key_to_fill + 1.0, 1e-12);
    return report.ratio->face_key_and_fill_to_fill;
}

// The Army's worked examples: equal flashes, the fill at 11 ft; (11/8)² + 1 and (11/5.6)² + 1.
TEST(Ratio, EqualFlashesAtTwoDistances) {
    const std::string fill = "energy = 100\ndistance = \"11 ft\"";
    EXPECT_NEAR(key_and_fill_to_fill("8 ft", fill), 2.8906, 0.02);
    EXPECT_NEAR(key_and_fill_to_fill("5.6 ft", fill), 4.8584, 0.04);
}

// A fill n stops under the key: 2^n + 1.
TEST(Ratio, AFillSoManyStopsUnder) {
    const auto ratio = [](const char* stops) {
        return key_and_fill_to_fill("2 m", std::string("distance = \"2 m\"\nfrom_key = ") + stops);
    };
    EXPECT_NEAR(ratio("0.0"), 2.0, 0.015);
    EXPECT_NEAR(ratio("-1"), 3.0, 0.02);
    EXPECT_NEAR(ratio("-2"), 5.0, 0.04);
}

TEST(Ratio, NobodyHasNoCheeks) {
    EXPECT_FALSE(metered(kEmpty + lamp("\"disc\", diameter = 1.0", "[0, 1.25, 1]", "\"face\"")).ratio);
}

}  // namespace
}  // namespace understudy
