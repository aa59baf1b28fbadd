#include "film/seal.h"

#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <fstream>
#include <optional>
#include <system_error>

namespace understudy {
namespace {

constexpr const char* kMark = "understudy film ";
constexpr std::uintmax_t kSealLength = 24;

std::string seal_with(std::uint32_t checksum) { return fmt::format("{}{:08x}", kMark, checksum); }

// Of the first so many bytes; none if they cannot be read.
std::optional<std::uint32_t> checksum_of(std::ifstream& stream, std::uintmax_t length) {
    std::array<char, 1 << 16> buffer{};
    uLong checksum = crc32(0, nullptr, 0);
    while (length > 0) {
        const auto part = std::min<std::uintmax_t>(length, buffer.size());
        if (!stream.read(buffer.data(), static_cast<std::streamsize>(part))) return std::nullopt;
        checksum = crc32(checksum, reinterpret_cast<const Bytef*>(buffer.data()), static_cast<uInt>(part));
        length -= part;
    }
    return static_cast<std::uint32_t>(checksum);
}

}  // namespace

std::string seal_of(const std::vector<unsigned char>& bytes) {
    uLong checksum = crc32(0, nullptr, 0);
    checksum = crc32_z(checksum, bytes.data(), bytes.size());
    return seal_with(static_cast<std::uint32_t>(checksum));
}

std::string broken_seal(const std::filesystem::path& path) {
    std::error_code error;
    const std::uintmax_t length = std::filesystem::file_size(path, error);
    if (error) return error.message();
    std::ifstream stream(path, std::ios::binary);
    if (!stream) return std::generic_category().message(errno);
    if (length < kSealLength) return "it was not saved by this program, or it was cut short";
    const auto checksum = checksum_of(stream, length - kSealLength);
    std::string seal(kSealLength, '\0');
    if (!checksum || !stream.read(seal.data(), static_cast<std::streamsize>(seal.size()))) return "it cannot be read";
    if (!seal.starts_with(kMark)) return "it was not saved by this program, or it was cut short";
    return seal == seal_with(*checksum) ? "" : "it is damaged: its checksum is another";
}

}  // namespace understudy
