#include "transport/render.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <mutex>

#include <tbb/blocked_range.h>
#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>
#include <xmmintrin.h>

#include "transport/camera_path.h"
#include "transport/eye_pixels.h"
#include "transport/path_spread.h"
#include "transport/path_tracer.h"
#include "transport/pixel_sums.h"
#include "transport/tiles.h"

namespace understudy {

namespace {

constexpr std::size_t kInStep = 256;  // paths followed together

class Renderer {
  public:
    Renderer(const Studio& studio, const Stage& stage, RenderOptions options)
        : stage_(stage),
          camera_(studio),
          eye_pixels_(camera_, stage.eyes()),
          tracer_(stage),
          options_(std::move(options)),
          width_(studio.setup.picture.width),
          tiles_(studio.setup.picture.width, studio.setup.picture.height),
          spread_(pixels_of(tiles_)) {
        Film& film = rendered_.film;
        film.width = (width_ + options_.every - 1) / options_.every;
        film.height = (studio.setup.picture.height + options_.every - 1) / options_.every;
        for (const LightSettings& light : studio.setup.lights) film.layers.push_back({light.name, {}});
        if (stage.has_ambient()) film.layers.push_back({"ambient", {}});
        for (std::size_t l = 0; l < film.layers.size(); ++l) {
            if (!traces(l)) continue;
            film.layers[l].pixels.resize(film.pixel_count());
            film.layers[l].glints.resize(film.pixel_count());
        }
        film.features.albedo.resize(film.pixel_count());
        film.features.normal.resize(film.pixel_count(), Vec3(0.0F));
        film.features.depth_m.resize(film.pixel_count());
        rendered_.met.resize(film.pixel_count());
        if (options_.look != nullptr) take_over(*options_.look);
    }

    Rendered run() {
        tbb::task_arena arena(options_.threads > 0 ? options_.threads : tbb::task_arena::automatic);
        // Passes double, so that the film is stratified at the end of each: 4, 4, 8, …
        int most = options_.samples;
        while (rendered_.film.samples < options_.samples && !rendered_.cancelled && most > 0) {
            const int done = rendered_.film.samples;
            const int pass = std::min({std::max(done, options_.first_pass), options_.samples - done, most});
            spread_.plan(pass);
            arena.execute([&] { trace_pass(pass); });
            if (rendered_.cancelled) break;
            rendered_.film.samples += pass;
            rendered_.film.features.samples = rendered_.film.samples;
            if (options_.after_pass) most = options_.after_pass(rendered_.film);
        }
        return std::move(rendered_);
    }

  private:
    static bool is_of_look(int x, int y) { return x % kFirstLookEvery == 0 && y % kFirstLookEvery == 0; }

    void take_over(const Rendered& look) {
        Film& film = rendered_.film;
        const Film& thin = look.film;
        assert(options_.every == 1 && thin.samples == std::min(options_.first_pass, options_.samples));
        for (int y = 0; y < thin.height; ++y) {
            for (int x = 0; x < thin.width; ++x) {
                const auto from =
                    static_cast<std::size_t>(y) * static_cast<std::size_t>(thin.width) + static_cast<std::size_t>(x);
                const std::size_t to = pixel_index({kFirstLookEvery * x, kFirstLookEvery * y});
                for (std::size_t l = 0; l < film.layers.size(); ++l) {
                    if (!traces(l)) continue;
                    film.layers[l].pixels[to] = thin.layers[l].pixels[from];
                    film.layers[l].glints[to] = thin.layers[l].glints[from];
                }
                film.features.albedo[to] = thin.features.albedo[from];
                film.features.normal[to] = thin.features.normal[from];
                film.features.depth_m[to] = thin.features.depth_m[from];
                rendered_.met[to] = look.met[from];
            }
        }
        paths_done_ = thin.pixel_count() * static_cast<std::size_t>(thin.samples);
    }

    bool traces(std::size_t layer) const { return (options_.layers >> layer & 1U) != 0; }
    bool cancelled() const { return options_.cancel != nullptr && options_.cancel->load(std::memory_order_relaxed); }

