#include "cli/preview.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "film/enlarge.h"

namespace understudy {

namespace {

double seconds_of(std::chrono::steady_clock::duration time) { return std::chrono::duration<double>(time).count(); }

// Of codes 0 … 255, as a share of the whole range.
double difference_between(const DisplayPicture& before, const DisplayPicture& after) {
    double sum = 0.0;
    for (std::size_t i = 0; i < after.pixels.size(); ++i) {
        for (std::size_t c = 0; c < 3; ++c) {
            const double difference = (static_cast<double>(after.pixels[i].at(c)) - before.pixels[i].at(c)) / 255.0;
            sum += difference * difference;
        }
    }
    return std::sqrt(sum / (3.0 * static_cast<double>(after.pixels.size())));
}

struct Measured {
    double number = 0.0;
    std::string_view unit;
};

std::optional<Measured> measured(std::string_view text) {
    double number = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || !std::isfinite(number)) return std::nullopt;
    std::string_view unit = text.substr(static_cast<std::size_t>(end - text.data()));
    while (unit.starts_with(' ')) unit.remove_prefix(1);
    return Measured{number, unit};
}

}  // namespace

Preview::Preview(std::filesystem::path path, FilmCard card, const Finisher& finisher, PreviewGoal goal)
    : path_(std::move(path)), card_(std::move(card)), finisher_(finisher), goal_(goal) {}

bool Preview::write(const DisplayPicture& picture, Packing packing) {
    const auto written = write_display_picture(path_, *picture_kind(path_), picture, tags_of(card_), packing);
    if (!written) problems_ = written.problems();
    return static_cast<bool>(written);
}

bool Preview::first_look(const Film& film, int every, int width, int height) {
    const Picture thin = finisher_.finish(film, developing_of(card_));
    const bool written = write(display_picture(enlarged(thin, every, width, height)), Packing::kQuick);
    finishing_ = Clock::now() - start_;  // nothing yet of the passes that a time is shared out to
    return written;
}

int Preview::after_pass(const Film& film) {
    const Clock::time_point begin = Clock::now();
    picture_ = finisher_.finish(film, developing_of(card_));
    DisplayPicture picture = display_picture(picture_);
    if (!write(picture, Packing::kSmall)) return 0;
    // The picture of twice the paths is the mean of the one before and of another that knows nothing of it: on the mean
    // it is as far from that one as it is from the truth.
    if (film.samples == 2 * shown_samples_) error_ = difference_between(shown_, picture);
    shown_ = std::move(picture);
    shown_samples_ = film.samples;
    finishing_ += Clock::now() - begin;
    if (goal_.error && error_ && *error_ <= *goal_.error) return 0;
    return goal_.seconds ? paths_in_time(film.samples) : std::numeric_limits<int>::max();
}

int Preview::paths_in_time(int samples) const {
    const double all = seconds_of(Clock::now() - start_);
    const double one_path = (all - seconds_of(finishing_)) / samples;
    return std::max(0, static_cast<int>((*goal_.seconds - all) / one_path));
}

// Noise falls with the root of the time.
std::optional<double> Preview::seconds_left() const {
    const double spent = seconds_of(Clock::now() - start_);
    if (goal_.seconds) return *goal_.seconds - spent;
    if (!goal_.error || !error_) return std::nullopt;
    const double times = *error_ / *goal_.error;
    return spent * (times * times - 1.0);
}

std::string Preview::state() const {
    std::string state = error_ ? fmt::format("remaining error {:.2g} %", 100.0 * *error_) : "first picture";
    if (const auto left = seconds_left(); left && *left > 0.0) {
        const auto whole = static_cast<int>(std::ceil(*left));
        state += fmt::format(", {}:{:02} left", whole / 60, whole % 60);
    }
    return state;
}

Expected<double> read_error(const std::string& text) {
    const auto said = measured(text);
    const bool percent = said && said->unit == "%";
    if (said && (percent || said->unit.empty()) && said->number > 0.0 && said->number < (percent ? 100.0 : 1.0)) {
        return percent ? 0.01 * said->number : said->number;
    }
    return Problem{Blame::kWrongInput,
                   fmt::format(R"(--until {}: expected a share of the picture's white, such as "0.5 %")", text)};
}

Expected<double> read_seconds(const std::string& text) {
    const auto said = measured(text);
    const double unit = !said ? 0.0 : said->unit.empty() || said->unit == "s" ? 1.0 : said->unit == "min" ? 60.0 : 0.0;
    if (said && unit > 0.0 && said->number > 0.0 && said->number * unit <= 86400.0) return unit * said->number;
    return Problem{Blame::kWrongInput,
                   fmt::format(R"(--time {}: expected a time up to a day, such as "10 s" or "2 min")", text)};
}

}  // namespace understudy
