#include "rehearsal/laid_film.h"

namespace understudy {

namespace {

template <class Pixel>
std::vector<Pixel> thinned(const std::vector<Pixel>& pixels, const Film& film, int every) {
    if (every == 1) return pixels;
    const auto some = [&](int length) { return static_cast<std::size_t>((length + every - 1) / every); };
    std::vector<Pixel> thin;
    thin.reserve(some(film.width) * some(film.height));
    for (int y = 0; y < film.height; y += every) {
        for (int x = 0; x < film.width; x += every) {
            thin.push_back(pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(film.width) +
                                  static_cast<std::size_t>(x)]);
        }
    }
    return thin;
}

// What the camera saw before, which more paths have told of. Where nothing is now, or was before, it looks anew, and
// tells no distance, so that the next film that is laid over this one looks there too.
FilmFeatures seen_before(const Film& before, const FilmFeatures& now, int every) {
    FilmFeatures seen;
    seen.albedo = thinned(before.features.albedo, before, every);
    seen.normal = thinned(before.features.normal, before, every);
    seen.depth_m = thinned(before.features.depth_m, before, every);
    seen.samples = before.features.samples;
    for (std::size_t i = 0; i < seen.depth_m.size(); ++i) {
        if (seen.depth_m[i] > 0.0F && now.depth_m[i] > 0.0F) continue;
        seen.albedo[i] = now.albedo[i];
        seen.normal[i] = now.normal[i];
        seen.depth_m[i] = 0.0F;
    }
    return seen;
}

}  // namespace

Film laid_over(const Film& before, const Film& traced, LayerBits layers, int every) {
    Film laid;
    laid.width = traced.width;
    laid.height = traced.height;
    laid.samples = traced.samples;
    for (std::size_t l = 0; l < traced.layers.size(); ++l) {
        const FilmLayer& known = before.layers[l];
        const bool is_traced = (layers >> l & 1U) != 0;
        laid.layers.push_back(is_traced ? traced.layers[l]
                                        : FilmLayer{known.light, thinned(known.pixels, before, every),
                                                    thinned(known.glints, before, every)});
    }
    const bool knew_more = before.features.samples > traced.features.samples;
    laid.features = knew_more ? seen_before(before, traced.features, every) : traced.features;
    return laid;
}

}  // namespace understudy
