// A picture that is there soon and gets better.
#include "program.h"
#include "seen.h"

namespace understudy {
namespace {

class Previewing : public testing::Test {
  protected:
    Outcome render(std::vector<std::string> arguments) const {
        const std::string scene = place_.write("ball.toml", kBall).string();
        arguments.insert(arguments.begin(), {"render", scene});
        return place_.run(arguments);
    }
    Workplace place_;
};

// The passes are the same whether they are shown or not.
TEST_F(Previewing, EndsAtThePictureThatAPlainRenderMakes) {
    ASSERT_EQ(render({"--samples", "16", "-o", "plain.png"}).status, 0);
    ASSERT_EQ(render({"--preview", "--samples", "16", "-o", "preview.png"}).status, 0);
    const Seen plain = seen(place_.path("plain.png"));
    const Seen preview = seen(place_.path("preview.png"));
    ASSERT_EQ(plain.values.size(), preview.values.size());
    EXPECT_EQ(plain.values, preview.values);
}

TEST_F(Previewing, StopsWhenTheGoalIsReached) {
    const Outcome until = render({"--until", "5 %", "-o", "until.png"});
    EXPECT_EQ(until.status, 0) << until.err;
    EXPECT_NE(until.out.find("Meter readings"), std::string::npos) << "the report comes all the same";
    const Outcome time = render({"--time", "0.3 s", "-o", "time.png"});
    EXPECT_EQ(time.status, 0) << time.err;
    EXPECT_EQ(seen(place_.path("time.png")).width, 32);
}

TEST_F(Previewing, SaysWhatIsWrongWithAGoal) {
    const std::vector<std::pair<std::vector<std::string>, std::string>> wrong{
        {{"--until", "0 %"}, "--until 0 %: expected a share"},
        {{"--until", "150 %"}, "--until 150 %: expected a share"},
        {{"--until", "good"}, "--until good: expected a share"},
        {{"--time", "-3 s"}, "--time -3 s: expected a time"},
        {{"--time", "3 h"}, "--time 3 h: expected a time"},
        {{"--preview", "-o", "film.exr"}, "film.exr: a preview is .png or .jpg"}};
    for (const auto& [arguments, told] : wrong) {
        const Outcome outcome = render(arguments);
        EXPECT_EQ(outcome.status, 2) << told;
        EXPECT_NE(outcome.err.find(told), std::string::npos) << outcome.err;
    }
    EXPECT_EQ(place_.names(), std::vector<std::string>{"ball.toml"});
}

}  // namespace
}  // namespace understudy
