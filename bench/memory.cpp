// The most memory that rendering each scene takes, as a process of its own.

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fcntl.h>

#include <filesystem>

#include <fmt/format.h>

#include "bench.h"

namespace understudy {

namespace {

// MB; -1 when the program did not end well.
double peak_memory_of(const std::string& scene) {
    const std::string picture = (std::filesystem::temp_directory_path() / "understudy-bench.png").string();
    const pid_t child = fork();
    if (child == 0) {
        const int nowhere = open("/dev/null", O_WRONLY);
        dup2(nowhere, STDOUT_FILENO);
        execl(UNDERSTUDY_PROGRAM, UNDERSTUDY_PROGRAM, "render", scene.c_str(), "--samples", "1", "-o", picture.c_str(),
              nullptr);
        _exit(127);
    }
    int status = 0;
    rusage usage{};
    wait4(child, &status, 0, &usage);
    unlink(picture.c_str());
    return WIFEXITED(status) && WEXITSTATUS(status) == 0 ? static_cast<double>(usage.ru_maxrss) / 1024.0 : -1.0;
}

}  // namespace

void bench_memory() {
    for (const std::string& name : bench_scene_names()) {
        fmt::print("memory: {:16} {:5.0f} MB at its own size (wanted under 600)\n", name,
                   peak_memory_of(std::string(UNDERSTUDY_SCENES_DIR) + "/" + name + ".toml"));
    }
}

}  // namespace understudy
