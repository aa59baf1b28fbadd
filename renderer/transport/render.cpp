#include "transport/render.h"

#include <algorithm>
#include <cmath>
#include <mutex>

#include <tbb/blocked_range2d.h>
#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>
#include <xmmintrin.h>

#include "transport/camera_path.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

constexpr int kTile = 16;

// What a pass adds to one pixel.
struct PixelSums {
    explicit PixelSums(std::size_t layer_count) : count(layer_count) {
        for (std::size_t l = 0; l < count; ++l) layers[l] = Bands{};
    }
    std::size_t count;
    std::array<Bands, kMaxLayers> layers;  // the first count are set
    Bands albedo{};
    Vec3 normal{0.0F};
    double depth = 0.0;
    int seen = 0;  // samples that met something
};

// Every wavelength stands for its band: kBandCount bands, kWaveCount wavelengths a path.
void book(Bands& bands, const Waves& waves, const Light4& light) {
    constexpr float kShare = static_cast<float>(kBandCount) / static_cast<float>(kWaveCount);
    for (std::size_t i = 0; i < kWaveCount; ++i) bands[waves.band[i]] += kShare * light[static_cast<glm::length_t>(i)];
}

bool finite(const PathLight& light, std::size_t layers) {
    for (std::size_t i = 0; i < layers; ++i) {
        const Light4& l = light.layers[i];
        if (!std::isfinite(l.x + l.y + l.z + l.w)) return false;
    }
    return true;
}

class Renderer {
  public:
    Renderer(const Studio& studio, const Stage& stage, RenderOptions options)
        : stage_(stage), camera_(studio), tracer_(stage), options_(std::move(options)) {
        Film& film = rendered_.film;
        film.width = studio.setup.picture.width;
        film.height = studio.setup.picture.height;
        for (const LightSettings& light : studio.setup.lights) film.layers.push_back({light.name, {}});
        if (stage.has_ambient()) film.layers.push_back({"ambient", {}});
        for (FilmLayer& layer : film.layers) layer.pixels.resize(film.pixel_count());
        film.features.albedo.resize(film.pixel_count());
        film.features.normal.resize(film.pixel_count(), Vec3(0.0F));
        film.features.depth_m.resize(film.pixel_count());
        depth_hits_.resize(film.pixel_count());
    }

    Rendered run() {
        tbb::task_arena arena(options_.threads > 0 ? options_.threads : tbb::task_arena::automatic);
        // Passes double, so that the film is stratified at the end of each: 1, 1, 2, 4, …
        while (rendered_.film.samples < options_.samples && !rendered_.cancelled) {
            const int done = rendered_.film.samples;
            const int pass = std::min(std::max(done, 1), options_.samples - done);
            arena.execute([&] { trace_pass(pass); });
            if (!rendered_.cancelled) rendered_.film.samples += pass;
        }
        for (std::size_t i = 0; i < depth_hits_.size(); ++i) {
            if (depth_hits_[i] > 0) rendered_.film.features.depth_m[i] /= static_cast<float>(depth_hits_[i]);
        }
        return std::move(rendered_);
    }

  private:
    bool cancelled() const { return options_.cancel != nullptr && options_.cancel->load(std::memory_order_relaxed); }

    void trace_pass(int pass) {
        // A cancelled pass is dropped whole: its tiles are kept apart until all are there.
        const Film& film = rendered_.film;
        std::atomic<std::uint64_t> rays = 0;
        std::atomic<std::uint64_t> non_finite = 0;
        std::atomic<bool> stopped = false;
        const tbb::blocked_range2d<int> all(0, film.height, kTile, 0, film.width, kTile);
        tbb::parallel_for(
            all,
            [&](const tbb::blocked_range2d<int>& tile) {
                if (cancelled()) {
                    stopped = true;
                    return;
                }
                const Counts counts = trace_tile(tile, pass);
                rays += counts.rays;
                non_finite += counts.non_finite;
                report(tile.rows().size() * tile.cols().size() * static_cast<std::size_t>(pass));
            },
            tbb::simple_partitioner());
        rendered_.rays += rays;
        rendered_.non_finite += non_finite;
        rendered_.cancelled = stopped;
    }

