#include "rehearsal/render_session.h"

#include <algorithm>
#include <utility>

#include "rehearsal/laid_film.h"
#include "sitter/pupil.h"
#include "stage/placing.h"
#include "transport/tiles.h"

namespace understudy {

namespace {

// Other studios, the same sitter.
void exchange_but_sitter(Studio& a, Studio& b) {
    std::swap(a, b);
    std::swap(a.sitter, b.sitter);
}

}  // namespace

Expected<std::unique_ptr<RenderSession>> RenderSession::open(const ParsedScene& scene, const SessionOptions& options) {
    auto head = load_head(scene.setup.sitter, options.library);
    if (!head) return head.problems();
    auto rehearsal = rehearse(scene.setup, options.library, *head);
    if (!rehearsal) return rehearsal.problems();
    auto lit = light_rehearsal(*rehearsal);
    if (!lit) return lit.problems();
    std::unique_ptr<RenderSession> session(
        new RenderSession(options, {std::move(*rehearsal), std::move(*head), std::move(*lit)}, scene));
    const std::lock_guard<std::mutex> lock(session->changing_);
    session->begin({Reach::kSitter, {}, false});
    return session;
}

RenderSession::RenderSession(SessionOptions options, Ready ready, const ParsedScene& scene)
    : options_(std::move(options)), ready_(std::move(ready)), document_(scene.document) {
    card_ = quick_card(ready_.rehearsal, ready_.lit);
}

RenderSession::~RenderSession() { cancel(); }

void RenderSession::cancel() {
    const std::lock_guard<std::mutex> lock(changing_);
    halt();
}

void RenderSession::halt() {
    {
        const std::lock_guard<std::mutex> lock(showing_);
        stop_ = true;
        released_.notify_all();
    }
    if (tracing_.joinable()) tracing_.join();
    stop_ = false;
}

void RenderSession::hold(int more) {
    const std::lock_guard<std::mutex> lock(showing_);
    holds_ += more;
    released_.notify_all();
}

void RenderSession::wait_while_held() {
    std::unique_lock<std::mutex> lock(showing_);
    released_.wait(lock, [&] { return holds_ == 0 || stop_; });
}

Expected<SceneChange> RenderSession::change(const ParsedScene& scene) {
    const std::lock_guard<std::mutex> lock(changing_);
    SceneChange change = change_between(document_, scene.document);
    if (change.reach != Reach::kNothing) {
        Problems problems = change.reach == Reach::kSitter ? change_sitter(scene) : change_studio(scene, change);
        if (!problems.empty()) return problems;
    }
    document_ = scene.document;
    return change;
}

Problems RenderSession::change_sitter(const ParsedScene& scene) {
    auto head = load_head(scene.setup.sitter, options_.library);
    if (!head) return head.problems();
    auto rehearsal = rehearse(scene.setup, options_.library, *head);
    if (!rehearsal) return rehearsal.problems();
    auto lit = light_rehearsal(*rehearsal);
    if (!lit) return lit.problems();
    halt();
    ready_ = {std::move(*rehearsal), std::move(*head), std::move(*lit)};
    set_card({Reach::kSitter, {}, false});
    begin({Reach::kSitter, {}, false});
    return {};
}

Problems RenderSession::change_studio(const ParsedScene& scene, SceneChange& change) {
    const Studio& before = ready_.rehearsal.studio;
    auto studio = place_studio_round(before.sitter, scene.setup, options_.library, ready_.head);
    if (!studio) return studio.problems();
    // Whoever looks at a light looks elsewhere when it moves.
    if (gaze_target(*studio) != gaze_target(before)) {
        change = {Reach::kSitter, {}, false};
        return change_sitter(scene);
    }
    const auto has_ambient = [](const Studio& of) { return of.setup.room.ambient_lx > 0.0; };
    if (has_ambient(*studio) != has_ambient(ready_.rehearsal.studio)) change.reach = Reach::kStudio;
    Rehearsal& rehearsal = ready_.rehearsal;
    exchange_but_sitter(rehearsal.studio, *studio);
    if (change.reach > Reach::kDeveloping) rearrange();
    Problems problems = rehearsal.stage->problems_with(rehearsal.studio);
    if (problems.empty()) problems = relight(change);
    if (!problems.empty()) {
        exchange_but_sitter(rehearsal.studio, *studio);
        if (change.reach > Reach::kDeveloping) {
            rearrange();
            begin({Reach::kStudio, {}, true});
        }
        return problems;
    }
    set_card(change);
    if (change.reach > Reach::kDeveloping || change.pupils) begin(change);
    return {};
}

void RenderSession::rearrange() {
    halt();
    ready_.rehearsal.stage->rearrange(ready_.rehearsal.studio);
    ready_.rehearsal.nobody->rearrange(ready_.rehearsal.studio);
    // The studio's eyes have pupils as they are when nobody has asked.
    set_pupils(ready_.lit);
}

void RenderSession::set_pupils(const LitStudio& lit) {
    ready_.rehearsal.stage->set_pupil_radius(pupil_radius_behind_cornea_m(1e-3 * lit.pupil->diameter_mm));
}

Problems RenderSession::relight(SceneChange& change) {
    auto lit = read_lights(ready_.rehearsal.studio, *ready_.rehearsal.nobody);
    if (!lit) return lit.problems();
    change.pupils = lit->pupil->diameter_mm != ready_.lit.pupil->diameter_mm && ready_.rehearsal.studio.sitter.eyes;
    if (change.pupils) {
        halt();
        set_pupils(*lit);
    }
    ready_.lit = std::move(*lit);
    return {};
}

// The film there is, if it is one of this scene, is shown under the new card at once.
void RenderSession::set_card(const SceneChange& change) {
    FilmCard card = quick_card(ready_.rehearsal, ready_.lit);
    const std::lock_guard<std::mutex> lock(showing_);
    card_ = std::move(card);
    if (!proof_ || change.reach > Reach::kDeveloping || stale_ == all_layers()) return;
    proof_->card = card_;
    proof_->complete = proof_->complete && !change.pupils && stale_ == 0;
    ++proof_->number;
    shown_.notify_all();
}

LayerBits RenderSession::all_layers() const { return (1U << ready_.rehearsal.stage->layer_count()) - 1U; }

LayerBits RenderSession::bits_of(const std::vector<std::string>& lights) const {
    LayerBits bits = 0;
    const auto& all = ready_.rehearsal.studio.setup.lights;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (std::find(lights.begin(), lights.end(), all[i].name) != lights.end()) bits |= 1U << i;
    }
    return bits;
}

