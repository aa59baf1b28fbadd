// understudy: rehearse a sitting's lighting before anyone sits down.

#include <malloc.h>

#include <memory>
#include <thread>

#include <fmt/format.h>
#include <tbb/global_control.h>

#include "cli/commands.h"

namespace understudy {

int complain(const Problems& problems) {
    int status = kWrongUse;
    for (const Problem& problem : problems) {
        fmt::print(stderr, "{}\n", problem.text);
        if (problem.blame == Blame::kFailed) status = kFailure;
    }
    return status;
}

namespace {

int run(int count, char** arguments) {
    CLI::App program("Rehearses studio portrait lighting: pictures, meter readings and catchlights of a scene file.",
                     "understudy");
    program.set_version_flag("--version", "understudy 0.1.0");
    program.require_subcommand(1);
    program.footer("Exit status: 0 done, 1 failed, 2 wrong input, 130 interrupted.");
    program.fallthrough();
    int threads = 0;
    std::unique_ptr<tbb::global_control> limit;
    program.add_option("--threads", threads, "Threads to work with (default: all the machine has)")
        ->check(CLI::Range(1, 1024))
        ->each([&](const std::string& text) {
            limit =
                std::make_unique<tbb::global_control>(tbb::global_control::max_allowed_parallelism, std::stoul(text));
        });
    int status = kDone;
    add_render(program, status);
    add_meter(program, status);
    add_advise(program, status);
    add_poses(program, status);
    add_check(program, status);
    add_compare(program, status);
    add_develop(program, status);
    add_kit(program, status);
    add_settle(program, status);
    add_sitters(program, status);
    add_pixel(program, status);
    add_watch(program, status);
    try {
        program.parse(count, arguments);
    } catch (const CLI::ParseError& error) {
        // CLI11's own statuses are its own affair: help is 0, every misuse is 2.
        return program.exit(error) == 0 ? kDone : kWrongUse;
    }
    return status;
}

}  // namespace
}  // namespace understudy

int main(int count, char** arguments) {
    // A film's layers and a network's levels go back to the system when they are let go of: by itself the C library
    // keeps blocks up to 32 MB for later.
    mallopt(M_MMAP_THRESHOLD, 1 << 20);
    try {
        return understudy::run(count, arguments);
    } catch (const std::exception& error) {
        fmt::print(stderr, "understudy: {}\n", error.what());
        return understudy::kFailure;
    }
}
