// The eyes and the face in words.
#include <gtest/gtest.h>

#include "report/advice_text.h"
#include "report/eyes_text.h"
#include "report/face_text.h"
#include "sample_report.h"

namespace understudy {
namespace {

void expect_all(const std::string& text, const std::vector<std::string>& parts) {
    for (const std::string& part : parts) EXPECT_NE(text.find(part), std::string::npos) << part << "\nin\n" << text;
}

TEST(EyesInWords, TellLightWayCatchlightAndFault) {
    expect_all(
        eyes_in_words(filled_report()),
        {"camera-left eye: lit, 0.5 stops under the lit cheek", "sees 75 % of key; in the way: brow 25 %",
         "catchlight of key at 10:00 o'clock, 62 % out, 25 % of the iris wide, 75 % of it shows",
         "light of key reaches this eye, but its reflection is hidden", "camera-right eye: dark, 4.2 stops under"});
}

TEST(EyesInWords, SayNothingWithoutEyes) { EXPECT_EQ(eyes_in_words(empty_report()), ""); }

TEST(FaceText, UsesTheTradesWords) {
    expect_all(
        face_text(filled_report()),
        {"loop, short", "40 degrees to camera left, 25 degrees over the face's own level", "near 100 %, far 50 %",
         "3 cm long, 45 degrees from straight down, to camera right; it goes 50 % of the way",
         "rembrandt: swing the key 12 degrees to camera left", "0.5 stops over the skin at its brightest, 10.0 cm2",
         "fill: shows a shadow of its own (0.25 stop)", "8 mm from full shadow to full light",
         "0.25 stop over the face (14 cm), 0.50 down to the chest", "15 cm nearer to the key or 17 cm away"});
}

TEST(Advice, IsAnInstructionWithANumber) {
    const auto said = [](FixKind kind, double number, double after = 0.0, const std::string& thing = "") {
        Fix fix;
        fix.kind = kind;
        fix.number = number;
        fix.after = after;
        fix.thing = thing;
        return instruction(fix, "key");
    };
    EXPECT_EQ(said(FixKind::kChin, 7.0), "chin up 7 degrees");
    EXPECT_EQ(said(FixKind::kTurn, -10.0), "turn the head 10 degrees to camera left");
    EXPECT_EQ(said(FixKind::kHeight, -0.18, 1.74), "lower key by 18 cm, its middle to 1.74 m from the floor");
    EXPECT_EQ(said(FixKind::kAngle, 7.0, -56.0), "swing key 7 degrees to camera right, to 56 degrees from the lens");
    EXPECT_EQ(said(FixKind::kDistance, 0.58, 1.78), "move back key along the floor until it is 1.78 m from the face");
    EXPECT_EQ(said(FixKind::kPower, 1.333, 0.0, "fill"), "turn up fill by 1.3 stops");
}

}  // namespace
}  // namespace understudy