// What the tracing thread needs of it, which is nothing of the sitter.
Studio RenderSession::seen_studio() {
    Studio& studio = ready_.rehearsal.studio;
    Sitter sitter = std::exchange(studio.sitter, {});
    Studio seen = studio;
    studio.sitter = std::move(sitter);
    return seen;
}

// A first look; then what moved, as well as the rest is known; then everything, unseen until it is better than that.
// When only lights have moved a single path a pixel can be cleaned, for what the camera sees is known.
std::vector<RenderSession::Task> RenderSession::tasks_for(const SceneChange& change, int samples) {
    const int pass = RenderOptions{}.first_pass;
    const LayerBits all = all_layers();
    const std::lock_guard<std::mutex> lock(showing_);
    if (change.reach == Reach::kLights) stale_ |= bits_of(change.lights);
    if (change.reach > Reach::kLights) {
        stale_ = all;
        whole_.reset();
    }
    const Task look{all, kFirstLookSamples, kFirstLookSamples, kFirstLookEvery, kFirstLookInEyes};
    if (!whole_) return {look, {all, pass, samples}};
    if (stale_ == 0) return {{all, pass, samples, 1, 1, std::min(known_ + 1, samples)}};
    const int known = stale_ == all ? 1 : known_;
    return {{stale_, 1, 1, kFirstLookEvery, kFirstLookInEyes, 1, true},
            {stale_, 1, known, 1, kFirstLookInEyes, 1, true},
            {all, pass, samples, 1, 1, std::min(known + 1, samples), stale_ == all}};
}