    struct Counts {
        std::uint64_t rays = 0;
        std::uint64_t non_finite = 0;
    };

    Counts trace_tile(const tbb::blocked_range2d<int>& tile, int pass) {
        // Numbers too small for a normal float are zero here: they would only slow the processor down.
        const unsigned int before = _mm_getcsr();
        _mm_setcsr(before | 0x8040U);
        Counts counts;
        for (int y = tile.rows().begin(); y < tile.rows().end(); ++y) {
            for (int x = tile.cols().begin(); x < tile.cols().end(); ++x) trace_pixel(x, y, pass, counts);
        }
        _mm_setcsr(before);
        return counts;
    }

    // Always inlined: as a call that changes nothing it would be left out.
    [[gnu::always_inline]] void fetch(std::size_t pixel) const {
        const Film& film = rendered_.film;
        for (const FilmLayer& layer : film.layers) {
            __builtin_prefetch(&layer.pixels[pixel].front(), 1);
            __builtin_prefetch(&layer.pixels[pixel].back(), 1);
        }
        __builtin_prefetch(&film.features.albedo[pixel].front(), 1);
        __builtin_prefetch(&film.features.albedo[pixel].back(), 1);
        __builtin_prefetch(&film.features.normal[pixel], 1);
        __builtin_prefetch(&film.features.depth_m[pixel], 1);
        __builtin_prefetch(&depth_hits_[pixel], 1);
    }

    void trace_pixel(int x, int y, int pass, Counts& counts) {
        const auto pixel =
            static_cast<std::size_t>(y) * static_cast<std::size_t>(rendered_.film.width) + static_cast<std::size_t>(x);
        // The film is larger than any cache: fetch the pixel's lines while its paths are traced.
        fetch(pixel);
        PixelSums sums(stage_.layer_count());
        for (int i = 0; i < pass; ++i) {
            const CameraPath path =
                camera_path(camera_, options_.seed, rendered_.film.width, x, y, rendered_.film.samples + i);
            const Waves& waves = path.waves;
            PathLight light;
            const FirstSight sight = tracer_.look(path.ray, waves, path.sampler, light);
            counts.rays += light.rays;
            if (!finite(light, stage_.layer_count())) {
                ++counts.non_finite;
                continue;
            }
            for (std::size_t l = 0; l < stage_.layer_count(); ++l) book(sums.layers[l], waves, light.layers[l]);
            book(sums.albedo, waves, sight.albedo);
            sums.normal += sight.normal;
            if (sight.distance > 0.0F) {
                sums.depth += static_cast<double>(sight.distance);
                ++sums.seen;
            }
        }
        add(pixel, sums, pass);
    }

    // The film holds means; a pass of n samples on top of m weighs n / (m + n).
    void add(std::size_t pixel, const PixelSums& sums, int pass) {
        Film& film = rendered_.film;
        const auto all = static_cast<float>(film.samples + pass);
        const float keep = static_cast<float>(film.samples) / all;
        const float share = 1.0F / all;
        const auto blend = [&](Bands& mean, const Bands& sum) {
            Bands blended;  // apart from both, so that the compiler may take all bands at once
            for (std::size_t b = 0; b < kBandCount; ++b) blended[b] = keep * mean[b] + share * sum[b];
            mean = blended;
        };
        for (std::size_t l = 0; l < film.layers.size(); ++l) blend(film.layers[l].pixels[pixel], sums.layers[l]);
        blend(film.features.albedo[pixel], sums.albedo);
        film.features.normal[pixel] = keep * film.features.normal[pixel] + share * sums.normal;
        film.features.depth_m[pixel] += static_cast<float>(sums.depth);  // a sum until the end
        depth_hits_[pixel] += sums.seen;
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
    PathTracer tracer_;
    RenderOptions options_;
    Rendered rendered_;
    std::vector<int> depth_hits_;
    std::mutex progress_mutex_;
    std::size_t paths_done_ = 0;
};

}  // namespace

Rendered render_film(const Studio& studio, const Stage& stage, const RenderOptions& options) {
    return Renderer(studio, stage, options).run();
}

}  // namespace understudy
