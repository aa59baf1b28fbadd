// A clean picture from a noisy film.
#pragma once

#include <filesystem>
#include <optional>

#include "denoise/network.h"
#include "film/develop.h"

namespace understudy {

// With fewer paths a pixel there is hardly anything to tell light from noise by.
inline constexpr int kLeastSamples = 2;

class Denoiser {
  public:
    // Trained weights in this file are used when it is there; a damaged one is a problem.
    static Expected<Denoiser> open(const std::filesystem::path& weights);

    bool is_learned() const { return network_.has_value(); }

    // develop(), without its noise. The more samples the film has, the more of what they found is kept as it is; all of
    // it when its features are of fewer than kLeastSamples.
    Picture clean(const Film& film, const Developing& developing) const;

  private:
    std::optional<Network> network_;
};

}  // namespace understudy
