// The report on disk: the whole file or none, so that a full disk or a broken run never leaves half a report behind.
#pragma once

#include <filesystem>
#include <string_view>

#include "base/expected.h"
#include "meter/reading.h"

namespace understudy {

// Written beside its place under another name, then renamed over what was there. A pipe or device is written to
// directly.
Expected<Done> write_whole_file(const std::filesystem::path& path, std::string_view text);

// report_json() into a file.
Expected<Done> write_report_file(const std::filesystem::path& path, const MeterReport& report);

}  // namespace understudy
