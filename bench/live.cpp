// What a change costs while somebody watches: from the saved scene to the picture that shows it; the shortest
// of a few.

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <memory>

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

// When, in milliseconds after a scene was saved.
struct Seen {
    int paths = 0;  // a pixel
    double film = 1e30;
    double clean = 1e30;
};
struct Times {
    double taken = 1e30;
    Seen coarse, whole;

    void keep_shortest(const Times& other) {
        const auto keep = [](Seen& seen, const Seen& now) {
            seen = {std::max(seen.paths, now.paths), std::min(seen.film, now.film), std::min(seen.clean, now.clean)};
        };
        taken = std::min(taken, other.taken);
        keep(coarse, other.coarse);
        keep(whole, other.whole);
    }
};

std::string words_of(const Times& times) {
    const auto words = [](const char* kind, const Seen& seen) {
        if (seen.paths == 0) return std::string();
        return fmt::format(", a {} film of {} a pixel after {:.0f} ms and its clean picture after {:.0f} ms", kind,
                           seen.paths == 1 ? "one path" : fmt::format("{} paths", seen.paths), seen.film, seen.clean);
    };
    return fmt::format("taken after {:.0f} ms{}{}", times.taken, words("coarse", times.coarse),
                       words("whole", times.whole));
}

// Somebody watches: every picture is cleaned as soon as there is one.
class Watched {
  public:
    Watched(int width, int height)
        : size_{fmt::format("picture.width={}", width), fmt::format("picture.height={}", height)},
          finisher_(value_of(Finisher::open(false))) {
        const Clock::time_point start = Clock::now();
        session_ = value_of(RenderSession::open(scene_with(size_), {own_library(), 0, PictureMemory::kSamples}));
        follow(start);
    }

    // From the saved scene to the first picture of any kind, and to the first that has all pixels.
    Times change(const std::string& what) {
        std::vector<std::string> changes = size_;
        changes.push_back(what);
        const ParsedScene scene = scene_with(changes);
        const Clock::time_point start = Clock::now();
        if (const auto done = session_->change(scene); !done) fail_bench(done.problems());
        const double taken = milliseconds_since(start);
        Times times = follow(start);
        times.taken = taken;
        return times;
    }

    const Proof& proof() const { return proof_; }
    void finish() const { display_picture(finisher_.finish(*proof_.film, developing_of(proof_.card))); }

  private:
    template <class Value>
    static Value value_of(Expected<Value> expected) {
        if (!expected) fail_bench(expected.problems());
        return std::move(*expected);
    }
    void await_next() {
        const std::uint64_t before = proof_.number;
        while (proof_.number == before) {
            if (auto next = session_->wait_for_proof(before, std::chrono::seconds(1))) proof_ = std::move(*next);
        }
    }
    Times follow(Clock::time_point start) {
        Times times;
        do {
            await_next();
            Seen& seen = proof_.every > 1 ? times.coarse : times.whole;
            seen.paths = proof_.film->samples;
            seen.film = milliseconds_since(start);
            const RenderSession::Hold hold(*session_);
            finish();
            seen.clean = milliseconds_since(start);
        } while (proof_.every > 1);
        while (!proof_.complete) await_next();
        return times;
    }

    std::vector<std::string> size_;
    Finisher finisher_;
    std::unique_ptr<RenderSession> session_;
    Proof proof_;
};

void bench_changes(int width, int height) {
    Watched watched(width, height);
    const auto tell = [&](const char* what, const std::vector<std::string>& changes) {
        Times shortest;
        for (const std::string& change : changes) shortest.keep_shortest(watched.change(change));
        fmt::print("live, {} × {}: {}: {}\n", width, height, what, words_of(shortest));
    };
    tell("power", {"light.key.meter=8.0", "light.key.meter=5.6", "light.key.meter=4.0"});
    tell("light moved", {"light.key.distance=1.5", "light.key.distance=1.4", "light.key.distance=1.6"});
    tell("aperture", {"camera.aperture=8"});
    const Proof& last = watched.proof();
    const double develop_ms = 1e3 * shortest_time(3, [&] { develop(*last.film, developing_of(last.card)); });
    const double clean_ms = 1e3 * shortest_time(3, [&] { watched.finish(); });
    fmt::print("live, {} × {}: developed {:.0f} ms, developed and cleaned {:.0f} ms\n", width, height, develop_ms,
               clean_ms);
}

}  // namespace

void bench_live() {
    bench_changes(640, 800);
    bench_changes(320, 400);
}

}  // namespace understudy
