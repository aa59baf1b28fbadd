// A picture that follows its scene file.

#include <chrono>
#include <thread>

#include "program.h"

namespace understudy {
namespace {

using namespace std::chrono_literals;

// Whether it comes to be so, within a while.
template <class Truth>
bool comes(const Truth& truth) {
    for (int i = 0; i < 1200; ++i) {
        if (truth()) return true;
        std::this_thread::sleep_for(25ms);
    }
    return false;
}

TEST(Watch, FollowsTheSceneThroughGoodAndBad) {
    const Workplace place;
    place.write("scene.toml", kBall);
    const pid_t child = place.start({"watch", "scene.toml", "-o", "out.png", "--samples", "4"});
    const auto picture = [&] { return contents(place.path("out.png")); };
    const auto told = [&](const char* stream, const std::string& words) {
        return comes([&] { return contents(place.path(stream)).find(words) != std::string::npos; });
    };
    // A coarse look comes before the picture that stays.
    ASSERT_TRUE(told("stdout", "4 paths a pixel"));
    const std::string first = picture();
    std::string brighter = kBall;
    const std::size_t at = brighter.find("meter = ");
    ASSERT_NE(at, std::string::npos);
    brighter.replace(at, 8, "meter = 2");  // 24.0 in place of 4.0, or such
    place.write("scene.toml", brighter);
    EXPECT_TRUE(told("stdout", "developed anew"));
    const std::string second = picture();
    EXPECT_NE(second, first);
    place.write("scene.toml", "[[light]]\nmodifier = 7\n");
    EXPECT_TRUE(told("stderr", "scene.toml:2:12"));
    EXPECT_EQ(picture(), second);
    place.write("scene.toml", kBall);
    EXPECT_TRUE(comes([&] { return picture() == first; }));
    kill(child, SIGINT);
    const Outcome outcome = place.finish(child);
    EXPECT_EQ(outcome.status, 130) << outcome.err;
    EXPECT_NE(outcome.out.find("first picture"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("developed anew"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.err.find("scene.toml:2:12"), std::string::npos) << outcome.err;
    EXPECT_EQ(place.names().size(), 2U) << "a file was left";
}

TEST(Watch, MisuseIsStatusTwo) {
    const Workplace place;
    place.write("scene.toml", kBall);
    EXPECT_EQ(place.run({"watch", "nowhere.toml"}).status, 2);
    const Outcome exr = place.run({"watch", "scene.toml", "-o", "out.exr"});
    EXPECT_EQ(exr.status, 2);
    EXPECT_NE(exr.err.find("expected"), std::string::npos) << exr.err;
    EXPECT_EQ(place.run({"watch", "scene.toml", "-o", "nowhere/out.png"}).status, 2);
}

}  // namespace
}  // namespace understudy
