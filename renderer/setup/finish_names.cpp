#include "setup/finish_names.h"

#include <array>

#include "spectrum/smooth_reflectance.h"

namespace understudy {
namespace {

// A paper's colour as its sRGB codes. Of our own making, by eye: no paper was measured, and the reflectance is a smooth
// one that has this colour.
Finish paper(const std::array<int, 3>& codes) {
    const auto linear = [&](std::size_t i) { return decode_srgb(static_cast<double>(codes[i]) / 255.0); };
    const Xyz colour = xyz_of_linear_srgb({linear(0), linear(1), linear(2)});
    return Tint{*smooth_reflectance(lab_of(colour, kD65White))};
}

}  // namespace

const NamedFinishes& plain_finishes() {
    // Greys: common practice, no source, except the middle one: 0.18 is the reflectance that the scene file's exposure
    // is defined by.
    static const NamedFinishes kFinishes = {
        {"white", Reflectance{0.9}},          {"light-grey", Reflectance{0.5}},
        {"grey", Reflectance{0.18}},          {"mid-grey", Reflectance{0.18}},
        {"dark-grey", Reflectance{0.08}},     {"black", Reflectance{0.04}},
        {"silver", Metal::kSilver},           {"gold", Metal::kGold},
        {"cream", paper({238, 226, 200})},    {"sand", paper({206, 182, 142})},
        {"terracotta", paper({176, 92, 64})}, {"burgundy", paper({98, 28, 40})},
        {"olive", paper({100, 100, 58})},     {"forest-green", paper({34, 74, 50})},
        {"sky-blue", paper({150, 194, 224})}, {"navy", paper({30, 40, 80})},
        {"lavender", paper({186, 172, 214})}, {"rose", paper({224, 162, 166})},
        {"yellow", paper({238, 200, 50})},
    };
    return kFinishes;
}

const NamedFinishes& cloth_finishes() {
    // By how much they take of light from far behind: 2.2, 1.4, 0.9 and 0.5 stops. The thinner, the more passes between
    // the threads; grid cloth, woven thick, lets nothing by. Common practice, no source.
    static const NamedFinishes kFinishes = {
        {"grid-cloth", Cloth{0.70, 0.22, 0.0}},
        {"diffusion", Cloth{0.55, 0.38, 0.0}},
        {"half-diffusion", Cloth{0.40, 0.45, 0.10}},
        {"quarter-diffusion", Cloth{0.25, 0.45, 0.25}},
    };
    return kFinishes;
}

}  // namespace understudy