    void trace_pass(int pass) {
        std::atomic<std::uint64_t> rays = 0;
        std::atomic<std::uint64_t> given_up = 0;
        std::atomic<std::uint64_t> non_finite = 0;
        std::atomic<bool> stopped = false;
        tbb::parallel_for(
            tbb::blocked_range<std::size_t>(0, tiles_.count(), 1),
            [&](const tbb::blocked_range<std::size_t>& some) {
                for (std::size_t tile = some.begin(); tile < some.end(); ++tile) {
                    if (cancelled()) {
                        stopped = true;
                        return;
                    }
                    const Counts counts = trace_tile(tile, pass);
                    rays += counts.rays;
                    given_up += counts.given_up;
                    non_finite += counts.non_finite;
                }
            },
            tbb::simple_partitioner());
        rendered_.rays += rays;
        rendered_.given_up += given_up;
        rendered_.non_finite += non_finite;
        rendered_.cancelled = stopped;
    }

    struct Counts {
        std::uint64_t rays = 0;
        std::uint64_t given_up = 0;
        std::uint64_t non_finite = 0;
        double noise = 0.0;  // of all pixels together
    };

    static std::vector<std::size_t> pixels_of(const Tiles& tiles) {
        std::vector<std::size_t> pixels;
        for (std::size_t t = 0; t < tiles.count(); ++t) pixels.push_back(tiles[t].pixel_count());
        return pixels;
    }

    Counts trace_tile(std::size_t tile, int pass) {
        // Numbers too small for a normal float are zero here: they would only slow the processor down.
        const unsigned int before = _mm_getcsr();
        _mm_setcsr(before | 0x8040U);
        Counts counts;
        const PathSpread::Share share = spread_[tile];
        const std::vector<PixelSample> samples = samples_of(tiles_[tile], share);
        RayMemory* memory = memory_of(tile);
        const std::size_t pixels = trace_pixels(samples, pass, memory, counts);
        if (!options_.weights.empty()) {
            // A path that meets nothing is work as well.
            const auto work = static_cast<double>(counts.rays) + static_cast<double>(samples.size());
            spread_.learn(tile, counts.noise / static_cast<double>(pixels), work);
        }
        if (memory != nullptr && rendered_.film.samples + pass >= PictureMemory::kSamples) memory->stop_learning();
        _mm_setcsr(before);
        report(pixels * static_cast<std::size_t>(pass));
        return counts;
    }

    // A pixel's follow each other.
    std::vector<PixelSample> samples_of(const Tile& tile, const PathSpread::Share& share) const {
        const int every = options_.every;
        const bool has_look = options_.look != nullptr && rendered_.film.samples == 0;
        const auto next = [&](int place) { return (place + every - 1) / every * every; };
        std::vector<PixelSample> samples;
        for (int y = next(tile.top); y < tile.bottom; y += every) {
            for (int x = next(tile.left); x < tile.right; x += every) {
                if (has_look && is_of_look(x, y)) continue;
                const bool more = rendered_.film.samples == 0 && eye_pixels_.include(x, y);
                const int count = share.count * (more ? options_.more_in_eyes : 1);
                for (int k = 0; k < count; ++k) samples.push_back({x, y, share.first + k});
            }
        }
        return samples;
    }

    // A pixel's paths follow each other. pass: what they count as, beside those of passes before. How many pixels.
    std::size_t trace_pixels(std::span<const PixelSample> samples, int pass, RayMemory* memory, Counts& counts) {
        PixelSums sums(stage_.layer_count());
        std::size_t pixels = 0;
        for (std::size_t first = 0; first < samples.size(); first += kInStep) {
            const auto wanted = samples.subspan(first, std::min(kInStep, samples.size() - first));
            std::vector<Path> paths = camera_paths(camera_, options_.seed, width_, wanted);
            for (Path& path : paths) path.light.asked = options_.layers;
            tracer_.look(paths, memory);
            for (std::size_t i = 0; i < paths.size(); ++i) {
                book(sums, paths[i], counts);
                const std::size_t next = first + i + 1;
                if (next < samples.size() && same_pixel(wanted[i], samples[next])) continue;
                ++pixels;
                add(pixel_index(wanted[i]), sums, pass);
                counts.noise += noise_of(sums);
                sums = PixelSums(stage_.layer_count());
            }
        }
        return pixels;
    }

    static bool same_pixel(const PixelSample& a, const PixelSample& b) { return a.x == b.x && a.y == b.y; }

    RayMemory* memory_of(std::size_t tile) const {
        if (options_.memory == nullptr || rendered_.film.samples >= PictureMemory::kSamples) return nullptr;
        return &options_.memory->of_tile(tile);
    }

