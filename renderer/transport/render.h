// Tracing a film: passes over all pixels until it has its samples.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <vector>

#include "stage/camera.h"
#include "stage/stage.h"
#include "transport/film.h"
#include "transport/path_light.h"
#include "transport/picture_memory.h"

namespace understudy {

// A first look at a picture: every other pixel of every other row, and as few paths as can be cleaned of noise.
inline constexpr int kFirstLookEvery = 2;
inline constexpr int kFirstLookSamples = 2;
// As RenderOptions::more_in_eyes; a hundredth or so of a portrait's pixels show an eye.
inline constexpr int kFirstLookInEyes = 8;

struct Rendered {
    Film film;
    std::vector<int> met;  // paths of each pixel that met something: its depth is their mean
    std::uint64_t rays = 0;
    std::uint64_t given_up = 0;    // walks under the skin that grew too long; what they would have brought is lost
    std::uint64_t non_finite = 0;  // paths left out because a contribution was not a number
    bool cancelled = false;        // some pixels then carry more samples than the film says
};

struct RenderOptions {
    int samples = 64;  // camera paths a pixel, on the mean
    unsigned seed = 0;
    int threads = 0;                             // 0: as many as the machine has
    std::function<void(double share)> progress;  // called now and then, from one thread, with 0 … 1
    const std::atomic<bool>* cancel = nullptr;   // looked at between tiles
    // Called after each pass with what there is, to look at or to copy; how many more paths a pixel the next pass may
    // take: 0 is enough.
    std::function<int(const Film&)> after_pass;
    // Four samples reach every band; fewer come sooner.
    int first_pass = 4;
    // In the first pass, times as many where an iris is seen: for pictures of one path or two, whose catchlights are
    // looked for. Later passes trace some of those paths again, which does no harm.
    int more_in_eyes = 1;
    // The film's layers that are traced; the others stay without pixels.
    LayerBits layers = kAllLayers;
    // Every so many-th pixel of every so many-th row, for a first look: the film is so many times smaller.
    int every = 1;
    // A first look at the same picture, with the same seed, layers and more_in_eyes, of as many paths as the first
    // pass: its pixels are not traced again. Every pixel is traced then.
    const Rendered* look = nullptr;
    // What each layer weighs in the picture that is wanted, its even light in linear light (film/develop.h): paths go
    // where that picture is noisy. None: evenly.
    std::vector<double> weights;
    // Of this stage's sitter seen from this camera, cleared for a picture of its size; learns, and is used.
    PictureMemory* memory = nullptr;
};

// The same film for any number of threads.
Rendered render_film(const Studio& studio, const Stage& stage, const RenderOptions& options);

// The film of a first look; of the options seed, threads, progress and cancel count.
Rendered first_look(const Studio& studio, const Stage& stage, const RenderOptions& options);

}  // namespace understudy
