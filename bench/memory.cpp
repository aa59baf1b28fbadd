// The most memory that rendering each scene takes, and that watching one takes while a light is moved; each as a
// process of its own.

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "bench.h"

namespace understudy {

namespace {

// What it prints can be read from the file given back.
std::pair<pid_t, FILE*> start_program(std::vector<std::string> arguments) {
    std::array<int, 2> ends{};
    if (pipe(ends.data()) != 0) {
        std::perror("memory");
        std::exit(1);
    }
    const pid_t child = fork();
    if (child == 0) {
        dup2(ends[1], STDOUT_FILENO);
        close(ends[0]);
        std::vector<char*> given;
        given.reserve(arguments.size() + 2);
        arguments.insert(arguments.begin(), UNDERSTUDY_PROGRAM);
        for (std::string& argument : arguments) given.push_back(argument.data());
        given.push_back(nullptr);
        execv(UNDERSTUDY_PROGRAM, given.data());
        _exit(127);
    }
    close(ends[1]);
    return {child, fdopen(ends[0], "r")};
}

// In MB, and its status.
std::pair<double, int> end_of(pid_t child) {
    int status = 0;
    rusage usage{};
    wait4(child, &status, 0, &usage);
    return {static_cast<double>(usage.ru_maxrss) / 1024.0, WIFEXITED(status) ? WEXITSTATUS(status) : -1};
}

// To a line that starts so, or to the end.
void read_until(FILE* printed, std::string_view start) {
    std::array<char, 1024> line{};
    while (fgets(line.data(), static_cast<int>(line.size()), printed) != nullptr) {
        if (std::string_view(line.data()).starts_with(start)) return;
    }
}

std::filesystem::path temporary(const std::string& name) { return std::filesystem::temp_directory_path() / name; }

// -1 when the program did not end well.
double peak_of_render(const std::string& scene) {
    const auto picture = temporary("understudy-bench.png");
    const auto [child, printed] = start_program({"render", scene, "--samples", "1", "-o", picture.string()});
    while (fgetc(printed) != EOF) continue;
    fclose(printed);
    const auto [peak, status] = end_of(child);
    std::filesystem::remove(picture);
    return status == 0 ? peak : -1.0;
}

// Its picture finished, the first light moved, and finished again.
double peak_of_watch(const std::string& name) {
    const auto scene = temporary("understudy-bench.toml");
    const auto picture = temporary("understudy-bench.png");
    std::ifstream original(std::string(UNDERSTUDY_SCENES_DIR) + "/" + name + ".toml");
    std::string text{std::istreambuf_iterator<char>(original), {}};
    std::ofstream(scene) << text;
    const auto [child, printed] = start_program({"watch", scene.string(), "-o", picture.string(), "--samples", "8",
                                                 "--with", "picture.width=640", "--with", "picture.height=800"});
    read_until(printed, "finished");
    const std::string distance = "distance = \"";
    const std::size_t first = text.find(distance) + distance.size();
    text.replace(first, text.find('"', first) - first, "1.47 m");
    std::ofstream(scene) << text;
    read_until(printed, "finished");
    kill(child, SIGINT);
    fclose(printed);
    const auto [peak, status] = end_of(child);
    std::filesystem::remove(scene);
    std::filesystem::remove(picture);
    constexpr int kInterrupted = 130;
    return status == kInterrupted ? peak : -1.0;
}

}  // namespace

void bench_memory() {
    for (const std::string& name : bench_scene_names()) {
        fmt::print("memory: {:16} {:5.0f} MB at its own size (wanted under 600)\n", name,
                   peak_of_render(std::string(UNDERSTUDY_SCENES_DIR) + "/" + name + ".toml"));
    }
    for (const char* name : {"three-to-one", "side-strip", "overhead"}) {
        fmt::print("memory: {:16} {:5.0f} MB at 640 × 800, watched, a light moved (wanted under 900)\n", name,
                   peak_of_watch(name));
    }
}

}  // namespace understudy
