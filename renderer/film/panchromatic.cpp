#include "film/panchromatic.h"

#include <array>

namespace understudy {
namespace {

struct Sensitivity {
    float nm;
    float value;
};

constexpr std::array<Sensitivity, 17> kCurve = {{{380.0F, 0.35F},
                                                 {400.0F, 0.60F},
                                                 {420.0F, 0.80F},
                                                 {440.0F, 0.90F},
                                                 {460.0F, 0.92F},
                                                 {480.0F, 0.88F},
                                                 {500.0F, 0.82F},
                                                 {520.0F, 0.80F},
                                                 {540.0F, 0.84F},
                                                 {560.0F, 0.90F},
                                                 {580.0F, 0.96F},
                                                 {600.0F, 1.00F},
                                                 {620.0F, 0.98F},
                                                 {640.0F, 0.80F},
                                                 {660.0F, 0.25F},
                                                 {680.0F, 0.00F},
                                                 {780.0F, 0.00F}}};

float sensitivity(float nm) {
    for (std::size_t i = 1; i < kCurve.size(); ++i) {
        const Sensitivity& low = kCurve[i - 1];
        const Sensitivity& high = kCurve[i];
        if (nm <= high.nm) return low.value + (nm - low.nm) / (high.nm - low.nm) * (high.value - low.value);
    }
    return 0.0F;
}

}  // namespace

const Spectrum& panchromatic_response() {
    static const Spectrum kResponse = Spectrum::tabulate(sensitivity);
    return kResponse;
}

}  // namespace understudy
