// The kit as the program lists it, and what it says of a photometric file.
#include "program.h"

namespace understudy {
namespace {

TEST(KitCommand, DescribesOneModifier) {
    const Workplace place;
    const Outcome box = place.run({"kit", "softbox-60x90"});
    EXPECT_EQ(box.status, 0) << box.err;
    for (const char* words : {"60 × 90 cm", "inner cloth", "lets out", "opens", "hot spot", "off axis"}) {
        EXPECT_NE(box.out.find(words), std::string::npos) << box.out << words;
    }
    const Outcome umbrella = place.run({"kit", "umbrella-white-105"});
    EXPECT_EQ(umbrella.status, 0) << umbrella.err;
    for (const char* words : {"Ø 105 cm", "canopy", "opens", "output"}) {
        EXPECT_NE(umbrella.out.find(words), std::string::npos) << umbrella.out << words;
    }
    // There is no tube behind a window that something could be lost of.
    const Outcome window = place.run({"kit", "window-120x150"});
    EXPECT_EQ(window.status, 0) << window.err;
    EXPECT_EQ(window.out.find("tube"), std::string::npos) << window.out;
}

TEST(KitCommand, OffersTheNearestName) {
    const Workplace place;
    const Outcome outcome = place.run({"kit", "octa-12"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("octa-120"), std::string::npos) << outcome.err;
}

// 100 cd in every direction of the lower half: 200π lm.
TEST(KitCommand, TellsWhatAPhotometricFileHolds) {
    const Workplace place;
    const std::string file =
        place
            .write("even.ies",
                   "IESNA:LM-63-2002\n[TEST] NONE\n[TESTLAB] NONE\n[ISSUEDATE] NONE\n[MANUFAC] NONE\n"
                   "TILT=NONE\n1 -1 1 2 1 1 2 0 0 0\n1 1 10\n0 90\n0\n100 100\n")
            .string();
    const Outcome told = place.run({"kit", "--photometric", file});
    EXPECT_EQ(told.status, 0) << told.err;
    EXPECT_NE(told.out.find("628"), std::string::npos) << told.out;
    const std::string broken = place.write("broken.ies", "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 2\n").string();
    const Outcome refused = place.run({"kit", "--photometric", broken});
    EXPECT_EQ(refused.status, 2);
    EXPECT_NE(refused.err.find("broken.ies:"), std::string::npos) << refused.err;
    EXPECT_EQ(place.run({"kit", "--photometric", "nowhere.ies"}).status, 2);
}

}  // namespace
}  // namespace understudy
