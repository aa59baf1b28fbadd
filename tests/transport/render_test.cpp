// Films: the same whatever the threads, and stopped when asked.
#include "transport/render.h"

#include <cstring>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "support/studio_from.h"
#include "transport/eye_pixels.h"
#include "transport/tiles.h"

namespace understudy {
namespace {

Studio ball_studio() {
    return studio_from(
        "[picture]\nwidth = 48\nheight = 40\n[sitter]\nhead = \"ball\"\n[room]\nambient = 5\n[[light]]\n"
        "modifier = { shape = \"disc\", diameter = 0.5 }\nmeter = 4.0\nangle = -40\nheight = 1.6\ndistance = 1.2\n"
        "[[panel]]\nname = \"fill\"\nsurface = \"silver\"\nangle = 70\ndistance = 0.9\n");
}

Rendered render(const Studio& studio, int threads, unsigned seed) {
    const Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 8;
    options.seed = seed;
    options.threads = threads;
    return render_film(studio, stage, options);
}

bool same_bits(const Film& a, const Film& b) {
    const auto same = [](const auto& x, const auto& y) {
        return x.size() == y.size() && std::memcmp(x.data(), y.data(), x.size() * sizeof(x[0])) == 0;
    };
    if (a.layers.size() != b.layers.size()) return false;
    for (std::size_t i = 0; i < a.layers.size(); ++i) {
        if (!same(a.layers[i].pixels, b.layers[i].pixels)) return false;
        if (!same(a.layers[i].glints, b.layers[i].glints)) return false;
    }
    return same(a.features.albedo, b.features.albedo) && same(a.features.normal, b.features.normal) &&
           same(a.features.depth_m, b.features.depth_m);
}

TEST(RenderFilm, IsTheSameForAnyNumberOfThreads) {
    const Studio studio = ball_studio();
    const Rendered one = render(studio, 1, 7);
    const Rendered two = render(studio, 2, 7);
    const Rendered again = render(studio, 2, 7);
    EXPECT_TRUE(same_bits(one.film, two.film));
    EXPECT_TRUE(same_bits(two.film, again.film));
    EXPECT_EQ(one.rays, two.rays);
    EXPECT_FALSE(same_bits(one.film, render(studio, 2, 8).film));
}

// Where paths go depends on what was found before, and that on no thread.
TEST(RenderFilm, IsTheSameForAnyNumberOfThreadsWherePathsGoByNoise) {
    // Before nothing: most of the picture has no noise at all.
    const Studio studio = studio_from(
        "[picture]\nwidth = 96\nheight = 80\n[sitter]\nhead = \"ball\"\n[backdrop]\nsurface = \"none\"\n[[light]]\n"
        "modifier = { shape = \"disc\", diameter = 0.5 }\nmeter = 4.0\nangle = -40\nheight = 1.6\ndistance = 1.2\n");
    const Stage stage(studio, Stage::With::kSitter);
    const auto rendered = [&](int threads, std::vector<double> weights) {
        RenderOptions options;
        options.samples = 32;
        options.threads = threads;
        options.weights = std::move(weights);
        return render_film(studio, stage, options).film;
    };
    const std::vector<double> weights{1.0};
    EXPECT_TRUE(same_bits(rendered(1, weights), rendered(2, weights)));
    EXPECT_FALSE(same_bits(rendered(2, weights), rendered(2, {})));
}

TEST(RenderFilm, HoldsWhatWasAsked) {
    const Studio studio = ball_studio();
    const Rendered rendered = render(studio, 2, 0);
    EXPECT_EQ(rendered.film.width, 48);
    EXPECT_EQ(rendered.film.height, 40);
    EXPECT_EQ(rendered.film.samples, 8);
    EXPECT_EQ(rendered.non_finite, 0U);
    EXPECT_FALSE(rendered.cancelled);
    ASSERT_EQ(rendered.film.layers.size(), 2U);
    EXPECT_EQ(rendered.film.layers[1].light, "ambient");
    const std::size_t middle = 20 * 48 + 24;
    // The lens's distance to the ball's front: 2.2 m by default less its radius.
    EXPECT_NEAR(rendered.film.features.depth_m[middle], 2.1F, 0.003F);
    EXPECT_NEAR(rendered.film.features.normal[middle].z, 1.0F, 0.01F);
    for (const float band : rendered.film.features.albedo[middle]) EXPECT_NEAR(band, 0.18F, 1e-5F);
}

TEST(RenderFilm, StopsWhenAsked) {
    const Studio studio = ball_studio();
    const Stage stage(studio, Stage::With::kSitter);
    const std::atomic<bool> cancel = true;
    RenderOptions options;
    options.samples = 65536;
    options.cancel = &cancel;
    const Rendered rendered = render_film(studio, stage, options);
    EXPECT_TRUE(rendered.cancelled);
    EXPECT_EQ(rendered.film.samples, 0);
}

TEST(RenderFilm, TellsHowFarItIs) {
    const Studio studio = ball_studio();
    const Stage stage(studio, Stage::With::kSitter);
    double last = 0.0;
    RenderOptions options;
    options.samples = 4;
    options.progress = [&](double share) {
        EXPECT_GE(share, last);
        last = share;
    };
    const Rendered rendered = render_film(studio, stage, options);
    EXPECT_EQ(rendered.film.samples, 4);
    EXPECT_NEAR(last, 1.0, 1e-9);
}

// A layer alone is what it is among the others, for no path looks at the lights to choose its way.
TEST(RenderFilm, TracesALayerAloneAsAmongAll) {
    const Studio studio = ball_studio();
    const Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 8;
    const Film all = render_film(studio, stage, options).film;
    for (std::size_t l = 0; l < all.layers.size(); ++l) {
        options.layers = 1U << l;
        const Film one = render_film(studio, stage, options).film;
        EXPECT_EQ(one.layers[l].pixels, all.layers[l].pixels);
        EXPECT_TRUE(one.layers[1 - l].pixels.empty());
    }
}

// Paths that are known take the way that they took before; a light at another place finds it changed nothing of them.
TEST(RenderFilm, IsTheSameAlongRememberedPaths) {
    const std::string scene =
        "[picture]\nwidth = 24\nheight = 30\n[camera]\ndistance = 1.5\n[sitter]\nhead = \"rowan\"\n[room]\nambient = "
        "5\n"
        "[[light]]\nmodifier = { shape = \"disc\", diameter = 0.5 }\nmeter = 4.0\nheight = 1.6\ndistance = 1.2\n";
    const Studio studio = studio_from(scene + "angle = -40\n");
    const Studio moved = studio_from(scene + "angle = 70\n");
    Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 8;
    const Film plain = render_film(studio, stage, options).film;
    PictureMemory memory;
    memory.clear(Tiles(plain.width, plain.height).count());
    options.memory = &memory;
    EXPECT_TRUE(same_bits(render_film(studio, stage, options).film, plain));
    EXPECT_GT(memory.bytes(), 0U);
    const Rendered again = render_film(studio, stage, options);
    EXPECT_TRUE(same_bits(again.film, plain));
    stage.rearrange(moved);
    const Film along = render_film(moved, stage, options).film;
    options.memory = nullptr;
    EXPECT_TRUE(same_bits(along, render_film(moved, Stage(moved, Stage::With::kSitter), options).film));
}

// A catchlight has its light's colour from the first path on, whose four wavelengths tell of four bands alone.
TEST(RenderFilm, BooksACatchlightAlikeInAllBands) {
    const Studio studio = studio_from(
        "[picture]\nwidth = 240\nheight = 300\n[camera]\ndistance = 1.5\n[sitter]\nhead = \"rowan\"\n[[light]]\n"
        "modifier = { shape = \"disc\", diameter = 0.5 }\nmeter = 4.0\nangle = -30\nheight = 1.6\ndistance = 1.2\n");
    const Stage stage(studio, Stage::With::kSitter);
    const EyePixels eyes(Camera(studio), stage.eyes());
    RenderOptions options;
    options.samples = 1;
    const FilmLayer once = render_film(studio, stage, options).film.layers[0];
    options.more_in_eyes = 8;
    const FilmLayer often = render_film(studio, stage, options).film.layers[0];
    int glints = 0;
    int more_glints = 0;
    for (std::size_t i = 0; i < once.pixels.size(); ++i) {
        const auto at = static_cast<int>(i);
        const bool in_eye = eyes.include(at % 240, at / 240);
        if (!in_eye) {
            EXPECT_EQ(often.pixels[i], once.pixels[i]);
        }
        if (often.glints[i] > 0.0F) ++more_glints;
        if (!(once.glints[i] > 0.0F)) continue;
        ++glints;
        EXPECT_TRUE(in_eye) << i;
        for (const float band : once.pixels[i]) EXPECT_GE(band, 0.9999F * once.glints[i]);
    }
    EXPECT_GE(glints, 2);
    EXPECT_GT(more_glints, glints) << "the catchlights' edges";
}

// A ball in one light, in a picture of this size.
Studio lit_ball(int width, int height) {
    return studio_from(fmt::format(
        "[picture]\nwidth = {}\nheight = {}\n[sitter]\nhead = \"ball\"\n[[light]]\nmodifier = {{ shape = \"disc\", "
        "diameter = 0.5 }}\nmeter = 4.0\nangle = -40\nheight = 1.6\ndistance = 1.2\n",
        width, height));
}

// A first look has pixels that the whole film has too.
TEST(RenderFilm, TracesEveryOtherPixelAsItIs) {
    const Studio studio = lit_ball(21, 18);
    const Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 4;
    const Film whole = render_film(studio, stage, options).film;
    options.every = 2;
    const Film thin = render_film(studio, stage, options).film;
    ASSERT_EQ(thin.width, 11);
    ASSERT_EQ(thin.height, 9);
    for (std::size_t y = 0; y < 9; ++y) {
        for (std::size_t x = 0; x < 11; ++x) {
            EXPECT_EQ(thin.layers[0].pixels[11 * y + x], whole.layers[0].pixels[21 * (2 * y) + 2 * x]);
        }
    }
}

// The pixels of a first look are not traced again, and the film is the same, to the last bit and after later passes
// too.
TEST(RenderFilm, TakesAFirstLookOver) {
    const Studio studio = lit_ball(35, 18);
    const Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 8;
    options.first_pass = 2;
    const Rendered whole = render_film(studio, stage, options);
    const Rendered look = first_look(studio, stage, options);
    options.look = &look;
    double done = 0.0;
    options.progress = [&](double share) { done = share; };
    const Rendered after = render_film(studio, stage, options);
    EXPECT_TRUE(same_bits(after.film, whole.film));
    EXPECT_EQ(after.met, whole.met);
    EXPECT_EQ(after.rays + look.rays, whole.rays);
    EXPECT_DOUBLE_EQ(done, 1.0);
}

}  // namespace
}  // namespace understudy
