#include "film/pending_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>
#include <utility>

#include "film/picture_file.h"

namespace understudy {
namespace {

std::string reason_of(int error) { return std::generic_category().message(error); }

// 0 or the errno of what failed.
int synchronise(const std::filesystem::path& path, int flags) {
    const int file = ::open(path.c_str(), flags | O_CLOEXEC);
    if (file < 0) return errno;
    int error = ::fsync(file) == 0 ? 0 : errno;
    if (::close(file) != 0 && error == 0) error = errno;
    return error;
}

std::filesystem::path folder_of(const std::filesystem::path& path) {
    return path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
}

// What can be said without touching the disk.
Expected<Done> check_place(const std::filesystem::path& path) {
    std::error_code error;
    if (!path.has_filename()) return Problem{Blame::kWrongInput, path.string() + ": is not the name of a file"};
    const std::filesystem::file_status status = std::filesystem::status(path, error);
    if (std::filesystem::is_directory(status)) {
        return Problem{Blame::kWrongInput, path.string() + ": is a folder; expected the name of a file"};
    }
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
        return Problem{Blame::kWrongInput, path.string() + ": is not an ordinary file and would be replaced"};
    }
    const std::filesystem::path folder = folder_of(path);
    if (!std::filesystem::is_directory(folder, error)) {
        return Problem{Blame::kWrongInput, path.string() + ": there is no folder " + folder.string()};
    }
    return Done{};
}

}  // namespace

Problem write_problem(const std::filesystem::path& path, const std::string& reason) {
    return {Blame::kFailed, path.string() + ": cannot be written: " + reason};
}

PendingFile::PendingFile(std::filesystem::path path, std::filesystem::path temporary)
    : path_(std::move(path)), temporary_(std::move(temporary)) {}

PendingFile::PendingFile(PendingFile&& other) noexcept
    : path_(std::move(other.path_)), temporary_(std::exchange(other.temporary_, {})) {}

PendingFile::~PendingFile() {
    std::error_code ignored;  // it is gone or cannot be helped; the failure that led here is already reported
    if (!temporary_.empty()) std::filesystem::remove(temporary_, ignored);
}

Expected<PendingFile> PendingFile::beside(const std::filesystem::path& path) {
    const Expected<Done> checked = check_place(path);
    if (!checked) return checked.problems();
    constexpr int kTries = 100;
    int error = EEXIST;
    for (int i = 0; i < kTries && error == EEXIST; ++i) {
        std::string name = ".";
        name += path.stem().string();
        name += '.';
        name += std::to_string(::getpid());
        name += '-';
        name += std::to_string(i);
        name += path.extension().string();
        const std::filesystem::path temporary = folder_of(path) / name;
        const int file = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (file >= 0) {
            ::close(file);
            return PendingFile(path, temporary);
        }
        error = errno;
    }
    return write_problem(path, reason_of(error));
}

Expected<Done> PendingFile::fill(const std::vector<unsigned char>& bytes) {
    const int file = ::open(temporary_.c_str(), O_WRONLY | O_TRUNC | O_CLOEXEC);
    if (file < 0) return write_problem(path_, reason_of(errno));
    int error = 0;
    for (std::size_t done = 0; done < bytes.size() && error == 0;) {
        const ssize_t written = ::write(file, bytes.data() + done, bytes.size() - done);
        if (written >= 0) {
            done += static_cast<std::size_t>(written);
        } else if (errno != EINTR) {
            error = errno;
        }
    }
    if (::close(file) != 0 && error == 0) error = errno;
    if (error != 0) return write_problem(path_, reason_of(error));
    return Done{};
}

Expected<Done> PendingFile::publish() {
    if (const int error = synchronise(temporary_, O_RDONLY); error != 0) return write_problem(path_, reason_of(error));
    std::error_code error;
    std::filesystem::rename(temporary_, path_, error);
    if (error) return write_problem(path_, error.message());
    temporary_.clear();
    // Some file systems cannot force a folder; then the new name reaches the disk a little later.
    if (const int folder = synchronise(folder_of(path_), O_RDONLY | O_DIRECTORY); folder != 0 && folder != EINVAL) {
        return write_problem(path_, reason_of(folder));
    }
    return Done{};
}

// Nothing tells it as surely as making one.
Expected<Done> check_writable(const std::filesystem::path& path) {
    const Expected<PendingFile> pending = PendingFile::beside(path);
    if (!pending) return pending.problems();
    return Done{};
}

Expected<Done> write_bytes(const std::filesystem::path& path, const std::vector<unsigned char>& bytes) {
    Expected<PendingFile> pending = PendingFile::beside(path);
    if (!pending) return pending.problems();
    const Expected<Done> filled = pending->fill(bytes);
    return filled ? pending->publish() : filled;
}

}  // namespace understudy
