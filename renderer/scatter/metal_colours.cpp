// Reflectances of bare metals from their measured complex indices.
#include <array>
#include <cstddef>

#include "scatter/fresnel.h"
#include "scatter/rough_metal.h"

namespace understudy {
namespace {

struct ComplexIndex {
    double energy_ev;
    double n;
    double k;
};

// Johnson and Christy, "Optical Constants of the Noble Metals", Phys. Rev. B 6, 1972, table I; written down from
// memory.
constexpr std::array<ComplexIndex, 16> kGold = {{{1.51, 0.16, 5.083},
                                                 {1.64, 0.14, 4.542},
                                                 {1.76, 0.13, 4.103},
                                                 {1.88, 0.14, 3.697},
                                                 {2.01, 0.21, 3.272},
                                                 {2.14, 0.29, 2.863},
                                                 {2.26, 0.43, 2.455},
                                                 {2.38, 0.62, 2.081},
                                                 {2.50, 1.04, 1.833},
                                                 {2.63, 1.31, 1.849},
                                                 {2.75, 1.38, 1.914},
                                                 {2.88, 1.45, 1.948},
                                                 {3.00, 1.46, 1.958},
                                                 {3.12, 1.47, 1.952},
                                                 {3.25, 1.46, 1.933},
                                                 {3.37, 1.48, 1.895}}};

constexpr std::array<ComplexIndex, 16> kSilver = {{{1.51, 0.04, 5.727},
                                                   {1.64, 0.03, 5.242},
                                                   {1.76, 0.04, 4.838},
                                                   {1.88, 0.05, 4.483},
                                                   {2.01, 0.06, 4.152},
                                                   {2.14, 0.05, 3.858},
                                                   {2.26, 0.06, 3.586},
                                                   {2.38, 0.05, 3.324},
                                                   {2.50, 0.05, 3.093},
                                                   {2.63, 0.05, 2.869},
                                                   {2.75, 0.04, 2.657},
                                                   {2.88, 0.04, 2.462},
                                                   {3.00, 0.05, 2.275},
                                                   {3.12, 0.05, 2.070},
                                                   {3.25, 0.05, 1.864},
                                                   {3.37, 0.07, 1.657}}};

// Linear in the photon's energy between the measured points.
Spectrum reflectance_of(const std::array<ComplexIndex, 16>& table) {
    return Spectrum::tabulate([&table](float nm) {
        constexpr double kEvNm = 1239.84198;  // h c / e
        const double energy = kEvNm / static_cast<double>(nm);
        std::size_t i = 0;
        while (i + 2 < table.size() && table[i + 1].energy_ev < energy) ++i;
        const ComplexIndex& a = table[i];
        const ComplexIndex& b = table[i + 1];
        const double share = (energy - a.energy_ev) / (b.energy_ev - a.energy_ev);
        return conductor_normal_reflectance(a.n + share * (b.n - a.n), a.k + share * (b.k - a.k));
    });
}

}  // namespace

Spectrum silver_reflectance() { return reflectance_of(kSilver); }

Spectrum gold_reflectance() { return reflectance_of(kGold); }

}  // namespace understudy