void RenderSession::begin(const SceneChange& change) {
    Studio studio = seen_studio();
    const PictureSettings& picture = studio.setup.picture;
    if (!change.same_view) {
        memory_.clear(Tiles(picture.width, picture.height).count());
    }
    auto tasks = tasks_for(change, options_.samples > 0 ? options_.samples : picture.samples);
    progress_ = 0.0;
    tracing_ = std::thread(
        [this, studio = std::move(studio), tasks = std::move(tasks)]() mutable { trace(studio, std::move(tasks)); });
}

void RenderSession::trace(const Studio& studio, std::vector<Task> tasks) {
    double all_work = 0.0;
    for (const Task& task : tasks) all_work += task.work();
    double done = 0.0;
    std::unique_ptr<const Rendered> look;
    for (const Task& task : tasks) {
        std::shared_ptr<const Film> before;
        if (task.over_whole) {
            const std::lock_guard<std::mutex> lock(showing_);
            before = whole_;
        }
        RenderOptions options;
        options.samples = task.samples;
        options.seed = studio.setup.picture.seed;
        options.threads = options_.threads;
        options.cancel = &stop_;
        options.first_pass = task.first_pass;
        options.more_in_eyes = task.more_in_eyes;
        options.layers = task.layers;
        options.every = task.every;
        options.memory = &memory_;
        if (look && task.begins_with(tasks.front())) options.look = look.get();
        options.progress = [&](double share) {
            progress_ = (done + share * task.work()) / all_work;
            if (holds_ > 0) wait_while_held();
        };
        options.after_pass = [&](const Film& film) {
            const bool last = &task == &tasks.back() && film.samples == task.samples;
            if (film.samples >= task.shown_from) show(studio, task, film, last, before);
            return task.samples;
        };
        Rendered rendered = render_film(studio, *ready_.rehearsal.stage, options);
        if (rendered.cancelled) return;
        // Films are large.
        look.reset();
        if (task.every == kFirstLookEvery) look = std::make_unique<Rendered>(std::move(rendered));
        done += task.work();
    }
    progress_ = 1.0;
}

void RenderSession::show(const Studio& studio, const Task& task, const Film& film, bool last,
                         std::shared_ptr<const Film>& before) {
    // Films are large: those that are no longer shown go before the next is copied.
    const std::lock_guard<std::mutex> lock(showing_);
    const std::uint64_t number = proof_ ? proof_->number + 1 : 1;
    const bool has_all_pixels = task.every == 1;
    proof_.reset();
    if (has_all_pixels) whole_.reset();
    const auto shown =
        std::make_shared<const Film>(before ? laid_over(*before, film, task.layers, task.every) : Film(film));
    if (has_all_pixels) {
        whole_ = shown;
        if (before) before = shown;
        if (task.layers == all_layers()) {
            stale_ = 0;
            known_ = film.samples;
        }
    }
    const PictureSettings& picture = studio.setup.picture;
    proof_ = Proof{shown, card_, picture.width, picture.height, task.every, number, last};
    shown_.notify_all();
}

std::optional<Proof> RenderSession::proof() const {
    const std::lock_guard<std::mutex> lock(showing_);
    return proof_;
}

std::optional<Proof> RenderSession::wait_for_proof(std::uint64_t later_than, std::chrono::milliseconds at_most) const {
    std::unique_lock<std::mutex> lock(showing_);
    const auto is_there = [&] { return proof_ && proof_->number > later_than; };
    if (!shown_.wait_for(lock, at_most, is_there)) return std::nullopt;
    return proof_;
}

}  // namespace understudy
