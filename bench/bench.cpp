// understudy_bench [rays|threads|start|head|memory|convergence|skin|hair-rays|eye-light|cleaning-time|kit|live|clean|
// time-to-error|whole-kit ...]: prints the figures asked for, or all but the last three.

#include "bench.h"

#include <cstdlib>
#include <filesystem>
#include <functional>
#include <map>

#include <fmt/format.h>

#include "setup/read_setup.h"

namespace understudy {

std::vector<std::string> bench_scene_names() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(UNDERSTUDY_SCENES_DIR)) {
        if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

void fail_bench(const Problems& problems) {
    for (const Problem& problem : problems) fmt::print(stderr, "{}\n", problem.text);
    std::exit(1);
}

Rehearsal bench_scene(const std::string& name, int width, int height) {
    auto setup = read_setup(std::filesystem::path(UNDERSTUDY_SCENES_DIR) / (name + ".toml"), own_library());
    if (!setup) fail_bench(setup.problems());
    setup->picture.width = width;
    setup->picture.height = height;
    auto rehearsal = rehearse(*setup);
    if (!rehearsal) fail_bench(rehearsal.problems());
    return std::move(*rehearsal);
}

}  // namespace understudy

int main(int count, char** arguments) {
    const std::map<std::string, std::function<void()>> all{{"rays", understudy::bench_rays},
                                                           {"threads", understudy::bench_threads},
                                                           {"start", understudy::bench_start},
                                                           {"head", understudy::bench_head},
                                                           {"memory", understudy::bench_memory},
                                                           {"convergence", understudy::bench_convergence},
                                                           {"skin", understudy::bench_skin},
                                                           {"skin-walk", understudy::bench_skin_walk},
                                                           {"hair-rays", understudy::bench_hair_rays},
                                                           {"eye-light", understudy::bench_eye_light},
                                                           {"light-points", understudy::bench_light_points},
                                                           {"sampler", understudy::bench_sampler},
                                                           {"cleaning-time", understudy::bench_cleaning_time},
                                                           {"kit", understudy::bench_kit},
                                                           {"live", understudy::bench_live},
                                                           {"clean", understudy::bench_clean},
                                                           {"time-to-error", understudy::bench_time_to_error},
                                                           {"whole-kit", understudy::bench_whole_kit}};
    if (count == 1) {
        // Three take their time.
        for (const auto& [name, bench] : all) {
            if (name != "clean" && name != "time-to-error" && name != "whole-kit") bench();
        }
        return 0;
    }
    for (int i = 1; i < count; ++i) {
        const auto found = all.find(arguments[i]);
        if (found == all.end()) {
            fmt::print(
                stderr,
                "no measurement \"{}\"; expected rays, threads, start, head, memory, convergence, skin, skin-walk, "
                "hair-rays, eye-light, light-points, sampler, cleaning-time, kit, live, "
                "clean, time-to-error or whole-kit\n",
                arguments[i]);
            return 2;
        }
        found->second();
    }
    return 0;
}
