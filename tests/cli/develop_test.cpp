// Developing a saved film against rendering anew.

#include <cmath>

#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

std::string two_lights(double key) {
    return "[picture]\nwidth = 32\nheight = 40\nsamples = 16\n[sitter]\nhead = \"ball\"\n"
           "[[light]]\nname = \"key\"\nmodifier = \"softbox-60x90\"\nangle = -45\nmeter = " +
           std::to_string(key) + "\n[[light]]\nname = \"fill\"\nmodifier = \"octa-120\"\nangle = 30\nmeter = 2.0\n";
}

void expect_done(const Workplace& place, const std::vector<std::string>& arguments) {
    const Outcome outcome = place.run(arguments);
    ASSERT_EQ(outcome.status, 0) << outcome.err;
}

void expect_alike(const Seen& a, const Seen& b, float within) {
    ASSERT_EQ(a.values.size(), b.values.size());
    ASSERT_FALSE(a.values.empty());
    float most = 0.0F;
    for (std::size_t i = 0; i < a.values.size(); ++i) most = std::max(most, std::abs(a.values[i] - b.values[i]));
    EXPECT_LE(most, within);
}

class Developed : public testing::Test {
  protected:
    void SetUp() override {
        place_.write("two.toml", two_lights(4.0));
        expect_done(place_, {"render", "two.toml", "-o", "two.png", "--film", "film.exr"});
    }
    Workplace place_;
};

TEST_F(Developed, WithoutAChangeItIsThePicture) {
    expect_done(place_, {"develop", "film.exr", "-o", "again.png"});
    expect_alike(seen(place_.path("two.png")), seen(place_.path("again.png")), 1.01F);
}

// Light is linear and the paths' seed is the scene's: other powers give what a fresh render gives.
TEST_F(Developed, OtherPowersAreAFreshRender) {
    place_.write("brighter.toml", two_lights(5.65685425));
    expect_done(place_, {"render", "brighter.toml", "-o", "brighter.png"});
    expect_done(place_, {"develop", "film.exr", "-o", "stop.png", "--power", "key=+1"});
    expect_done(place_, {"develop", "film.exr", "-o", "meter.png", "--meter", "key=5.65685425"});
    const Seen fresh = seen(place_.path("brighter.png"));
    expect_alike(fresh, seen(place_.path("stop.png")), 1.01F);
    expect_alike(fresh, seen(place_.path("meter.png")), 1.01F);
    EXPECT_GT(fresh.mean(), 1.1 * seen(place_.path("two.png")).mean());
}

TEST_F(Developed, ALightLeftOutIsARenderWithoutIt) {
    std::string alone = two_lights(4.0);
    alone.resize(alone.rfind("[[light]]"));
    place_.write("alone.toml", alone);
    expect_done(place_, {"render", "alone.toml", "-o", "alone.exr"});
    expect_done(place_, {"develop", "film.exr", "-o", "off.exr", "--off", "fill"});
    const double off = seen(place_.path("off.exr")).mean();
    // Other paths, so within noise: 16 samples of 1280 pixels.
    EXPECT_NEAR(off, seen(place_.path("alone.exr")).mean(), 0.005 * off);
}

// A stop of aperture, ISO: ISO 400 at f/5.657 is ISO 200 at f/4.
TEST_F(Developed, ApertureAndIsoTrade) {
    expect_done(place_, {"develop", "film.exr", "-o", "trade.png", "--iso", "400", "--aperture", "5.65685425"});
    expect_alike(seen(place_.path("two.png")), seen(place_.path("trade.png")), 1.01F);
}

