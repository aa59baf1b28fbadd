// A picture that is being traced, and that goes on while its scene is changed.
//
// Every change costs what it has to (scene_change.h): a film is developed anew for another power; a light that moves
// has its own layer traced first, along paths that are remembered (transport/picture_memory.h), and then, unseen,
// everything, for its stand shades the others' light too; all else begins the film again. Whatever is traced comes
// first as a coarse look. The last proof of a scene is the picture that render_film would give of it.
#pragma once

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "rehearsal/film_card.h"
#include "rehearsal/rehearsal.h"
#include "rehearsal/scene_change.h"
#include "setup/vary_scene.h"
#include "transport/render.h"

namespace understudy {

// What there is of the picture at some moment.
struct Proof {
    std::shared_ptr<const Film> film;
    FilmCard card;  // to develop it with
    int width = 0;  // of the picture, in pixels
    int height = 0;
    int every = 1;             // of a first look: the film has every so many-th pixel of every so many-th row
    std::uint64_t number = 0;  // the first is 1
    bool complete = false;     // no better one of this scene will come
};

struct SessionOptions {
    Library library;
    int threads = 0;  // 0: as many as the machine has
    int samples = 0;  // camera paths a pixel; 0: as each scene says
};

// Every function may be called from any thread.
class RenderSession {
  public:
    // Begins to trace. What place_studio and set_powers have against the scene is a problem.
    static Expected<std::unique_ptr<RenderSession>> open(const ParsedScene& scene, const SessionOptions& options);
    ~RenderSession();
    RenderSession(const RenderSession&) = delete;
    RenderSession& operator=(const RenderSession&) = delete;
    RenderSession(RenderSession&&) = delete;
    RenderSession& operator=(RenderSession&&) = delete;

    // Goes on with the scene as it is now, and says what had to be done for it. On a problem everything stays as it
    // was.
    Expected<SceneChange> change(const ParsedScene& scene);
    // Stops tracing until the next change that needs any. What there is stays.
    void cancel();

    // None before the first paths are through.
    std::optional<Proof> proof() const;
    // The newest, as soon as there is one later than this; none when that takes too long.
    std::optional<Proof> wait_for_proof(std::uint64_t later_than, std::chrono::milliseconds at_most) const;
    // Tracing waits while this lives, so that a picture is finished on all of the processor.
    class Hold {
      public:
        explicit Hold(RenderSession& session) : session_(session) { session_.hold(1); }
        ~Hold() { session_.hold(-1); }
        Hold(const Hold&) = delete;
        Hold& operator=(const Hold&) = delete;

      private:
        RenderSession& session_;
    };
    // Of what is being traced at the moment, 0 … 1; 1 when there is nothing more to do.
    double progress() const { return progress_; }

  private:
    // A part of the work.
    struct Task {
        LayerBits layers = kAllLayers;
        int first_pass = 0;
        int samples = 0;
        int every = 1;
        int more_in_eyes = 1;
        int shown_from = 1;       // paths a pixel with which it is better than what is shown
        bool over_whole = false;  // only lights have moved: the rest is taken from the last film of all pixels
        double work() const { return static_cast<double>(samples) / (every * every); }
        // Whether the look's pixels are those of its own first pass.
        bool begins_with(const Task& look) const {
            return layers == look.layers && std::min(first_pass, samples) == look.samples &&
                   more_in_eyes == look.more_in_eyes;
        }
    };
    // The scene as it is now.
    struct Ready {
        Rehearsal rehearsal;
        HeadPointer head;
        LitStudio lit;
    };

    RenderSession(SessionOptions options, Ready ready, const ParsedScene& scene);
    Problems change_sitter(const ParsedScene& scene);
    Problems change_studio(const ParsedScene& scene, SceneChange& change);
    void rearrange();
    void set_pupils(const LitStudio& lit);
    Problems relight(SceneChange& change);
    void set_card(const SceneChange& change);
    LayerBits all_layers() const;
    LayerBits bits_of(const std::vector<std::string>& lights) const;
    std::vector<Task> tasks_for(const SceneChange& change, int samples);
    Studio seen_studio();
    void begin(const SceneChange& change);
    void halt();
    void hold(int more);
    void wait_while_held();
    void trace(const Studio& studio, std::vector<Task> tasks);
    // before: the film that this one is laid over, if it is; then this one.
    void show(const Studio& studio, const Task& task, const Film& film, bool last, std::shared_ptr<const Film>& before);

    SessionOptions options_;
    std::mutex changing_;  // held by whoever changes what follows
    Ready ready_;
    Value document_;
    std::thread tracing_;
    PictureMemory memory_;  // the tracing thread's while it runs

    std::atomic<bool> stop_ = false;
    std::atomic<int> holds_ = 0;
    std::atomic<double> progress_ = 0.0;

    mutable std::mutex showing_;  // held by whoever changes what follows
    mutable std::condition_variable shown_;
    std::condition_variable released_;
    FilmCard card_;
    std::optional<Proof> proof_;
    std::shared_ptr<const Film> whole_;  // the last film of all pixels, if only lights have moved since
    LayerBits stale_ = 0;                // its layers whose lights have
    int known_ = 0;                      // paths a pixel of the others
};

}  // namespace understudy
