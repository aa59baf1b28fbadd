#include "sitter/kept.h"

#include <algorithm>
#include <fstream>
#include <system_error>

#include <fmt/format.h>
#include <unistd.h>

namespace understudy {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kEnding = ".kept";
constexpr std::uintmax_t kMostBytes = 400'000'000;

// FNV-1a (G. Fowler, L. C. Noll and K.-P. Vo) eight bytes at a time, folded so that high bits reach low ones.
std::uint64_t mixed(std::uint64_t hash, std::string_view bytes) {
    constexpr std::uint64_t kPrime = 0x100000001b3ULL;
    while (!bytes.empty()) {
        std::uint64_t word = 0;
        const std::size_t size = std::min(sizeof(word), bytes.size());
        std::memcpy(&word, bytes.data(), size);
        bytes.remove_prefix(size);
        hash = (hash ^ word) * kPrime;
        hash ^= hash >> 29U;
    }
    return hash;
}

std::string sealed(const Fingerprint& of, const std::string& bytes) {
    std::string all = of.text() + "\n" + bytes;
    const std::uint64_t seal = mixed(0, all);
    all.append(reinterpret_cast<const char*>(&seal), sizeof(seal));
    return all;
}

fs::path file_of(const fs::path& folder, const Fingerprint& of) { return folder / (of.text() + std::string(kEnding)); }

// The files that were used longest ago go, until the rest is small enough.
void make_room(const fs::path& folder) {
    struct Kept {
        fs::file_time_type used;
        std::uintmax_t size;
        fs::path path;
    };
    std::vector<Kept> all;
    std::error_code error;
    for (const auto& entry : fs::directory_iterator(folder, error)) {
        if (entry.path().extension() != kEnding) continue;
        std::error_code gone;
        const Kept kept{entry.last_write_time(gone), entry.file_size(gone), entry.path()};
        if (!gone) all.push_back(kept);
    }
    std::sort(all.begin(), all.end(), [](const Kept& a, const Kept& b) { return a.used > b.used; });
    std::uintmax_t sum = 0;
    for (const Kept& kept : all) {
        sum += kept.size;
        if (sum > kMostBytes) fs::remove(kept.path, error);
    }
}

}  // namespace

Fingerprint::Fingerprint(std::string_view what) {
    take_bytes(what);
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error);
    take(static_cast<std::uint64_t>(fs::file_size(program, error)));
    take(static_cast<std::int64_t>(fs::last_write_time(program, error).time_since_epoch().count()));
}

void Fingerprint::take_bytes(std::string_view bytes) {
    one_ = mixed(one_, bytes);
    other_ = mixed(other_ ^ one_, bytes);
}

std::string Fingerprint::text() const { return fmt::format("{:016x}{:016x}", one_, other_); }

std::optional<std::string> read_kept(const fs::path& folder, const Fingerprint& of) {
    if (folder.empty()) return std::nullopt;
    const fs::path file = file_of(folder, of);
    std::ifstream stream(file, std::ios::binary | std::ios::ate);
    if (!stream) return std::nullopt;
    std::string bytes(static_cast<std::size_t>(stream.tellg()), '\0');
    stream.seekg(0);
    if (!stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size()))) return std::nullopt;
    const std::string begin = of.text() + "\n";
    std::uint64_t seal = 0;
    if (bytes.size() < begin.size() + sizeof(seal) || bytes.compare(0, begin.size(), begin) != 0) return std::nullopt;
    const std::size_t end = bytes.size() - sizeof(seal);
    std::memcpy(&seal, bytes.data() + end, sizeof(seal));
    if (seal != mixed(0, std::string_view(bytes).substr(0, end))) return std::nullopt;
    std::error_code error;
    fs::last_write_time(file, fs::file_time_type::clock::now(), error);
    bytes.resize(end);
    bytes.erase(0, begin.size());
    return bytes;
}

void write_kept(const fs::path& folder, const Fingerprint& of, const std::string& bytes) {
    if (folder.empty()) return;
    std::error_code error;
    fs::create_directories(folder, error);
    const fs::path file = file_of(folder, of);
    const fs::path beside = file.string() + fmt::format(".{}", getpid());
    const std::string all = sealed(of, bytes);
    std::ofstream stream(beside, std::ios::binary);
    stream.write(all.data(), static_cast<std::streamsize>(all.size()));
    stream.close();
    if (stream) {
        fs::rename(beside, file, error);
        if (!error) return make_room(folder);
    }
    fs::remove(beside, error);
}

std::string trouble_keeping(const fs::path& folder) {
    if (folder.empty()) return "";
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) return fmt::format("{}: {}", folder.string(), error.message());
    const fs::path trial = folder / fmt::format("trial.{}", getpid());
    std::ofstream stream(trial, std::ios::binary);
    stream.put('\n');
    stream.close();
    const bool written = static_cast<bool>(stream);
    fs::remove(trial, error);
    return written ? "" : fmt::format("{}: cannot be written", folder.string());
}

}  // namespace understudy
