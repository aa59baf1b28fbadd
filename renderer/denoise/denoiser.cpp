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
    if (!network_) return denoise_a_trous(picture, features, film.samples);
    Picture clean = denoise_learned(*network_, picture, features);
    if (developing.treatment == Treatment::kBlackAndWhite) {
        // The network knows nothing of greys that have to stay grey.
        for (Vec3& pixel : clean.pixels) pixel = Vec3((pixel.x + pixel.y + pixel.z) / 3.0F);
    }
    return clean;
}

}  // namespace understudy
