// Warnings and cautions in words.
#pragma once

#include <string>
#include <vector>

#include "meter/reading.h"

namespace understudy {

// A name that programs may rely on: "in-picture", "into-lens", …
std::string warning_id(WarningKind kind);
std::string warning_unit(WarningKind kind);  // of its number: "cm", "percent", "degrees", "stops"

// One sentence or two, with every number that the warning has.
std::string warning_words(const Warning& warning);

// What a working studio keeps to, a line each: those that this setup calls for, and who has the last word.
std::vector<std::string> cautions(const MeterReport& report);

}  // namespace understudy
