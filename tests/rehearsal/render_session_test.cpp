// A picture that goes on while its scene is changed comes to what a fresh one of the changed scene is.
#include "rehearsal/render_session.h"

#include <random>

#include <gtest/gtest.h>
#include <tbb/global_control.h>

#include "support/studio_from.h"

namespace understudy {
namespace {

using namespace std::chrono_literals;

// Two lights, of which the first stands before the second for some of the backdrop; somebody with hair.
const std::string kScene = R"(
[picture]
width = 24
height = 30
samples = 8
[camera]
distance = 1.6
[sitter]
head = "rowan"
GAZE
[backdrop]
surface = "white"
[[light]]
name = "key"
modifier = "softbox-60x90"
angle = -50
height = 1.6
distance = 1.1
meter = 5.6
[[light]]
name = "fill"
modifier = { shape = "disc", diameter = 0.5 }
angle = -80
height = 1.5
distance = 2
meter = 4.0
)";

ParsedScene scene(const std::vector<std::pair<std::string, std::string>>& changes = {}) {
    std::string text = kScene;
    for (const auto& [before, after] : changes) {
        const std::size_t at = text.find(before);
        EXPECT_NE(at, std::string::npos) << before;
        text.replace(at, before.size(), after);
    }
    if (const std::size_t gaze = text.find("GAZE"); gaze != std::string::npos) text.replace(gaze, 4, "");
    return {setup_from(text), value_of(parse_toml(text, "test.toml"))};
}

std::unique_ptr<RenderSession> opened(const ParsedScene& of) {
    return value_of(RenderSession::open(of, {source_library(), 2, 0}));
}

Proof completed(const RenderSession& session) {
    std::uint64_t seen = 0;
    for (;;) {
        const auto proof = session.wait_for_proof(seen, 60s);
        if (!proof) throw std::runtime_error("no proof came");
        if (proof->complete) return *proof;
        seen = proof->number;
    }
}

// Waits past the proofs of what was before the change.
Proof completed_after(const RenderSession& session) {
    while (session.progress() < 1.0) std::this_thread::sleep_for(5ms);
    return completed(session);
}

struct Fresh {
    Film film;
    FilmCard card;
};

Fresh fresh(const ParsedScene& of) {
    Rehearsal rehearsal = value_of(rehearse(of.setup, source_library()));
    const LitStudio lit = value_of(light_rehearsal(rehearsal));
    RenderOptions options;
    options.samples = of.setup.picture.samples;
    return {render_film(rehearsal.studio, *rehearsal.stage, options).film, quick_card(rehearsal, lit)};
}

void expect_same(const Proof& proof, const Fresh& wanted) {
    ASSERT_EQ(proof.film->samples, wanted.film.samples);
    ASSERT_EQ(proof.film->layers.size(), wanted.film.layers.size());
    for (std::size_t l = 0; l < wanted.film.layers.size(); ++l) {
        EXPECT_EQ(proof.film->layers[l].pixels, wanted.film.layers[l].pixels) << wanted.film.layers[l].light;
        EXPECT_EQ(proof.film->layers[l].glints, wanted.film.layers[l].glints) << wanted.film.layers[l].light;
    }
    EXPECT_EQ(proof.film->features.albedo, wanted.film.features.albedo);
    EXPECT_EQ(proof.film->features.normal, wanted.film.features.normal);
    EXPECT_EQ(proof.film->features.depth_m, wanted.film.features.depth_m);
    EXPECT_EQ(proof.film->features.samples, wanted.film.features.samples);
    ASSERT_EQ(proof.card.lights.size(), wanted.card.lights.size());
    for (std::size_t l = 0; l < wanted.card.lights.size(); ++l) {
        EXPECT_DOUBLE_EQ(proof.card.lights[l].exposure_power, wanted.card.lights[l].exposure_power);
    }
}

TEST(RenderSession, ComesToTheFreshPictureOfAChangedScene) {
    const auto session = opened(scene());
    expect_same(completed(*session), fresh(scene()));
    const auto goes_on_to = [&](const std::vector<std::pair<std::string, std::string>>& changes, Reach reach) {
        const ParsedScene changed = scene(changes);
        const auto change = session->change(changed);
        ASSERT_TRUE(change);
        EXPECT_EQ(change->reach, reach);
        expect_same(completed_after(*session), fresh(changed));
    };
    goes_on_to({{"meter = 5.6", "meter = 8.0"}}, Reach::kDeveloping);
    goes_on_to({{"angle = -50", "angle = -70"}}, Reach::kLights);
    goes_on_to({{"angle = -50", "angle = -70"},
                {"[backdrop]", "[[panel]]\nname = \"p\"\nangle = 60\ndistance = 0.7\n[backdrop]"}},
               Reach::kStudio);
    goes_on_to({{"[backdrop]\nsurface = \"white\"", "[room]\nambient = 20"}}, Reach::kStudio);
    goes_on_to({{"head = \"rowan\"", "head = \"rowan\"\nturn = 12"}}, Reach::kSitter);
    goes_on_to({}, Reach::kSitter);
}

// When every light has moved nothing is left of the film before but what the camera saw; that of few paths is not taken
// for well known when the next moves.
TEST(RenderSession, FollowsLightsThatMoveInTurn) {
    const auto session = opened(scene());
    completed(*session);
    const std::pair<std::string, std::string> key{"angle = -50", "angle = -70"};
    const std::pair<std::string, std::string> fill{"angle = -80", "angle = 80"};
    ASSERT_TRUE(session->change(scene({key})));
    ASSERT_TRUE(session->change(scene({key, fill})));
    expect_same(completed_after(*session), fresh(scene({key, fill})));
    ASSERT_TRUE(session->change(scene({{"angle = -50", "angle = 40"}, fill})));
    expect_same(completed_after(*session), fresh(scene({{"angle = -50", "angle = 40"}, fill})));
}

// A first look has more paths in eyes than a picture of two paths.
TEST(RenderSession, EndsAsRenderedWithTwoPathsToo) {
    const std::pair<std::string, std::string> two{"samples = 8", "samples = 2"};
    const auto session = opened(scene({two}));
    expect_same(completed(*session), fresh(scene({two})));
    ASSERT_TRUE(session->change(scene({two, {"angle = -50", "angle = 50"}})));
    expect_same(completed_after(*session), fresh(scene({two, {"angle = -50", "angle = 50"}})));
}

// Those that the scene gives, for one.
TEST(RenderSession, KeepsPupilsWhenALightMoves) {
    const std::pair<std::string, std::string> told{"GAZE", "pupil = \"7 mm\""};
    const auto session = opened(scene({told}));
    completed(*session);
    ASSERT_TRUE(session->change(scene({told, {"angle = -50", "angle = 50"}})));
    expect_same(completed_after(*session), fresh(scene({told, {"angle = -50", "angle = 50"}})));
}

TEST(RenderSession, MovesEyesThatLookAtTheLight) {
    const std::pair<std::string, std::string> looks{"GAZE", "gaze = \"key\""};
    const auto session = opened(scene({looks}));
    completed(*session);
    const ParsedScene moved = scene({looks, {"angle = -50", "angle = -30"}});
    const auto change = session->change(moved);
    ASSERT_TRUE(change);
    EXPECT_EQ(change->reach, Reach::kSitter);
    expect_same(completed_after(*session), fresh(moved));
}

// Of a scene that was just opened as well; that it was seen before the next came is up to the machine.
TEST(RenderSession, BeginsWithACoarseLook) {
    const auto session = opened(scene());
    const auto first = session->wait_for_proof(0, 60s);
    ASSERT_TRUE(first);
    if (first->number == 1) {
        EXPECT_EQ(first->every, 2);
        EXPECT_EQ(first->film->width, 12);
        EXPECT_FALSE(first->complete);
    }
    expect_same(completed(*session), fresh(scene()));
}

// The light's own layer is there before the rest is known to be right: its first proof already has it at its new place.
TEST(RenderSession, ShowsAMovedLightFirst) {
    const auto session = opened(scene());
    const Proof before = completed(*session);
    ASSERT_TRUE(session->change(scene({{"angle = -50", "angle = 50"}})));
    const auto first = session->wait_for_proof(before.number, 60s);
    ASSERT_TRUE(first);
    EXPECT_NE(first->film->layers[0].pixels.front(), before.film->layers[0].pixels.front());
    if (first->every == 2) {
        EXPECT_EQ(first->film->width, 12);
        EXPECT_EQ(first->film->layers[1].pixels[12 * 3 + 4], before.film->layers[1].pixels[24 * 6 + 8]);
        EXPECT_EQ(first->film->features.normal[12 * 3 + 4], before.film->features.normal[24 * 6 + 8]);
        EXPECT_EQ(first->film->samples, 1);
    }
    EXPECT_EQ(first->film->features.samples, before.film->samples) << "what the camera sees was known";
}

// Of another sitter's features nothing is left, however soon a light moves.
TEST(RenderSession, ForgetsWhatTheCameraSawOfAnotherSitter) {
    const auto session = opened(scene());
    const Proof before = completed(*session);
    const std::pair<std::string, std::string> turned{"head = \"rowan\"", "head = \"rowan\"\nturn = 30"};
    {
        // So that no film of the turned sitter comes between.
        const RenderSession::Hold hold(*session);
        ASSERT_TRUE(session->change(scene({turned})));
        ASSERT_TRUE(session->change(scene({turned, {"angle = -50", "angle = 50"}})));
    }
    const auto first = session->wait_for_proof(before.number, 60s);
    ASSERT_TRUE(first);
    EXPECT_EQ(first->film->features.samples, first->film->samples);
    expect_same(completed_after(*session), fresh(scene({turned, {"angle = -50", "angle = 50"}})));
}

TEST(RenderSession, StaysAsItWasOnAProblem) {
    const auto session = opened(scene());
    const Proof before = completed(*session);
    const std::vector<std::pair<std::string, std::string>> wrong{
        {"angle = -50\nheight = 1.6\ndistance = 1.1", "position = [0, 1.25, 0]"},  // inside the head
        {"[backdrop]", "[room]\nsize = [2.8, 5, 2.8]\n[backdrop]"},                // the lights outside
    };
    for (const auto& place : wrong) {
        const auto change = session->change(scene({place}));
        ASSERT_FALSE(change) << place.second;
        EXPECT_NE(change.problems().front().text.find("test.toml:"), std::string::npos)
            << change.problems().front().text;
        expect_same(completed_after(*session), fresh(scene()));
    }
    ASSERT_TRUE(session->change(scene()));
    EXPECT_EQ(completed_after(*session).film->layers[0].pixels, before.film->layers[0].pixels);
}

// The film there is has a layer that the new scene has no light for, until a new one is begun.
TEST(RenderSession, ShowsNoFilmOfOtherLightsUnderANewCard) {
    const std::string fill = kScene.substr(kScene.find("[[light]]\nname = \"fill\""));
    const auto session = opened(scene());
    const Proof before = completed(*session);
    {
        const RenderSession::Hold hold(*session);
        ASSERT_TRUE(session->change(scene({{fill, ""}})));
        ASSERT_TRUE(session->change(scene({{fill, ""}, {"meter = 5.6", "meter = 8.0"}})));
        EXPECT_EQ(session->proof()->card.lights.size(), session->proof()->film->layers.size());
    }
    expect_same(completed_after(*session), fresh(scene({{fill, ""}, {"meter = 5.6", "meter = 8.0"}})));
    EXPECT_GT(session->proof()->number, before.number);
}

TEST(RenderSession, WaitsWhileItIsHeld) {
    const auto session = opened(scene());
    completed(*session);
    {
        const RenderSession::Hold hold(*session);
        ASSERT_TRUE(session->change(scene({{"surface = \"white\"", "surface = \"black\""}})));
        std::this_thread::sleep_for(1s);
        EXPECT_LT(session->progress(), 1.0);
        session->cancel();
    }
    ASSERT_TRUE(session->change(scene()));
    expect_same(completed_after(*session), fresh(scene()));
}

// From several threads, at random, and stopped in between: meant for the thread sanitizer, which does not see into
// oneTBB. So that has one thread, and what is watched are the session's own and those of this test.
TEST(RenderSession, TakesChangesAndCancelsFromAnywhere) {
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    const std::vector<ParsedScene> scenes{
        scene(), scene({{"meter = 5.6", "meter = 11.0"}}), scene({{"angle = -50", "angle = 20"}}),
        scene({{"angle = -80", "angle = 80"}}), scene({{"surface = \"white\"", "surface = \"black\""}})};
    const auto session = opened(scenes[0]);
    std::vector<std::thread> hands;
    for (unsigned hand = 0; hand < 3; ++hand) {
        hands.emplace_back([&, hand] {
            std::mt19937 numbers(hand);
            for (int i = 0; i < 12; ++i) {
                if (numbers() % 4 == 0) session->cancel();
                const RenderSession::Hold hold(*session);
                EXPECT_TRUE(session->change(scenes[numbers() % scenes.size()]));
                session->wait_for_proof(session->proof() ? session->proof()->number : 0,
                                        std::chrono::milliseconds(numbers() % 40));
                EXPECT_LE(session->progress(), 1.0);
            }
        });
    }
    for (std::thread& hand : hands) hand.join();
    session->cancel();
    // A change of something that is traced, so that it goes on.
    ASSERT_TRUE(session->change(scene({{"surface = \"white\"", "surface = \"grey\""}})));
    expect_same(completed_after(*session), fresh(scene({{"surface = \"white\"", "surface = \"grey\""}})));
}

}  // namespace
}  // namespace understudy
