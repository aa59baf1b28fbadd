#include "spectrum/gel.h"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <limits>
#include <span>

#include "spectrum/colour_temperature.h"
#include "spectrum/illuminant.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

// What a clear film lets through: (1 − R)/(1 + R) for two faces with Fresnel's R = ((n − 1)/(n + 1))², n = 1.57 of
// polyester.
constexpr double kFace = (0.57 / 2.57) * (0.57 / 2.57);
constexpr double kClearFilm = (1.0 - kFace) / (1.0 + kFace);

double inverse_micrometres(float nm) { return 1000.0 / static_cast<double>(nm); }

// ---- by mired -----------------------------------------------------------------------------------------------------

// Where the density of a correcting gel runs out, and over how wide a range of 1/λ it bends. Chosen so that the shifted
// light stays within 0.002 in u, v of its distance from the black bodies, and so that a full gel loses what full gels
// lose: 2/3 to 1.1 stops warm, about 1.5 cool (common practice, no source).
constexpr float kWarmKnee = 630.0F;  // nm
constexpr float kCoolKnee = 450.0F;  // nm
constexpr double kBend = 0.08;       // 1/µm

// A straight line that bends to 0 at the left end: ln(1 + eˣ).
double softened(double x) { return x > 0.0 ? x + std::log1p(std::exp(-x)) : std::log1p(std::exp(x)); }

// slope: of the natural density over 1/λ, in µm.
Spectrum correcting_gel(double slope, bool warm) {
    const double knee = inverse_micrometres(warm ? kWarmKnee : kCoolKnee);
    return Spectrum::tabulate([=](float nm) {
        const double beyond = (warm ? 1.0 : -1.0) * (inverse_micrometres(nm) - knee);
        return kClearFilm * std::exp(-slope * kBend * softened(beyond / kBend));
    });
}

// How far past the isotherm of a temperature a colour lies, toward warmer, in u, v: a colour has this correlated
// temperature when it is on the line square to the black bodies' line there.
class Isotherm {
  public:
    explicit Isotherm(double mireds)
        : foot_(uniform_chromaticity_of(xyz_of(planck_spectrum(kelvin_of_mired(mireds))))) {
        constexpr double kStep = 0.05;  // mired
        const UniformChromaticity cooler =
            uniform_chromaticity_of(xyz_of(planck_spectrum(kelvin_of_mired(mireds - kStep))));
        const UniformChromaticity warmer =
            uniform_chromaticity_of(xyz_of(planck_spectrum(kelvin_of_mired(mireds + kStep))));
        along_ = {warmer.u - cooler.u, warmer.v - cooler.v};
    }

    bool is_passed_by(const UniformChromaticity& colour) const {
        return (colour.u - foot_.u) * along_.u + (colour.v - foot_.v) * along_.v > 0.0;
    }

  private:
    UniformChromaticity foot_;
    UniformChromaticity along_;
};

// The slope that shifts its own light by just so much: found by halving, for more slope always shifts more.
Spectrum shifting_gel(double mired_shift) {
    const bool warm = mired_shift > 0.0;
    const Spectrum light = spectrum_of_temperature(warm ? kWarmGelsLight : kCoolGelsLight);
    const auto temperature = nearest_colour_temperature(xyz_of(light));
    assert(temperature);  // both lights are close to a black body
    const Isotherm wanted(mired(temperature->kelvin) + mired_shift);
    double low = 0.0;
    double high = 40.0;  // µm; Wien's straight line for 300 mired has 4.3
    for (int i = 0; i < 50; ++i) {
        const double slope = 0.5 * (low + high);
        const bool warmer = wanted.is_passed_by(uniform_chromaticity_of(xyz_of(light * correcting_gel(slope, warm))));
        (warmer == warm ? high : low) = slope;
    }
    return correcting_gel(0.5 * (low + high), warm);
}

// ---- plain colours ------------------------------------------------------------------------------------------------

// A dye absorbs between two wavelengths, with soft edges.
struct DyeBand {
    double from_nm = 0.0;
    double to_nm = 0.0;
    double density = 0.0;  // decadic, in the middle
};

constexpr double kShortEnd = 0.0;  // nm, far outside the range: absorbs from its beginning
constexpr double kLongEnd = 2000.0;
constexpr double kDyeEdge = 9.0;  // nm; the density goes from 12 % to 88 % within four of these

double edge(double nm) { return 1.0 / (1.0 + std::exp(-nm / kDyeEdge)); }

