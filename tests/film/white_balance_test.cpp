// White balance is a chromatic adaptation (Bradford's) from the white of the balanced light to the picture's D65.
#include "film/develop.h"

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <vector>

#include "film_fixtures.h"
#include "spectrum/colour.h"
#include "spectrum/gel.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

using Codes = std::array<int, 3>;

Vec3 card_under(float reflectance, const Spectrum& light, const Spectrum& white) {
    return develop(card(Spectrum(reflectance)), metered(light, white)).pixels[0];
}

Codes codes_of(const Vec3& linear) {
    return {srgb_code(static_cast<double>(linear.r)), srgb_code(static_cast<double>(linear.g)),
            srgb_code(static_cast<double>(linear.b))};
}

std::vector<Spectrum> balanced_lights() {
    std::vector<Spectrum> lights;
    for (const std::string& name : cie_illuminant_names()) lights.push_back(*cie_illuminant(name));
    for (const double kelvin : {1000.0, 2500.0, 3200.0, 4000.0, 5500.0, 10000.0, 25000.0}) {
        lights.push_back(spectrum_of_temperature(kelvin));
    }
    lights.push_back(spectrum_of_temperature(5500.0) * stacked_transmission({"full-warm", "nd-0.3"}));
    lights.push_back(spectrum_of_temperature(3200.0) * stacked_transmission({"half-cool"}));
    return lights;
}

// A grey is grey in every one of 8 bits; 18 % is code 118 (IEC 61966-2-1).
TEST(WhiteBalance, MakesAnyGreyNeutralUnderTheLightItIsFor) {
    for (const Spectrum& light : balanced_lights()) {
        const Codes middle = codes_of(card_under(0.18F, light, light));
        EXPECT_EQ(middle, (Codes{118, 118, 118}));
        for (const float reflectance : {0.02F, 0.05F, 0.1F, 0.36F, 0.6F, 0.9F}) {
            const Codes codes = codes_of(card_under(reflectance, light, light));
            EXPECT_EQ(codes[0], codes[1]) << reflectance;
            EXPECT_EQ(codes[2], codes[1]) << reflectance;
        }
    }
}

struct Cast {
    const char* what;
    Spectrum light;
    Spectrum white;
    Double3 linear;
};

// Worked apart from the program, from chromaticities alone: the light's x, y at Y = 0.18 through Bradford's cones from
// the white to D65 (0.3127, 0.3290), then BT.709's primaries. Black body of 3200 K: 0.42336, 0.39895; CIE daylight of
// 5500 K: 0.33250, 0.34761; A: 0.44758, 0.40745; FL11: 0.3805, 0.3769; D55: 0.33243, 0.34744. Tabulated at 5 nm they
// are up to 0.0001 off in x and y, which is 0.0005 of red or blue here.
TEST(WhiteBalance, LeavesTheCastOfAnotherLight) {
    const auto casts = std::to_array<Cast>(
        {{"tungsten under flash", planck_spectrum(3200.0), daylight_spectrum(5500.0), {0.28195, 0.15851, 0.07385}},
         {"flash under tungsten", daylight_spectrum(5500.0), planck_spectrum(3200.0), {0.08223, 0.20024, 0.40514}},
         {"A under D65", *cie_illuminant("A"), *cie_illuminant("D65"), {0.33217, 0.14869, 0.04198}},
         {"FL11 under D55", *cie_illuminant("FL11"), *cie_illuminant("D55"), {0.2348, 0.16891, 0.1179}}});
    for (const Cast& cast : casts) {
        const Vec3 grey = card_under(0.18F, cast.light, cast.white);
        for (int channel = 0; channel < 3; ++channel) {
            EXPECT_NEAR(static_cast<double>(grey[channel]), cast.linear[channel], 5e-4)
                << cast.what << ", channel " << channel;
        }
    }
}

// The same as it shows: a grey card that would be 118 is 145, 111, 77 under a tungsten lamp when the camera is set to
// flash, an orange; half a code of each for the rounding above.
TEST(WhiteBalance, ShowsTungstenOrangeUnderFlash) {
    const Codes codes = codes_of(card_under(0.18F, planck_spectrum(3200.0), daylight_spectrum(5500.0)));
    EXPECT_EQ(codes, (Codes{145, 111, 77}));
}

}  // namespace
}  // namespace understudy