TEST_F(Developed, BlackAndWhiteHasNoColour) {
    expect_done(place_, {"develop", "film.exr", "-o", "grey.png", "--treatment", "black-and-white",
                         "--colour-temperature", "key=2800"});
    const Seen grey = seen(place_.path("grey.png"));
    ASSERT_GE(grey.width, 1);
    if (grey.channels == 1) return;
    for (int y = 0; y < grey.height; ++y) {
        for (int x = 0; x < grey.width; ++x) {
            EXPECT_FLOAT_EQ(grey.at(x, y, 0), grey.at(x, y, 1));
            EXPECT_FLOAT_EQ(grey.at(x, y, 0), grey.at(x, y, 2));
        }
    }
}

TEST_F(Developed, WarmLightIsWarm) {
    expect_done(place_, {"develop", "film.exr", "-o", "warm.png", "--colour-temperature", "key=2800"});
    const Seen warm = seen(place_.path("warm.png"));
    EXPECT_GT(warm.at(14, 20, 0), 1.2F * warm.at(14, 20, 2));
}

// A gel is clipped on and the pack stays as it was: the light loses the gel's stops. Metered again it is what a scene
// with the gel renders, where the reading is taken with the gel on.
TEST_F(Developed, AGelClippedOnIsAFreshRender) {
    std::string scene = two_lights(4.0);
    scene.insert(scene.find("[[light]]", scene.find("[[light]]") + 1), "gel = [\"half-warm\", \"nd-0.3\"]\n");
    place_.write("gelled.toml", scene);
    expect_done(place_, {"render", "gelled.toml", "-o", "gelled.png", "--film", "gelled.exr"});
    const Seen fresh = seen(place_.path("gelled.png"));
    expect_done(place_,
                {"develop", "film.exr", "-o", "clipped.png", "--gel", "key=half-warm,nd-0.3", "--meter", "key=4"});
    expect_alike(fresh, seen(place_.path("clipped.png")), 1.01F);
    expect_done(place_, {"develop", "film.exr", "-o", "dim.png", "--gel", "key=nd-1-stop", "--gel", "fill=nd-1-stop"});
    expect_done(place_, {"develop", "film.exr", "-o", "stop.png", "--power", "key=-1", "--power", "fill=-1"});
    expect_alike(seen(place_.path("stop.png")), seen(place_.path("dim.png")), 1.01F);
    expect_done(place_, {"develop", "gelled.exr", "-o", "bare.png", "--gel", "key=none", "--meter", "key=4"});
    expect_alike(seen(place_.path("two.png")), seen(place_.path("bare.png")), 1.01F);
    expect_done(place_,
                {"develop", "gelled.exr", "-o", "lamp.png", "--white-balance", "LED-B3", "--spectrum", "key=LED-B3"});
}

TEST_F(Developed, ABadWishIsRefused) {
    for (const std::vector<std::string>& wish : std::vector<std::vector<std::string>>{{"--power", "rim=+1"},
                                                                                      {"--power", "key"},
                                                                                      {"--power", "key=bright"},
                                                                                      {"--power", "key=nan"},
                                                                                      {"--meter", "key=0"},
                                                                                      {"--colour-temperature", "key=5"},
                                                                                      {"--spectrum", "key=NONE"},
                                                                                      {"--white-balance", "blue"},
                                                                                      {"--gel", "key=ful-warm"},
                                                                                      {"--gel", "key="},
                                                                                      {"--gel", "key=red,"},
                                                                                      {"--gel", "rim=red"},
                                                                                      {"--treatment", "sepia"},
                                                                                      {"--aperture", "-1"}}) {
        const Outcome outcome = place_.run({"develop", "film.exr", "-o", "no.png", wish[0], wish[1]});
        EXPECT_EQ(outcome.status, 2) << wish[0] << " " << wish[1] << outcome.err;
        EXPECT_FALSE(std::filesystem::exists(place_.path("no.png")));
    }
    const Outcome rim = place_.run({"develop", "film.exr", "-o", "no.png", "--power", "rim=+1"});
    EXPECT_NE(rim.err.find("key, fill"), std::string::npos) << rim.err;
}

}  // namespace
}  // namespace understudy
