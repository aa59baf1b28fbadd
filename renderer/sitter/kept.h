// What takes long to make, kept in files: clothes once laid, strands once grown.
//
// A file is named by a fingerprint of all that went into it, this very program among it, so that whatever is changed
// makes another; it carries the fingerprint and ends in a seal over its bytes: what is damaged, foreign or of another
// program counts as not there. Whoever cannot write makes it again the next time, and can be told so
// (trouble_keeping).
#pragma once

#include <cstdint>
#include <cstring>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace understudy {

class Fingerprint {
  public:
    // Of this program and of what is made: raised by nobody, since another program has another file, size or time.
    explicit Fingerprint(std::string_view what);

    template <class T>
    void take(const T& value) {
        static_assert(std::has_unique_object_representations_v<T> || std::is_floating_point_v<T>);
        take_bytes({reinterpret_cast<const char*>(&value), sizeof(T)});
    }
    // Of numbers and arrays of numbers: nothing between them.
    template <class T>
    void take_all(const std::vector<T>& values) {
        static_assert(std::is_trivially_copyable_v<T>);
        take(static_cast<std::uint64_t>(values.size()));
        take_bytes({reinterpret_cast<const char*>(values.data()), values.size() * sizeof(T)});
    }
    void take_bytes(std::string_view bytes);

    std::string text() const;

  private:
    std::uint64_t one_ = 0xcbf29ce484222325ULL;
    std::uint64_t other_ = 0x9e3779b97f4a7c15ULL;
};

template <class T>
void put_all(std::string& bytes, const std::vector<T>& values) {
    static_assert(std::is_trivially_copyable_v<T>);
    const auto count = static_cast<std::uint64_t>(values.size());
    bytes.append(reinterpret_cast<const char*>(&count), sizeof(count));
    bytes.append(reinterpret_cast<const char*>(values.data()), values.size() * sizeof(T));
}

// Takes them off the front; false when they are not all there.
template <class T>
bool take_all(std::string_view& bytes, std::vector<T>& values) {
    std::uint64_t count = 0;
    if (bytes.size() < sizeof(count)) return false;
    std::memcpy(&count, bytes.data(), sizeof(count));
    bytes.remove_prefix(sizeof(count));
    if (count > bytes.size() / sizeof(T)) return false;
    values.resize(count);
    std::memcpy(values.data(), bytes.data(), count * sizeof(T));
    bytes.remove_prefix(count * sizeof(T));
    return true;
}

// An empty folder keeps nothing.
std::optional<std::string> read_kept(const std::filesystem::path& folder, const Fingerprint& of);
// Beside the file first, then renamed: nobody finds half of it. What has been used longest ago makes room.
void write_kept(const std::filesystem::path& folder, const Fingerprint& of, const std::string& bytes);
// What keeps files from being written into the folder, found by trying; empty when nothing does.
std::string trouble_keeping(const std::filesystem::path& folder);

}  // namespace understudy
