#include "scatter/skin_medium.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "scatter/skin.h"

namespace understudy {

namespace {

constexpr double kPathAt550Nm = 1.0e-3;

const Spectrum& extinction_spectrum() {
    static const Spectrum spectrum =
        Spectrum::tabulate([](float wave) { return 1.0 / skin_mean_free_path_m(static_cast<double>(wave)); });
    return spectrum;
}

// √(1 − α) of the half-space with albedo 0, 1/64 … 1: Chandrasekhar's equation for H solved by iteration at 48 of
// Gauss's places, and the α found by halving. Linear between them the albedo is met within 0.1 %.
// clang-format off
constexpr std::array<float, 65> kRoots = {
    1.000000F, 0.962708F, 0.927126F, 0.893128F, 0.860605F, 0.829455F, 0.799587F, 0.770919F,
    0.743373F, 0.716881F, 0.691379F, 0.666809F, 0.643116F, 0.620251F, 0.598169F, 0.576826F,
    0.556184F, 0.536207F, 0.516860F, 0.498112F, 0.479933F, 0.462297F, 0.445177F, 0.428549F,
    0.412391F, 0.396683F, 0.381403F, 0.366534F, 0.352057F, 0.337957F, 0.324218F, 0.310825F,
    0.297765F, 0.285023F, 0.272589F, 0.260449F, 0.248594F, 0.237012F, 0.225693F, 0.214628F,
    0.203807F, 0.193223F, 0.182867F, 0.172730F, 0.162806F, 0.153088F, 0.143569F, 0.134242F,
    0.125101F, 0.116140F, 0.107353F, 0.098736F, 0.090282F, 0.081988F, 0.073847F, 0.065856F,
    0.058011F, 0.050306F, 0.042738F, 0.035303F, 0.027998F, 0.020818F, 0.013761F, 0.006823F,
    0.000000F,
};
// clang-format on

// κ over s = √(1 − α), in which it is smooth.
class DecayTable {
  public:
    DecayTable() {
        for (std::size_t i = 0; i < kCount; ++i) {
            const double root = static_cast<double>(i) / static_cast<double>(kCount - 1);
            const double alpha = 1.0 - root * root;
            double low = 0.0;
            double high = 1.0;
            for (int step = 0; step < 40; ++step) {
                const double middle = 0.5 * (low + high);
                (middle > alpha * std::atanh(middle) ? low : high) = middle;
            }
            decays_[i] = static_cast<float>(low);
        }
    }
    float at(float root) const {
        const float place = root * static_cast<float>(kCount - 1);
        const std::size_t index = std::min(static_cast<std::size_t>(place), kCount - 2);
        const float share = place - static_cast<float>(index);
        return decays_[index] + share * (decays_[index + 1] - decays_[index]);
    }

  private:
    static constexpr std::size_t kCount = 256;
    std::array<float, kCount> decays_{};
};

}  // namespace

double skin_mean_free_path_m(double nm) {
    return kPathAt550Nm * dermis_scattering_per_cm(550.0) / dermis_scattering_per_cm(nm);
}

Four single_scattering(const Four& albedo) {
    Four result{};
    for (int i = 0; i < 4; ++i) {
        const float place = albedo[i] * static_cast<float>(kRoots.size() - 1);
        const std::size_t index = std::min(static_cast<std::size_t>(place), kRoots.size() - 2);
        const float share = place - static_cast<float>(index);
        const float s = kRoots[index] + share * (kRoots[index + 1] - kRoots[index]);
        result[i] = 1.0F - s * s;
    }
    return result;
}

float diffuse_decay(float single_scattering) {
    static const DecayTable table;
    return table.at(std::sqrt(std::max(0.0F, 1.0F - single_scattering)));
}

SkinMedium skin_medium(const Light4& albedo, const Waves& waves) {
    return {single_scattering(four_of(albedo)), four_of(at(extinction_spectrum(), waves))};
}

}  // namespace understudy
