// The words come from the numbers: other numbers, other words.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "claims/claim_text.h"

namespace understudy {
namespace {

Reading reading_at(const std::string& point, Receptor receptor, Facing facing, double lxs) {
    Reading reading;
    reading.point = point;
    reading.receptor = receptor;
    reading.facing = facing;
    reading.exposure_lxs = lxs;
    reading.f_number = std::sqrt(lxs);
    return reading;
}

FaceReading face_with(double amount) {
    FaceReading face;
    face.pattern.emplace();
    face.pattern->up_deg = 10.0 * amount;
    face.pattern->nose.emplace();
    face.pattern->nose->to_lip = amount;
    face.nose_edge_m = 0.005 * amount;
    face.highlight = ForeheadHighlight{0.3 * amount, 1e-4};
    face.fall_off.across_face_stops = 0.2 * amount;
    face.fall_off.to_chest_stops = 0.3 * amount;
    return face;
}

// Everything that an experiment may ask for, all of it more with a larger amount.
ClaimReading made_up(double amount) {
    ClaimReading reading;
    reading.setup.lights.resize(2);
    reading.setup.lights.front().name = "key";
    reading.key_distance_m = 0.3 * amount;
    reading.key_width.whole = 0.4 * amount;
    reading.key_width.four_fifths = 0.1 * amount + 0.1 * amount * amount;
    reading.key_width.middle = 0.02 * amount;
    reading.key_width.radiance = amount * amount;
    reading.paper_on_edges_lxs = {4.0 * amount * amount, 4.0 * amount * amount};
    reading.tones = SkinTones{0.1 * amount, 0.05 * amount, 0.2 * amount};
    reading.rim_linear = 0.2 * amount * amount;
    reading.to_lip_in_front = 0.4 * amount;
    reading.lip_at_deg = 10.0 * amount;
    MeterReport& report = reading.report;
    for (const Receptor receptor : {Receptor::kFlat, Receptor::kDome}) {
        report.readings.push_back(reading_at("face", receptor, Facing::kKey, 40.0 + amount));
        report.readings.push_back(reading_at("face", receptor, Facing::kCamera, 40.0 / amount));
    }
    report.readings.push_back(reading_at("cheek-camera-left", Receptor::kFlat, Facing::kSurface, 30.0 / amount));
    report.readings.push_back(reading_at("cheek-camera-right", Receptor::kFlat, Facing::kSurface, 10.0));
    Ratio ratio;
    ratio.key_to_fill = 1.0 + amount;
    ratio.stops = std::log2(ratio.key_to_fill);
    ratio.face_key_to_fill = amount;
    ratio.face_key_and_fill_to_fill = amount + 1.0;
    report.ratio = ratio;
    report.powers.resize(2);
    report.powers[0] = {"key", 100.0 * amount, true, 5.0 * amount, 5.6};
    report.powers[1] = {"fill", 100.0, true, 5.0, 5.6 * std::sqrt(amount) / 2.0};
    report.face = face_with(amount);
    report.eyes.emplace(2);
    report.catchlights.emplace();
    for (std::size_t e = 0; e < 2; ++e) {
        (*report.eyes)[e].eye = e == 0 ? "camera-left" : "camera-right";
        (*report.eyes)[e].stops_from_cheek = -amount;
        Catchlight light;
        light.eye = (*report.eyes)[e].eye;
        light.light = "key";
        light.clock_deg = 12.0 * amount;
        light.visible = std::min(1.0, 0.2 * amount);
        report.catchlights->push_back(light);
    }
    BackdropTone tone;
    tone.linear = 0.3 * amount;
    tone.stops_from_face = amount - 2.0;
    tone.stops_from_grey = amount;
    report.backdrop = std::vector<BackdropPlace>{{"top-left", {}, "backdrop", "", tone}};
    Warning glare;
    glare.kind = WarningKind::kGlassesGlare;
    glare.number = 10.0 * amount;
    glare.also = 5.0 - amount;
    report.warnings.push_back(glare);
    return reading;
}

std::string words_of(const Settled& settled) {
    std::string words = outcome_sentence(settled.outcome);
    for (const std::string& sentence : settled.holds) words += "\n" + sentence;
    for (const std::string& sentence : settled.conditions) words += "\n" + sentence;
    return words;
}

std::vector<ClaimReading> made_up_cases(const Claim& claim, double first, double step) {
    std::vector<ClaimReading> readings;
    for (std::size_t i = 0; i < claim.cases.size(); ++i) {
        readings.push_back(made_up(first + step * static_cast<double>(i)));
    }
    return readings;
}

TEST(Settled, SaysSomethingElseOfOtherNumbers) {
    for (const Claim& claim : all_claims()) {
        const Settled rising = claim.settle(made_up_cases(claim, 1.0, 1.0));
        const Settled falling = claim.settle(made_up_cases(claim, 4.7, -0.6));
        EXPECT_FALSE(rising.holds.empty()) << claim.name;
        EXPECT_FALSE(rising.conditions.empty()) << claim.name;
        ASSERT_EQ(rising.holds.size(), falling.holds.size()) << claim.name;
        for (std::size_t i = 0; i < rising.holds.size(); ++i)
            EXPECT_NE(rising.holds[i], falling.holds[i]) << claim.name;
        EXPECT_NE(words_of(rising), words_of(falling)) << claim.name;
        for (const Settled& settled : {rising, falling}) {
            EXPECT_EQ(words_of(settled).find("nan"), std::string::npos) << claim.name << '\n' << words_of(settled);
            EXPECT_EQ(words_of(settled).find("inf"), std::string::npos) << claim.name << '\n' << words_of(settled);
        }
    }
}

// Numbers by which the one side is right, and numbers by which the other is.
Outcome outcome_of(const std::string& name, const std::vector<double>& amounts) {
    std::vector<ClaimReading> readings;
    readings.reserve(amounts.size());
    for (const double amount : amounts) readings.push_back(made_up(amount));
    return find_claim(name)->settle(readings).outcome;
}

TEST(Settled, GivesTheClaimItsDue) {
    EXPECT_EQ(outcome_of("feathering", {1, 2, 3, 1}), Outcome::kClaim);
    EXPECT_EQ(outcome_of("feathering", {2, 1, 1, 2}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("diffusion-layers", {1, 2, 1, 1, 1}), Outcome::kClaim);
    EXPECT_EQ(outcome_of("diffusion-layers", {1, 1, 1, 2, 2}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("closer-contrast", {1, 2, 3, 1, 3}), Outcome::kBoth);
    EXPECT_EQ(outcome_of("closer-contrast", {1, 1, 1, 1, 1}), Outcome::kNeither);
    EXPECT_EQ(outcome_of("shine-distance", {1, 2, 1, 1, 1, 1}), Outcome::kClaim);
    EXPECT_EQ(outcome_of("shine-distance", {1, 1, 2, 3, 1, 2}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("glasses-size", {3, 2, 1, 1, 1, 1}), Outcome::kClaim);
    EXPECT_EQ(outcome_of("glasses-size", {1, 2, 3, 1, 1, 2}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("catchlight-clock", {5, 5, 5, 5, 5}), Outcome::kClaim);  // 60 degrees: 2 o'clock
    EXPECT_EQ(outcome_of("catchlight-clock", {2.5, 2.5, 2.5, 2.5, 1}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("white-backdrop", {4, 4, 5, 6, 7, 4}), Outcome::kClaim);  // 0.3 × 4 is over white
    EXPECT_EQ(outcome_of("white-backdrop", {1, 2, 4, 5, 6, 1}), Outcome::kOpposite);
    EXPECT_EQ(outcome_of("white-backdrop", {1, 1, 1, 2, 3, 1}), Outcome::kNeither);
}

TEST(Settled, ReadsAsPlainLines) {
    for (const Claim& claim : all_claims()) {
        const std::string text = claim_text(claim, made_up_cases(claim, 1.0, 1.0), "scenes/claims");
        EXPECT_NE(text.find("What holds here"), std::string::npos);
        for (const ClaimCase& one : claim.cases) {
            EXPECT_NE(text.find("scenes/claims/" + one.scene + ".toml"), std::string::npos) << claim.name;
        }
        EXPECT_EQ(text.find('\t'), std::string::npos);
        const std::string json = claim_json(claim, made_up_cases(claim, 1.0, 1.0), "scenes/claims");
        EXPECT_NE(json.find("\"outcome\""), std::string::npos);
    }
}

}  // namespace
}  // namespace understudy
