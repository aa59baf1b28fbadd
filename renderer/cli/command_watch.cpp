// understudy watch SCENE [-o FILE]: a picture that follows the scene file.

#include <chrono>
#include <filesystem>
#include <thread>

#include <fmt/chrono.h>
#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/finish.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/progress_line.h"
#include "film/display_picture.h"
#include "film/enlarge.h"
#include "rehearsal/render_session.h"

namespace understudy {

namespace {

using Clock = std::chrono::steady_clock;

struct WatchWish {
    SceneWish scene;
    std::string picture;
    int samples = 0;
    bool as_traced = false;
};

// Whether the file was written since it was asked for last; a file that is gone for a moment, while an editor puts
// another in its place, was not.
class FileWatch {
  public:
    explicit FileWatch(std::filesystem::path file) : file_(std::move(file)) { was_saved(); }

    bool was_saved() {
        std::error_code error;
        const auto time = std::filesystem::last_write_time(file_, error);
        if (error || time == time_) return false;
        time_ = time;
        return true;
    }

  private:
    std::filesystem::path file_;
    std::filesystem::file_time_type time_{};
};

std::string said_of(const SceneChange& change) {
    switch (change.reach) {
        case Reach::kNothing:
            return "nothing that shows in the picture";
        case Reach::kDeveloping:
            return change.pupils ? "developed anew, and the pupils traced" : "developed anew";
        case Reach::kLights:
            return fmt::format("light of {} traced first", fmt::join(change.lights, ", "));
        case Reach::kStudio:
            return "traced anew, the sitter as it was";
        case Reach::kSitter:
            break;
    }
    return "sitter and view made anew";
}

std::string paths_of(const Proof& proof) { return fmt::format("{} paths a pixel", proof.film->samples); }

class Watch {
  public:
    Watch(const WatchWish& wish, RenderSession& session, const Finisher& finisher, FileWatch file)
        : wish_(wish), session_(session), finisher_(finisher), file_(std::move(file)) {}

    // Until it is interrupted, or the picture cannot be written.
    int run() {
        constexpr std::chrono::milliseconds kBetween(20);
        while (!interruption()) {
            if (file_.was_saved()) take_change();
            if (const auto proof = session_.wait_for_proof(written_, kBetween)) {
                if (const int status = write(*proof); status != kDone) return status;
            }
            if (session_.progress() < 1.0) line_->show(session_.progress());
        }
        line_.reset();
        return say_interrupted("the picture stays as it was written last");
    }

  private:
    void say(const std::string& words) {
        line_.reset();
        fmt::print("{}\n", words);
        std::fflush(stdout);
        line_.emplace();
    }

    double milliseconds() const { return std::chrono::duration<double, std::milli>(Clock::now() - since_).count(); }

    void take_change() {
        since_ = Clock::now();
        const auto scene = parse_changed_scene(wish_.scene.file, wish_.scene.changes, own_library());
        const auto change = scene ? session_.change(*scene) : Expected<SceneChange>(scene.problems());
        if (!change) {
            say("the picture stays as it was:");
            complain(change.problems());
            return;
        }
        told_ = said_of(*change);
        if (change->reach == Reach::kNothing) say(told_);
        first_ = true;
    }

    int write(const Proof& proof) {
        written_ = proof.number;
        const RenderSession::Hold hold(session_);
        Picture picture = finisher_.finish(*proof.film, developing_of(proof.card));
        if (proof.every > 1) picture = enlarged(picture, proof.every, proof.width, proof.height);
        const Packing packing = proof.complete ? Packing::kSmall : Packing::kQuick;
        const auto done = write_display_picture(wish_.picture, *picture_kind(wish_.picture), display_picture(picture),
                                                tags_of(proof.card), packing);
        if (!done) return complain(done.problems());
        if (first_) {
            say(fmt::format("{}: {:.0f} ms, {}", told_, milliseconds(),
                            proof.every > 1 ? std::string("coarse") : paths_of(proof)));
        } else if (proof.complete) {
            say(fmt::format("finished: {:.1f} s, {}", 1e-3 * milliseconds(), paths_of(proof)));
        }
        first_ = false;
        return kDone;
    }

    const WatchWish& wish_;
    RenderSession& session_;
    const Finisher& finisher_;
    FileWatch file_;
    std::optional<ProgressLine> line_{std::in_place};
    Clock::time_point since_ = Clock::now();
    std::string told_ = "first picture";
    bool first_ = true;  // picture since the scene was saved
    std::uint64_t written_ = 0;
};

Problems problems_with(const WatchWish& wish) {
    const auto kind = picture_kind(wish.picture);
    if (!kind) return kind.problems();
    if (*kind == PictureKind::kExr) {
        return {{Blame::kWrongInput, fmt::format("{}: expected a picture to look at, .png or .jpg", wish.picture)}};
    }
    const auto writable = check_writable(wish.picture);
    return writable ? Problems{} : writable.problems();
}

int run_watch(WatchWish wish) {
    if (wish.picture.empty()) wish.picture = std::filesystem::path(wish.scene.file).stem().string() + ".png";
    if (const Problems problems = problems_with(wish); !problems.empty()) return complain(problems);
    // Before the file is read, so that no later save is missed.
    FileWatch file(wish.scene.file);
    const auto scene = parse_changed_scene(wish.scene.file, wish.scene.changes, own_library());
    if (!scene) return complain(scene.problems());
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return complain(finisher.problems());
    tell_if_sitters_are_not_kept();
    const auto session = RenderSession::open(*scene, {own_library(), 0, wish.samples});
    if (!session) return complain(session.problems());
    return Watch(wish, **session, *finisher, std::move(file)).run();
}

}  // namespace

void add_watch(CLI::App& program, int& status) {
    const auto wish = std::make_shared<WatchWish>();
    CLI::App* command = program.add_subcommand("watch", "Keep a picture up to date while its scene file is edited");
    take_scene(*command, wish->scene);
    command->add_option("-o,--output", wish->picture, "The picture: .png or .jpg (default: the scene's name .png)");
    command->add_option("--samples", wish->samples, "Camera paths a pixel, in place of the scene's own")
        ->check(CLI::Range(1, 65536));
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_watch(*wish); });
}

}  // namespace understudy
