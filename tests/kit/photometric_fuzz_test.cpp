// Photometric files with a few bytes changed: every one is either refused with a place, or gives light that is a number
// in every direction.

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "kit/photometric_opening.h"
#include "kit/photometric_web.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

const std::array<std::string, 4> kSeeds{
    kQuadrants, photometric_text(4, 3, 2, "-90 -20 35 90\n-90 10 90\n1 2 3 4\n50 90 20 10\n80 300 120 30"),
    photometric_text(2, 4, 1, "0,180\n90 120 180 270\n1 1\n1 2\n1 5\n1 9\n", ".5", "1.2"),
    "A LABEL\n[LAMP] X\nTILT=INCLUDE\r\n1\r\n2\r\n0 90\r\n1 .9\r\n1 1200. 1 2 1 1 1 -.5 -.5 0 1 1 40\r\n0 90 0 10 "
    "5\r\n"};

std::string mutated(const std::string& seed, std::mt19937& random) {
    static const std::array<std::string, 12> pieces{"0",  "9",     "-",   ".",  "e",     ",",
                                                    "\n", " 360 ", "nan", "\r", "1e308", "\xC3"};
    std::string text = seed;
    const std::size_t edits = 1 + random() % 3;
    for (std::size_t i = 0; i < edits && !text.empty(); ++i) {
        // Mostly among the numbers, which stand at the end.
        const std::size_t from = random() % 4 == 0 ? 0 : text.size() / 2;
        const std::size_t where = from + random() % (text.size() - from);
        const std::size_t length = std::min<std::size_t>(random() % 8, text.size() - where);
        switch (random() % 4) {
            case 0:
                text.erase(where, length);
                break;
            case 1:
                text.insert(where, text.substr(where, length));
                break;
            case 2:
                text[where] = static_cast<char>(random() % 256);
                break;
            default:
                text.insert(where, pieces[random() % pieces.size()]);
        }
    }
    return text;
}

void expect_light(const PhotometricFile& file, std::mt19937& random) {
    const PhotometricWeb web(file);
    EXPECT_TRUE(std::isfinite(web.flux_lm()) && web.flux_lm() > 0.0) << web.flux_lm();
    EXPECT_TRUE(web.forward_flux_lm() >= 0.0 && web.forward_flux_lm() <= 1.000001 * web.flux_lm());
    EXPECT_FALSE(describe_opening(file.opening).empty());
    std::uniform_real_distribution<float> along(-1.0F, 1.0F);
    for (int i = 0; i < 4; ++i) {
        const float x = along(random);
        const float y = along(random);
        const float z = along(random);
        const double candela = web.candela(glm::normalize(Vec3(x, y, z + 1e-6F)));
        EXPECT_TRUE(candela >= 0.0 && candela <= web.peak_candela()) << candela;
    }
}

TEST(PhotometricFuzz, NothingButLightOrAProblemWithItsPlace) {
    std::mt19937 random(63);
    int accepted = 0;
    int refused = 0;
    for (int i = 0; i < 20000; ++i) {
        const std::string text = mutated(kSeeds[random() % kSeeds.size()], random);
        const auto file = parse_photometric_file(text, "lamp.ies");
        if (file) {
            ++accepted;
            expect_light(*file, random);
            continue;
        }
        ++refused;
        const std::string& told = file.problems().front().text;
        EXPECT_EQ(told.find("lamp.ies:"), 0U) << told;
        EXPECT_NE(told.find("; expected "), std::string::npos) << told;
        EXPECT_TRUE(std::none_of(told.begin(), told.end(), [](unsigned char c) { return c < 0x20; })) << told;
        if (HasFailure()) FAIL() << text;
    }
    // Both outcomes have to be common, or the changes test nothing.
    EXPECT_GT(accepted, 2000);
    EXPECT_GT(refused, 2000);
}

}  // namespace
}  // namespace understudy
