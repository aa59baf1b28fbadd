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

namespace {

// So many paths a pixel come as near to the truth as the cleaned picture does, which misses the same things however
// many there are. Measured on portraits against pictures of many samples: see DEVELOPERS.md.
constexpr double kAsGoodAsLearned = 256.0;
constexpr double kAsGoodAsFiltered = 64.0;

Vec3 sum_of_numbers(const Picture& picture) {
    glm::dvec3 sum(0.0);
    for (const Vec3& pixel : picture.pixels) {
        if (is_number(pixel)) sum += glm::dvec3(pixel);
    }
    return {sum};
}

// The network is a few hundredths too dark or too bright now and then. The traced picture as a whole is not.
Picture as_bright_as(const Picture& traced, Picture clean) {
    const Vec3 wanted = sum_of_numbers(traced);
    const Vec3 got = sum_of_numbers(clean);
    Vec3 ratio(1.0F);
    for (glm::length_t c = 0; c < 3; ++c) ratio[c] = wanted[c] > 0.0F && got[c] > 0.0F ? wanted[c] / got[c] : 1.0F;
    for (Vec3& pixel : clean.pixels) pixel *= ratio;
    return clean;
}

// So many times the other one on top.
Picture sum_of(Picture picture, float times, const Picture& other) {
    for (std::size_t i = 0; i < picture.pixels.size(); ++i) picture.pixels[i] += times * other.pixels[i];
    return picture;
}

// Of two estimates whose errors have nothing to do with each other, the best mean weighs each by the other's.
Picture mixed(const Picture& traced, const Picture& clean, double samples, double as_good) {
    Picture result = clean;
    const auto kept = static_cast<float>(samples / (samples + as_good));
    for (std::size_t i = 0; i < result.pixels.size(); ++i) {
        result.pixels[i] += kept * (traced.pixels[i] - clean.pixels[i]);
    }
    return result;
}

}  // namespace

Picture Denoiser::clean(const Film& film, const Developing& developing) const {
    Picture traced = develop(film, developing);
    if (film.features.samples < kLeastSamples) return traced;
    // Catchlights are a few bright pixels beside dark ones, as noise is, but they have none: they stay as they are.
    const Picture glints = develop_glints(film, developing);
    traced = sum_of(std::move(traced), -1.0F, glints);
    const Features features = features_of(film, developing);
    if (!network_) {
        Picture clean = denoise_a_trous(traced, features, film.samples);
        return sum_of(mixed(traced, clean, film.samples, kAsGoodAsFiltered), 1.0F, glints);
    }
    Picture clean = denoise_learned(*network_, traced, features);
    if (developing.treatment == Treatment::kBlackAndWhite) {
        // The network knows nothing of greys that have to stay grey.
        for (Vec3& pixel : clean.pixels) pixel = Vec3((pixel.x + pixel.y + pixel.z) / 3.0F);
    }
    clean = as_bright_as(traced, std::move(clean));
    return sum_of(mixed(traced, clean, film.samples, kAsGoodAsLearned), 1.0F, glints);
}

}  // namespace understudy