Spectrum dyed_film(std::span<const DyeBand> bands) {
    return Spectrum::tabulate([bands](float wave) {
        const auto nm = static_cast<double>(wave);
        double density = 0.0;
        for (const DyeBand& band : bands) density += band.density * edge(nm - band.from_nm) * edge(band.to_nm - nm);
        return kClearFilm * std::pow(10.0, -density);
    });
}

struct PlainColour {
    std::string_view name;
    std::array<DyeBand, 2> bands;
};

constexpr std::array<PlainColour, 10> kPlainColours = {{
    {"red", {{{kShortEnd, 595.0, 3.0}}}},
    {"orange", {{{kShortEnd, 565.0, 2.5}}}},
    {"amber", {{{kShortEnd, 540.0, 2.0}}}},
    {"yellow", {{{kShortEnd, 495.0, 2.0}}}},
    {"green", {{{kShortEnd, 490.0, 2.0}, {575.0, kLongEnd, 1.8}}}},
    {"cyan", {{{585.0, kLongEnd, 1.3}}}},
    {"blue", {{{500.0, kLongEnd, 2.0}}}},
    {"magenta", {{{490.0, 605.0, 2.0}}}},
    {"lavender", {{{500.0, 620.0, 0.4}}}},
    {"pink", {{{470.0, 595.0, 0.35}}}},
}};

struct NamedShift {
    std::string_view name;
    double mireds = 0.0;
};

constexpr std::array<NamedShift, 8> kNamedShifts = {{{"full-warm", kFullShift},
                                                     {"half-warm", kHalfShift},
                                                     {"quarter-warm", kQuarterShift},
                                                     {"eighth-warm", kEighthShift},
                                                     {"full-cool", -kFullShift},
                                                     {"half-cool", -kHalfShift},
                                                     {"quarter-cool", -kQuarterShift},
                                                     {"eighth-cool", -kEighthShift}}};

// ---- by a number --------------------------------------------------------------------------------------------------

// The number between two fixed parts of a name; NaN, which lies in no range, if the name is not made so.
double number_in(std::string_view name, std::string_view before, std::string_view after) {
    constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
    if (name.size() <= before.size() + after.size() || !name.starts_with(before) || !name.ends_with(after)) {
        return kNone;
    }
    const std::string_view digits = name.substr(before.size(), name.size() - before.size() - after.size());
    double number = 0.0;
    const char* last = digits.data() + digits.size();
    const auto [end, error] = std::from_chars(digits.data(), last, number, std::chars_format::fixed);
    return error == std::errc() && end == last ? number : kNone;
}

std::optional<Spectrum> gel_by_number(std::string_view name) {
    const double warmer = number_in(name, "warm-", "");
    if (warmer >= 1.0 && warmer <= 300.0) return shifting_gel(warmer);
    const double cooler = number_in(name, "cool-", "");
    if (cooler >= 1.0 && cooler <= 200.0) return shifting_gel(-cooler);
    const double density = number_in(name, "nd-", "");
    if (density >= 0.1 && density <= 4.0) return Spectrum(static_cast<float>(std::pow(10.0, -density)));
    const double stops = name == "nd-1-stop" ? 1.0 : number_in(name, "nd-", "-stops");
    if (stops > 0.0 && stops <= 13.0) return Spectrum(static_cast<float>(std::exp2(-stops)));
    return std::nullopt;
}

}  // namespace

std::optional<Spectrum> gel_transmission(std::string_view name) {
    for (const NamedShift& shift : kNamedShifts) {
        if (shift.name == name) return shifting_gel(shift.mireds);
    }
    for (const PlainColour& colour : kPlainColours) {
        if (colour.name == name) return dyed_film(colour.bands);
    }
    return gel_by_number(name);
}

std::vector<std::string> gel_names() {
    std::vector<std::string> names;
    names.reserve(kNamedShifts.size() + kPlainColours.size());
    for (const NamedShift& shift : kNamedShifts) names.emplace_back(shift.name);
    for (const PlainColour& colour : kPlainColours) names.emplace_back(colour.name);
    return names;
}

Spectrum stacked_transmission(const std::vector<std::string>& gels) {
    Spectrum product(1.0F);
    for (const std::string& name : gels) {
        const std::optional<Spectrum> gel = gel_transmission(name);
        assert(gel);  // whoever took the name has checked it
        product *= *gel;
    }
    return product;
}

double luminous_share(const Spectrum& light, const Spectrum& transmission) {
    return integral(light * transmission * observer_y()) / integral(light * observer_y());
}

}  // namespace understudy
