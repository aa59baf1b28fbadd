// A disputed claim of the trade as an experiment: scene files, what is changed in them, what is measured, and what the
// numbers then say.
#pragma once

#include <string>
#include <vector>

#include "claims/claim_reading.h"

namespace understudy {

// One setup of the experiment.
struct ClaimCase {
    std::string title;                      // short: a column's heading
    std::string scene;                      // of scenes/claims, without .toml
    std::vector<std::string> changes = {};  // in it, as compare's --vary takes them: "light.key.distance=0.5 m"
};

// A number told of every case.
struct ToldQuantity {
    std::string name;                             // "nose shadow's edge"
    std::string key;                              // of the JSON file, with its unit: "nose_edge_mm"
    double (*of)(const ClaimReading&) = nullptr;  // NaN where there is none; nullptr: it is no number
    std::string (*told)(double) = nullptr;
    std::string (*words)(const ClaimReading&) = nullptr;  // in place of both
};

// What the numbers say of the two sides.
enum class Outcome {
    kClaim,
    kOpposite,
    kBoth,     // each is right about something else
    kDepends,  // on conditions that are among the cases
    kNeither,
};

struct Settled {
    Outcome outcome = Outcome::kNeither;
    std::vector<std::string> holds;       // sentences: what holds here, with its numbers
    std::vector<std::string> conditions;  // when it would be otherwise
};

struct Claim {
    std::string name;      // "closer-contrast"
    std::string claim;     // as it is in circulation
    std::string opposite;  // and what is held against it
    std::string experiment;
    std::vector<ClaimCase> cases;
    Asked asked;
    std::vector<ToldQuantity> quantities;
    // Of the cases' readings, in their order. Every word has to come from them.
    Settled (*settle)(const std::vector<ClaimReading>&);
    // The f-number that a case's picture is developed at. None: what a flat meter at the face reads toward the key.
    double (*developed_at)(const ClaimReading&) = nullptr;
};

// In the order in which they are listed.
const std::vector<Claim>& all_claims();

// None: there is no such claim.
const Claim* find_claim(const std::string& name);

// The f-number to develop a case's picture at; the scene's own where the meter has no light.
double developed_f_number(const Claim& claim, const ClaimReading& reading);

}  // namespace understudy
