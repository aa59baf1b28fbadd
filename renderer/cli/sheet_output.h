// A contact sheet as a command's output file.
#pragma once

#include <string>

#include "base/expected.h"
#include "sheet/sheet.h"

namespace understudy {

// Before anything is traced: whether a sheet, and a file of JSON beside it, can be written there. An empty name is no
// file.
Problems problems_with_sheet(const std::string& sheet, const std::string& json);

// Draws and writes it; then its name and size in pixels, to be printed. title: of the file's tags.
Expected<std::string> write_sheet(const std::string& path, const ContactSheet& sheet, const std::string& title);

}  // namespace understudy
