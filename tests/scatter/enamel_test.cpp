// The colour of teeth.
#include "scatter/enamel.h"

#include <gtest/gtest.h>

#include "spectrum/colour.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

// Upper incisors of living adults: L* 71, b* 17 (Gozalo-Diaz, Johnston and Wee 2008, from memory). That
// they are hardly red is common practice, no source.
TEST(Enamel, HasTheColourOfLivingTeeth) {
    const Spectrum daylight = normalised_to_luminance(*cie_illuminant("D65"));
    const Lab tooth = lab_of(xyz_of(daylight * enamel_albedo()), xyz_of(daylight));
    EXPECT_NEAR(tooth.lightness, 71.0, 1.0);
    EXPECT_NEAR(tooth.b, 17.0, 1.0);
    EXPECT_GT(tooth.a, 0.0);
    EXPECT_LT(tooth.a, 6.0);
}

}  // namespace
}  // namespace understudy
