#include "spectrum/illuminant.h"

#include <array>
#include <cassert>
#include <cmath>

#include "spectrum/cie_tables.h"
#include "spectrum/lamp_tables.h"

namespace understudy {
namespace {

constexpr double kSecondRadiationConstant = 1.438776877e-2;  // m·K, CODATA 2018
constexpr double kColdestDaylight = 4000.0;                  // K
constexpr double kHottestDaylight = 25000.0;                 // K

// The D illuminants were named when the second radiation constant was 1.4380e-2 m·K; CIE 15:2004 section 3.1.
constexpr double kNominalDaylight = 1.4388 / 1.4380;

struct DaylightShares {
    double first = 0.0;
    double second = 0.0;
};

// CIE 15:2004 equations 3.3 to 3.6.
DaylightShares daylight_shares(double kelvin) {
    const double t = 1000.0 / kelvin;
    const double x = kelvin <= 7000.0 ? ((-4.6070 * t + 2.9678) * t + 0.09911) * t + 0.244063
                                      : ((-2.0064 * t + 1.9018) * t + 0.24748) * t + 0.237040;
    const double y = (-3.000 * x + 2.870) * x - 0.275;
    const double divisor = 0.0241 + 0.2562 * x - 0.7341 * y;
    return {(-1.3515 - 1.7703 * x + 5.9114 * y) / divisor, (0.0300 - 31.4424 * x + 30.0717 * y) / divisor};
}

Spectrum daylight(const DaylightShares& shares) {
    Spectrum result;
    for (std::size_t i = 0; i < Spectrum::kCount; ++i) {
        result[i] = static_cast<float>(static_cast<double>(kDaylightS0[i]) +
                                       shares.first * static_cast<double>(kDaylightS1[i]) +
                                       shares.second * static_cast<double>(kDaylightS2[i]));
    }
    return result;
}

// The CIE's tables of the named ones come from shares rounded to three decimals; CIE 15:2004 section 3.1, note.
Spectrum nominal_daylight(double nominal_kelvin) {
    const DaylightShares shares = daylight_shares(nominal_kelvin * kNominalDaylight);
    return daylight({std::round(shares.first * 1000.0) / 1000.0, std::round(shares.second * 1000.0) / 1000.0});
}

// Illuminant A is defined by this formula and this constant; ISO 11664-2:2007.
Spectrum illuminant_a() {
    constexpr double kExponent = 1.435e7 / 2848.0;  // nm
    return Spectrum::tabulate([](float nm) {
        const auto wave = static_cast<double>(nm);
        return 100.0 * std::pow(560.0 / wave, 5.0) * std::expm1(kExponent / 560.0) / std::expm1(kExponent / wave);
    });
}

struct NamedIlluminant {
    std::string_view name;
    Spectrum (*make)();
};

constexpr std::array<NamedIlluminant, 24> kIlluminants = {{
    {"A", illuminant_a},
    {"D50", [] { return nominal_daylight(5000.0); }},
    {"D55", [] { return nominal_daylight(5500.0); }},
    {"D65", [] { return nominal_daylight(6500.0); }},
    {"D75", [] { return nominal_daylight(7500.0); }},
    {"E", [] { return Spectrum(100.0F); }},
    {"F2", [] { return Spectrum(kFluorescentFl2); }},  // what CIE 13.3 called the FL ones
    {"F7", [] { return Spectrum(kFluorescentFl7); }},
    {"F11", [] { return Spectrum(kFluorescentFl11); }},
    {"FL2", [] { return Spectrum(kFluorescentFl2); }},
    {"FL7", [] { return Spectrum(kFluorescentFl7); }},
    {"FL11", [] { return Spectrum(kFluorescentFl11); }},
    {"LED-B1", [] { return Spectrum(kLedB1); }},
    {"LED-B2", [] { return Spectrum(kLedB2); }},
    {"LED-B3", [] { return Spectrum(kLedB3); }},
    {"LED-B4", [] { return Spectrum(kLedB4); }},
    {"LED-B5", [] { return Spectrum(kLedB5); }},
    {"LED-BH1", [] { return Spectrum(kLedBh1); }},
    {"LED-RGB1", [] { return Spectrum(kLedRgb1); }},
    {"LED-V1", [] { return Spectrum(kLedV1); }},
    {"LED-V2", [] { return Spectrum(kLedV2); }},
    {"xenon-flash", [] { return spectrum_of(kIso7589Daylight); }},
    {"studio-tungsten", [] { return spectrum_of(kIso7589Tungsten); }},
    {"photoflood", [] { return spectrum_of(kIso7589Photoflood); }},
}};

}  // namespace

Spectrum planck_spectrum(double kelvin) {
    assert(kelvin > 0.0);
    const double exponent = kSecondRadiationConstant * 1e9 / kelvin;  // nm
    return Spectrum::tabulate([exponent](float nm) {
        const auto wave = static_cast<double>(nm);
        return 100.0 * std::pow(560.0 / wave, 5.0) * std::expm1(exponent / 560.0) / std::expm1(exponent / wave);
    });
}

Spectrum daylight_spectrum(double kelvin) {
    assert(kelvin >= kColdestDaylight && kelvin <= kHottestDaylight);
    return daylight(daylight_shares(kelvin));
}

Spectrum spectrum_of_temperature(double kelvin) {
    if (kelvin < kColdestDaylight || kelvin > kHottestDaylight) return planck_spectrum(kelvin);
    return daylight_spectrum(kelvin);
}

std::optional<Spectrum> cie_illuminant(std::string_view name) {
    for (const NamedIlluminant& illuminant : kIlluminants) {
        if (illuminant.name == name) return illuminant.make();
    }
    return std::nullopt;
}

std::vector<std::string> cie_illuminant_names() {
    std::vector<std::string> names;
    names.reserve(kIlluminants.size());
    for (const NamedIlluminant& illuminant : kIlluminants) names.emplace_back(illuminant.name);
    return names;
}

}  // namespace understudy
