// A hair as a picture sees it, which cannot tell where across its width a path meets it.
#pragma once

#include "scatter/hair_fibre.h"

namespace understudy {

// A fibre thinner than a picture can tell, as one path meets it: the mean over places evenly spread across it, of which
// the path's own is one. Where a path meets a hair across its width is pure chance, so the mean over paths is the same,
// and the white highlight, which leaves to another side from every place, is far less noisy.
inline constexpr std::size_t kPlacesAcross = 4;
struct WholeFibre : FibreAlong {
    // Of each lobe, at each place: see FibreApproach.
    std::array<Four, kFibreLobes> turn{};
    std::array<Four, kFibreLobes> chance{};
    std::array<std::array<Light4, kPlacesAcross>, kFibreLobes> share{};
};

WholeFibre approach_whole_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves,
                                float blur = 0.0F);
FibreValue fibre_value(const WholeFibre& from, const Vec3& wi);
FibreSample sample_fibre(const WholeFibre& from, const Vec3& u);

inline Light4 fibre_albedo(const WholeFibre& from) {
    Light4 sum(0.0F);
    for (const auto& lobe : from.share) {
        for (const Light4& share : lobe) sum += share;
    }
    return sum / static_cast<float>(kPlacesAcross);
}

}  // namespace understudy
