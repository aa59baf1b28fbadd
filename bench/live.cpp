// What a change costs while somebody watches: from the saved scene to the picture that shows it.

#include <chrono>
#include <filesystem>

#include <fmt/format.h>

#include "bench.h"
#include "cli/finish.h"
#include "film/display_picture.h"
#include "rehearsal/render_session.h"
#include "setup/vary_scene.h"

namespace understudy {

namespace {

using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

ParsedScene scene_with(const std::vector<std::string>& changes) {
    auto scene =
        parse_changed_scene(std::filesystem::path(UNDERSTUDY_SCENES_DIR) / "three-to-one.toml", changes, own_library());
    if (!scene) fail_bench(scene.problems());
    return std::move(*scene);
}

Proof next_proof(const RenderSession& session, std::uint64_t later_than) {
    for (;;) {
        if (auto proof = session.wait_for_proof(later_than, std::chrono::seconds(1))) return *proof;
    }
}

Proof complete_proof(const RenderSession& session) {
    Proof proof = next_proof(session, 0);
    while (!proof.complete) proof = next_proof(session, proof.number);
    return proof;
}

void finish(const Finisher& finisher, const Proof& proof) {
    display_picture(finisher.finish(*proof.film, developing_of(proof.card)));
}

void bench_changes(int width, int height) {
    const std::vector<std::string> size{fmt::format("picture.width={}", width),
                                        fmt::format("picture.height={}", height)};
    const auto with = [&](const std::string& change) {
        std::vector<std::string> changes = size;
        changes.push_back(change);
        return scene_with(changes);
    };
    const auto finisher = Finisher::open(false);
    if (!finisher) fail_bench(finisher.problems());
    const Clock::time_point start = Clock::now();
    const auto session = RenderSession::open(scene_with(size), {own_library(), 0, PictureMemory::kSamples});
    if (!session) fail_bench(session.problems());
    Proof proof = complete_proof(**session);
    const double first = milliseconds_since(start);
    // The first picture of any kind, then the first that has all pixels.
    const auto time_of = [&](const std::string& change) {
        const std::uint64_t before = (*session)->proof()->number;
        const Clock::time_point begin = Clock::now();
        if (const auto done = (*session)->change(with(change)); !done) fail_bench(done.problems());
        std::string told = fmt::format("taken after {:.0f} ms", milliseconds_since(begin));
        proof = next_proof(**session, before);
        for (;;) {
            const double seen = milliseconds_since(begin);
            {
                const RenderSession::Hold hold(**session);
                finish(*finisher, proof);
            }
            told += fmt::format(", {} film of {} paths a pixel after {:.0f} ms and its clean picture after {:.0f} ms",
                                proof.every > 1 ? "a coarse" : "a whole", proof.film->samples, seen,
                                milliseconds_since(begin));
            if (proof.every == 1) break;
            proof = next_proof(**session, proof.number);
        }
        while (!proof.complete) proof = next_proof(**session, proof.number);
        return told;
    };
    fmt::print("live, {} × {}: first film of {} paths a pixel {:.0f} ms\n", width, height, PictureMemory::kSamples,
               first);
    fmt::print("live, {} × {}: power: {}\n", width, height, time_of("light.key.meter=8.0"));
    fmt::print("live, {} × {}: light moved: {}\n", width, height, time_of("light.key.distance=1.5"));
    fmt::print("live, {} × {}: aperture: {}\n", width, height, time_of("camera.aperture=8"));
    const double develop_ms = 1e3 * shortest_time(3, [&] { develop(*proof.film, developing_of(proof.card)); });
    const double clean_ms = 1e3 * shortest_time(3, [&] { finish(*finisher, proof); });
    fmt::print("live, {} × {}: developed {:.0f} ms, developed and cleaned {:.0f} ms\n", width, height, develop_ms,
               clean_ms);
}

}  // namespace

void bench_live() {
    bench_changes(640, 800);
    bench_changes(320, 400);
}

}  // namespace understudy
