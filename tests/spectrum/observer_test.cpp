#include "spectrum/observer.h"

#include <gtest/gtest.h>

#include <array>

#include "spectrum/colour.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

struct ObserverRow {
    float nm;
    float x;
    float y;
    float z;
};

// CIE 1931 standard observer, CIE 15:2004 table T.4, every 20 nm.
constexpr auto kRows = std::to_array<ObserverRow>({{400, .01431F, .000396F, .06785F},
                                                   {420, .13438F, .004F, .6456F},
                                                   {440, .34828F, .023F, 1.74706F},
                                                   {460, .2908F, .06F, 1.6692F},
                                                   {480, .09564F, .13902F, .81295F},
                                                   {500, .0049F, .323F, .272F},
                                                   {520, .06327F, .71F, .07825F},
                                                   {540, .2904F, .954F, .0203F},
                                                   {560, .5945F, .995F, .0039F},
                                                   {580, .9163F, .87F, .00165F},
                                                   {600, 1.0622F, .631F, .0008F},
                                                   {620, .85445F, .381F, .00019F},
                                                   {640, .4479F, .175F, .00002F},
                                                   {660, .1649F, .061F, 0},
                                                   {680, .04677F, .017F, 0},
                                                   {700, .011359F, .004102F, 0}});

TEST(Observer, HasTheCiesValues) {
    for (const ObserverRow& row : kRows) {
        EXPECT_NEAR(observer_x().at(row.nm), row.x, 1e-6F) << row.nm;
        EXPECT_NEAR(observer_y().at(row.nm), row.y, 1e-6F) << row.nm;
        EXPECT_NEAR(observer_z().at(row.nm), row.z, 1e-6F) << row.nm;
    }
}

// The table's own column sums at 1 nm, 106.8655, 106.8569 and 106.8923, contain 360–380 and 780–830 nm as well; at 5 nm
// over 380–780 nm the three agree to 0.001 because the observer was made so that equal energy is neutral.
TEST(Observer, SeesEqualEnergyAsNeutral) {
    const double x = integral(observer_x(), 380.0, 780.0);
    const double y = integral(observer_y(), 380.0, 780.0);
    const double z = integral(observer_z(), 380.0, 780.0);
    EXPECT_NEAR(x, 106.8655, 0.04);
    EXPECT_NEAR(y, 106.8569, 0.01);
    EXPECT_NEAR(z, 106.8923, 0.06);
    EXPECT_NEAR(x, y, 0.01);
    EXPECT_NEAR(z, y, 0.02);
}

TEST(Observer, NormalisesAnyLightToOneLumen) {
    for (const std::string& name : cie_illuminant_names()) {
        EXPECT_NEAR(xyz_of(normalised_to_luminance(*cie_illuminant(name))).y, 1.0, 1e-6) << name;
    }
}

// What the range that paths carry leaves out of a lamp's luminance; 0.03 % is the header's promise.
TEST(Observer, LosesLittleBeyondTheRangeOfPaths) {
    for (const std::string& name : cie_illuminant_names()) {
        const Spectrum luminous = *cie_illuminant(name) * observer_y();
        EXPECT_LT(1.0 - integral(luminous) / integral(luminous, 380.0, 780.0), 3e-4) << name;
    }
}

}  // namespace
}  // namespace understudy
