// A file that appears whole or not at all: written under another name in the same folder, then renamed over its place.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

class PendingFile {
  public:
    // Makes the empty temporary file.
    static Expected<PendingFile> beside(const std::filesystem::path& path);

    PendingFile(PendingFile&& other) noexcept;
    PendingFile& operator=(PendingFile&&) = delete;
    PendingFile(const PendingFile&) = delete;
    PendingFile& operator=(const PendingFile&) = delete;
    ~PendingFile();  // removes the temporary file unless it was published

    const std::filesystem::path& temporary() const { return temporary_; }

    // For those who have the whole file in memory.
    Expected<Done> fill(const std::vector<unsigned char>& bytes);

    // Forces the bytes onto the disk, then puts the file in its place.
    Expected<Done> publish();

  private:
    PendingFile(std::filesystem::path path, std::filesystem::path temporary);

    std::filesystem::path path_;
    std::filesystem::path temporary_;  // empty once there is nothing to remove
};

// A file of these bytes, whole or not at all.
Expected<Done> write_bytes(const std::filesystem::path& path, const std::vector<unsigned char>& bytes);

// "path: cannot be written: reason".
Problem write_problem(const std::filesystem::path& path, const std::string& reason);

}  // namespace understudy
