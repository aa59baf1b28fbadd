#include "references.h"

#include <filesystem>

#include "film/picture_file.h"
#include "transport/render.h"

namespace understudy {

Film traced(const Rehearsal& rehearsal, int samples, unsigned seed) {
    RenderOptions options;
    options.samples = samples;
    options.seed = seed;
    return render_film(rehearsal.studio, *rehearsal.stage, options).film;
}

FilmCard bench_card(Rehearsal& rehearsal) {
    const auto lit = light_rehearsal(rehearsal);
    if (!lit) fail_bench(lit.problems());
    return quick_card(rehearsal, *lit);
}

Film reference_of(const std::string& name, const Rehearsal& rehearsal, const FilmCard& card, int samples) {
    const auto file = std::filesystem::path(UNDERSTUDY_BENCH_DIR) / (name + ".exr");
    const std::string text = card_text(card);
    if (std::filesystem::exists(file)) {
        auto kept = read_film(file);
        if (kept && kept->scene_text == text && kept->film.samples == samples) return std::move(kept->film);
    }
    std::filesystem::create_directories(file.parent_path());
    Film film = traced(rehearsal, samples, 1);
    if (const auto written = write_film(file, film, text); !written) fail_bench(written.problems());
    return film;
}

double squared_error(const Picture& picture, const Picture& reference) {
    double sum = 0.0;
    for (std::size_t i = 0; i < picture.pixels.size(); ++i) {
        const glm::dvec3 wanted(reference.pixels[i]);
        const glm::dvec3 off = glm::dvec3(picture.pixels[i]) - wanted;
        sum += glm::dot(off, off) / (glm::dot(wanted, wanted) + 0.01);
    }
    return sum / static_cast<double>(picture.pixels.size());
}

}  // namespace understudy
