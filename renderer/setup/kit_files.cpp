#include "setup/kit_files.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>

#include <fmt/format.h>

namespace understudy {
namespace {

Problem unusable(const std::filesystem::path& file, std::string_view what, std::string_view expected) {
    return {Blame::kWrongInput, fmt::format("{}:1:1: {}; expected {}", file.string(), what, expected)};
}

}  // namespace

std::vector<std::string> toml_names_in(const std::filesystem::path& folder) {
    std::vector<std::string> names;
    std::error_code error;
    std::filesystem::directory_iterator entry(folder, error);
    for (; !error && entry != std::filesystem::directory_iterator(); entry.increment(error)) {
        if (entry->path().extension() == ".toml") {
            names.push_back(entry->path().stem().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

Expected<std::string> read_text_file(const std::filesystem::path& file, std::string_view expected,
                                     std::size_t most_bytes) {
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(file, error);
    if (status.type() == std::filesystem::file_type::not_found) {
        return unusable(file, "there is no such file", expected);
    }
    if (error) {
        return unusable(file, "the file cannot be reached (" + error.message() + ")", expected);
    }
    if (std::filesystem::is_directory(status)) {
        return unusable(file, "this is a folder", expected);
    }
    std::ifstream stream(file, std::ios::binary);
    if (!stream) {
        return unusable(file, fmt::format("the file cannot be opened ({})", std::strerror(errno)), expected);
    }
    std::string text;
    std::array<char, 4096> part{};
    while (text.size() <= most_bytes && (stream.read(part.data(), part.size()) || stream.gcount() > 0)) {
        text.append(part.data(), static_cast<std::size_t>(stream.gcount()));
    }
    if (stream.bad()) {
        return unusable(file, "the file cannot be read to its end", expected);
    }
    return text;
}

}  // namespace understudy
