#include "report/json_file.h"

#include <cerrno>
#include <cstdio>
#include <memory>
#include <string>
#include <system_error>

#include <fmt/format.h>

#include "report/report_json.h"

namespace understudy {
namespace {

namespace fs = std::filesystem;

// Enough for as many runs as may write the same report at once.
constexpr int kTriesForName = 100;

struct Closer {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, Closer>;

Problem cannot_write(const fs::path& path, int error) {
    return {Blame::kFailed,
            fmt::format("{}: cannot be written: {}", path.string(), std::system_category().message(error))};
}

Expected<Done> write_and_close(File file, const fs::path& path, std::string_view text) {
    const bool is_written = std::fwrite(text.data(), 1, text.size(), file.get()) == text.size();
    const int write_error = errno;
    // Closing writes the rest out: a full disk may show only now.
    const bool is_closed = std::fclose(file.release()) == 0;
    const int close_error = errno;
    if (!is_written) return cannot_write(path, write_error);
    if (!is_closed) return cannot_write(path, close_error);
    return Done{};
}

struct FreshFile {
    File file;
    fs::path path;
};

// A new file in the same folder, because only within one file system is a rename all or nothing.
Expected<FreshFile> open_beside(const fs::path& path) {
    for (int attempt = 0; attempt < kTriesForName; ++attempt) {
        const fs::path beside = path.string() + fmt::format(".part{}", attempt);
        File file(std::fopen(beside.c_str(), "wbx"));  // x: never somebody else's file
        if (file) return FreshFile{std::move(file), beside};
        if (errno != EEXIST) return cannot_write(path, errno);
    }
    return cannot_write(path, EEXIST);
}

Expected<Done> write_beside_and_rename(const fs::path& path, std::string_view text) {
    Expected<FreshFile> fresh = open_beside(path);
    if (!fresh) return fresh.problems();
    const fs::path beside = fresh->path;
    std::error_code error;
    Expected<Done> written = write_and_close(std::move(fresh->file), path, text);
    if (written) {
        fs::rename(beside, path, error);
        if (!error) return Done{};
        written = cannot_write(path, error.value());
    }
    fs::remove(beside, error);
    return written;
}

}  // namespace

Expected<Done> write_whole_file(const fs::path& path, std::string_view text) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (fs::is_directory(status)) {
        return Problem{Blame::kWrongInput, fmt::format("{}: is a folder; expected a file's name", path.string())};
    }
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        File stream(std::fopen(path.c_str(), "wb"));
        if (!stream) return cannot_write(path, errno);
        return write_and_close(std::move(stream), path, text);
    }
    // Through a link to the file itself, so that the link stays.
    const fs::path target = fs::exists(status) ? fs::canonical(path, error) : path;
    if (error && fs::exists(status)) return cannot_write(path, error.value());
    return write_beside_and_rename(target, text);
}

Expected<Done> write_report_file(const fs::path& path, const MeterReport& report) {
    return write_whole_file(path, report_json(report));
}

}  // namespace understudy
