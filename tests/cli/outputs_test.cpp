// Output that cannot be written, and work that is broken off: the old file stays, nothing half is left.

#include <chrono>
#include <thread>

#include "program.h"

namespace understudy {
namespace {

// A folder that is not there is the person's mistake; one that takes no files is the machine's refusal.
TEST(Outputs, NoFolderNoPermission) {
    struct Row {
        std::string out;
        int status;
    };
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    for (const Row& row : {Row{"nowhere/out.png", 2}, Row{"/proc/out.png", 1}}) {
        const Outcome outcome = place.run({"render", scene, "-o", row.out});
        EXPECT_EQ(outcome.status, row.status) << row.out << ": " << outcome.err;
        EXPECT_NE(outcome.err.find(row.out), std::string::npos) << outcome.err;
        const std::string json = row.out + ".json";
        EXPECT_EQ(place.run({"render", scene, "-o", "ok.png", "--json", json}).status, row.status) << json;
        EXPECT_EQ(place.run({"meter", scene, "--json", json}).status, row.status) << json;
        EXPECT_FALSE(std::filesystem::exists(place.path("ok.png"))) << "one bad output is found before the work";
    }
}

// A disk that fills up while writing: a limit on the size of files stands in for it.
TEST(Outputs, AFullDisk) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    place.write("old.png", "old bytes");
    place.write("old.exr", "old bytes");
    const std::vector<std::vector<std::string>> wishes{{"render", scene, "-o", "old.png"},
                                                       {"render", scene, "-o", "old.exr"}};
    for (const auto& wish : wishes) {
        const Outcome outcome = place.run(wish, 1200);
        EXPECT_EQ(outcome.status, 1) << wish.back() << ": " << outcome.err;
        EXPECT_NE(outcome.err.find(wish.back()), std::string::npos) << outcome.err;
        EXPECT_EQ(contents(place.path(wish.back())), "old bytes");
    }
    EXPECT_EQ(place.names().size(), 3U) << "a temporary file was left";
}

TEST(Outputs, InterruptedHalfWay) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    place.write("old.png", "old bytes");
    for (const int signal : {SIGINT, SIGTERM}) {
        const pid_t child = place.start({"render", scene, "-o", "old.png", "--json", "new.json", "--samples", "65536"});
        std::this_thread::sleep_for(std::chrono::seconds(2));
        kill(child, signal);
        const Outcome outcome = place.finish(child);
        EXPECT_EQ(outcome.status, 130) << outcome.err;
        EXPECT_NE(outcome.err.find("interrupted"), std::string::npos) << outcome.err;
        EXPECT_EQ(contents(place.path("old.png")), "old bytes");
        EXPECT_EQ(place.names().size(), 2U) << "a file was left";
    }
}

TEST(Outputs, APictureTakesTheOldOnesPlace) {
    const Workplace place;
    const std::string scene = place.write("ball.toml", kBall).string();
    place.write("old.png", "old bytes");
    EXPECT_EQ(place.run({"render", scene, "-o", "old.png"}).status, 0);
    EXPECT_EQ(contents(place.path("old.png")).substr(1, 3), "PNG");
}

}  // namespace
}  // namespace understudy
