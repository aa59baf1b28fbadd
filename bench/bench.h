// The measurements, each a function that prints one line or a few. Ratios are of two timings in one run: machines
// differ, and the same machine differs from hour to hour.
#pragma once

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

#include "cli/own_library.h"

namespace understudy {

void bench_rays();
void bench_threads();
void bench_start();
void bench_head();
void bench_memory();
void bench_convergence();
void bench_skin();
void bench_hair_rays();
void bench_eye_light();
void bench_light_points();
void bench_skin_walk();
void bench_sampler();
void bench_cleaning_time();
void bench_live();
void bench_clean();          // the first time it makes its references, which takes many minutes
void bench_time_to_error();  // as above
void bench_kit();            // a few modifiers of every kind
void bench_whole_kit();      // all

// Of a preview's hairs: half a pixel of 640 across a head and shoulders.
inline constexpr double kWidenedHair = 0.00028;

// The shortest of a few runs, in seconds.
template <class Work>
double shortest_time(int runs, const Work& work) {
    double shortest = 1e30;
    for (int i = 0; i < runs; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        shortest = std::min(shortest, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    }
    return shortest;
}

// Ends the program, telling what is wrong.
[[noreturn]] void fail_bench(const Problems& problems);

// A scene of the repository, its picture at the given size. Ends the program with a message when it cannot be opened.
Rehearsal bench_scene(const std::string& name, int width, int height);
std::vector<std::string> bench_scene_names();

}  // namespace understudy