    // In the film.
    std::size_t pixel_index(const PixelSample& at) const {
        const int every = options_.every;
        return static_cast<std::size_t>(at.y / every) * static_cast<std::size_t>(rendered_.film.width) +
               static_cast<std::size_t>(at.x / every);
    }

    void book(PixelSums& sums, const Path& path, Counts& counts) const {
        const int number = sums.paths++;
        counts.rays += path.light.rays;
        counts.given_up += path.light.given_up;
        if (!finite(path.light, stage_.layer_count())) {
            ++counts.non_finite;
            return;
        }
        for (std::size_t l = 0; l < stage_.layer_count(); ++l) {
            if (!traces(l)) continue;
            const float glint = path.light.glints[l];
            book_bands(sums.layers[l], path.waves, path.light.layers[l] - path.light.by_hair[l] - glint);
            book_hair(sums.layers[l], path.waves, path.light.by_hair[l]);
            if (glint == 0.0F) continue;
            book_glint(sums.layers[l], glint);
            sums.glints[l] += glint;
        }
        sums.halves.at(static_cast<std::size_t>(number % 2)) += brightness(path);
        book_bands(sums.albedo, path.waves, path.sight.albedo);
        sums.normal += path.sight.normal;
        if (path.sight.distance > 0.0F) {
            sums.depth += static_cast<double>(path.sight.distance);
            ++sums.seen;
        }
    }

    // In the picture that is wanted: a layer's mean over its wavelengths stands for its luminance.
    double brightness(const Path& path) const {
        double sum = 0.0;
        for (std::size_t l = 0; l < options_.weights.size(); ++l) {
            const Light4& light = path.light.layers[l];
            sum += options_.weights[l] * static_cast<double>(light.x + light.y + light.z + light.w) / kWaveCount;
        }
        return sum;
    }

    // The film holds means; a pass of n samples on top of m weighs n / (m + n), however many a pixel had of it.
    void add(std::size_t pixel, const PixelSums& sums, int pass) {
        Film& film = rendered_.film;
        const auto all = static_cast<float>(film.samples + pass);
        const float keep = static_cast<float>(film.samples) / all;
        const float share = static_cast<float>(pass) / (all * static_cast<float>(sums.paths));
        const auto blend = [&](Bands& mean, const Bands& sum) {
            Bands blended;  // apart from both, so that the compiler may take all bands at once
            for (std::size_t b = 0; b < kBandCount; ++b) blended[b] = keep * mean[b] + share * sum[b];
            mean = blended;
        };
        for (std::size_t l = 0; l < film.layers.size(); ++l) {
            if (!traces(l)) continue;
            FilmLayer& layer = film.layers[l];
            blend(layer.pixels[pixel], sums.layers[l]);
            layer.glints[pixel] = keep * layer.glints[pixel] + share * sums.glints[l];
        }
        blend(film.features.albedo[pixel], sums.albedo);
        film.features.normal[pixel] = keep * film.features.normal[pixel] + share * sums.normal;
        if (sums.seen == 0) return;
        // Of those that met something.
        float& depth_m = film.features.depth_m[pixel];
        int& hits = rendered_.met[pixel];
        const double before = static_cast<double>(depth_m) * hits;
        hits += sums.seen;
        depth_m = static_cast<float>((before + sums.depth) / hits);
    }

    void report(std::size_t paths) {
        if (!options_.progress) return;
        const std::lock_guard<std::mutex> lock(progress_mutex_);
        paths_done_ += paths;
        options_.progress(static_cast<double>(paths_done_) /
                          (static_cast<double>(rendered_.film.pixel_count()) * options_.samples));
    }

    const Stage& stage_;
    Camera camera_;
    EyePixels eye_pixels_;
    PathTracer tracer_;
    RenderOptions options_;
    int width_;  // of the picture
    Tiles tiles_;
    PathSpread spread_;
    Rendered rendered_;
    std::mutex progress_mutex_;
    std::size_t paths_done_ = 0;
};

}  // namespace

Rendered render_film(const Studio& studio, const Stage& stage, const RenderOptions& options) {
    return Renderer(studio, stage, options).run();
}

Rendered first_look(const Studio& studio, const Stage& stage, const RenderOptions& options) {
    RenderOptions look;
    look.samples = kFirstLookSamples;
    look.every = kFirstLookEvery;
    look.more_in_eyes = kFirstLookInEyes;
    look.seed = options.seed;
    look.threads = options.threads;
    look.progress = options.progress;
    look.cancel = options.cancel;
    return render_film(studio, stage, look);
}

}  // namespace understudy
