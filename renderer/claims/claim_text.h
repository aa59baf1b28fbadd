// An experiment and its outcome in plain text, and as JSON: the same numbers in each.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "claims/claim.h"

namespace understudy {

// Every claim with its opposite.
std::string claim_list_text();

std::string word(Outcome outcome);              // "claim", "opposite", "both", "depends", "neither"
std::string outcome_sentence(Outcome outcome);  // "Here the claim holds."

// A quantity of a case in words.
std::string told(const ToldQuantity& quantity, const ClaimReading& reading);

// Without those that no case has.
std::vector<ToldQuantity> told_quantities(const Claim& claim, const std::vector<ClaimReading>& readings);

// Columns are called A, B, …, in the cases' order; so are a sheet's pictures.
std::string case_letter(std::size_t index);

// What a teacher types to have a case again: the scene file, and what is changed in it.
std::string case_source(const ClaimCase& one, const std::filesystem::path& scenes);

// readings: one of each case, in their order.
std::string claim_text(const Claim& claim, const std::vector<ClaimReading>& readings,
                       const std::filesystem::path& scenes);
std::string claim_json(const Claim& claim, const std::vector<ClaimReading>& readings,
                       const std::filesystem::path& scenes);

}  // namespace understudy
