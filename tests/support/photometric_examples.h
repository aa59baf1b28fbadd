// Photometric files composed for these tests.
#pragma once

#include <string>

#include "setup/photometric_file.h"

namespace understudy {

inline const std::string kKeywords =
    "IESNA:LM-63-2002\n[TEST] COMPOSED-1\n[TESTLAB] NONE\n[ISSUEDATE] 01-JAN-2025\n[MANUFAC] NONE\n";

// Quadrant symmetric, as an LM-63-2002 file has it.
inline const std::string kQuadrants = kKeywords +
                                      "[LUMINAIRE] QUADRANT SYMMETRIC PARSER TEST\n"
                                      "TILT=NONE\n"
                                      "1 -1 1.0 3 3 1 2 0.30 1.20 0.0\n"
                                      "1.0 1.0 100\n"
                                      "0 45 90\n"
                                      "0 45 90\n"
                                      "600 400 0\n"
                                      "600 300 0\n"
                                      "600 200 0\n";

// Type 1, 2 or 3 (C, B or A); numbers: angles and candela as they stand in the file.
inline std::string photometric_text(int vertical, int horizontal, int type, const std::string& numbers,
                                    const std::string& multiplier = "1", const std::string& ballast = "1") {
    return kKeywords + "TILT=NONE\n1 -1 " + multiplier + " " + std::to_string(vertical) + " " +
           std::to_string(horizontal) + " " + std::to_string(type) + " 2 0 0 0\n" + ballast + " 1 0\n" + numbers + "\n";
}

}  // namespace understudy
