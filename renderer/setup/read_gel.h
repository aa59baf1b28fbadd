// gel = "full-warm", or a list: one gel behind the other.
#pragma once

#include <string>
#include <vector>

#include "setup/table_reader.h"

namespace understudy {

// Names that spectrum/gel.h knows; none when the light has no gel.
std::vector<std::string> read_gels(TableReader& table);

// What is wrong with a gel's name, "" if nothing: "\"ful-warm\" is no gel; expected …". For the command line.
std::string gel_complaint(const std::string& name);

}  // namespace understudy
