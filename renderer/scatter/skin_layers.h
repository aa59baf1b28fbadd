// skin_albedo for any melanin and blood at any wavelength, from tables: of the epidermis over its melanin, of the
// dermis over its blood. Their two fluxes are put together at each look-up, so nothing has to be tabulated over both.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "spectrum/spectrum.h"

namespace understudy {

class SkinLayers {
  public:
    // Tabulates once for the program.
    static const SkinLayers& common();

    // Where two shares lie in the tables.
    struct Mixture {
        std::size_t melanin, blood;  // the lower node
        float melanin_on, blood_on;  // on the way to the next, 0 … 1
    };
    // melanin in [0, 0.5], blood in [0, 0.2].
    Mixture mixture(float melanin, float blood) const;

    // As skin_albedo, nm in [380, 780].
    float albedo(const Mixture& mixture, float nm) const;

  private:
    SkinLayers();
    static constexpr std::size_t kNodes = 49;  // even in the root of the share

    struct Epidermis {
        float reflectance, transmittance;
    };
    struct Wave {
        std::array<Epidermis, kNodes> epidermis;
        std::array<float, kNodes> dermis;
    };

    std::vector<Wave> waves_;  // one a step of a Spectrum
    float internal_ = 0.0F;
};

}  // namespace understudy
