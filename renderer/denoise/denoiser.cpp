#include "denoise/denoiser.h"

#include <utility>

#include "denoise/a_trous.h"
#include "denoise/learned.h"

namespace understudy {

Expected<Denoiser> Denoiser::open(const std::filesystem::path& weights) {
    Denoiser denoiser;
    if (!std::filesystem::exists(weights)) return denoiser;
    const auto read = read_weights(weights);
    if (!read) return read.problems();
    auto network = Network::of(*read, weights.string());
    if (!network) return network.problems();
    denoiser.network_.emplace(std::move(*network));
    return denoiser;
}

Picture Denoiser::clean(const Film& film, const Developing& developing) const {
    Picture picture = develop(film, developing);
    if (film.samples < kLeastSamples) return picture;
    const Features features = features_of(film, developing);
    return network_ ? denoise_learned(*network_, picture, features) : denoise_a_trous(picture, features, film.samples);
}

}  // namespace understudy
