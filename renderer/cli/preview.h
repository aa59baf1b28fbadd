// A picture that is there soon and gets better: written after every pass over it, until it is as good as asked for.
#pragma once

#include <chrono>
#include <filesystem>
#include <optional>

#include "cli/finish.h"
#include "rehearsal/film_card.h"

namespace understudy {

// When to stop, besides at the most paths a pixel.
struct PreviewGoal {
    std::optional<double> seconds;  // of tracing
    // Of the picture's white: how much of the shown picture may still be noise, as the root of its mean square.
    std::optional<double> error;
};

class Preview {
  public:
    // path: .png or .jpg. finisher has to outlive this.
    Preview(std::filesystem::path path, FilmCard card, const Finisher& finisher, PreviewGoal goal);

    // Writes a film of every so many-th pixel, drawn as large as the whole. Whether the file could be written.
    bool first_look(const Film& film, int every, int width, int height);
    // Writes the picture of this film in place of the one before. How many more paths a pixel may be traced: 0 when the
    // goal is reached or the file could not be written.
    int after_pass(const Film& film);

    // "remaining error 0.8 %, 0:12 left", as far as either is known.
    std::string state() const;
    // The picture as it was written last.
    const Picture& picture() const { return picture_; }
    const Problems& problems() const { return problems_; }

  private:
    using Clock = std::chrono::steady_clock;
    bool write(const DisplayPicture& picture, Packing packing);
    int paths_in_time(int samples) const;
    std::optional<double> seconds_left() const;

    std::filesystem::path path_;
    FilmCard card_;
    const Finisher& finisher_;
    PreviewGoal goal_;
    Clock::time_point start_ = Clock::now();
    Clock::duration finishing_{};  // spent on the first look, cleaning and writing, and not on passes
    Picture picture_;
    DisplayPicture shown_;
    int shown_samples_ = 0;
    std::optional<double> error_;
    Problems problems_;
};

// "0.5 %" or "0.005"; "10 s", "2 min" or seconds. A problem says what was expected.
Expected<double> read_error(const std::string& text);
Expected<double> read_seconds(const std::string& text);

}  // namespace understudy
