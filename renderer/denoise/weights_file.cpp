#include "denoise/weights_file.h"

#include <cstring>
#include <fstream>
#include <iterator>
#include <optional>
#include <string_view>

#include <Imath/half.h>
#include <fmt/format.h>

namespace understudy {

namespace {

constexpr std::uint16_t kMagic = 0x41D7;
constexpr std::uint8_t kMajor = 2;
constexpr std::uint32_t kMostTensors = 1024;
constexpr std::size_t kMostValues = 64U << 20U;

class Bytes {
  public:
    explicit Bytes(std::string_view bytes) : bytes_(bytes) {}

    bool go_to(std::uint64_t place) {
        if (place > bytes_.size()) return false;
        here_ = static_cast<std::size_t>(place);
        return true;
    }
    template <class T>
    std::optional<T> take() {
        if (bytes_.size() - here_ < sizeof(T)) return std::nullopt;
        T value;
        std::memcpy(&value, bytes_.data() + here_, sizeof(T));
        here_ += sizeof(T);
        return value;
    }
    std::optional<std::string> text(std::size_t length) {
        if (bytes_.size() - here_ < length) return std::nullopt;
        here_ += length;
        return std::string(bytes_.substr(here_ - length, length));
    }
    std::string_view from(std::uint64_t place) const {
        return place > bytes_.size() ? std::string_view() : bytes_.substr(static_cast<std::size_t>(place));
    }

  private:
    std::string_view bytes_;
    std::size_t here_ = 0;
};

// Half or single floats from there on; false when they are not all there.
bool take_values(std::string_view bytes, char type, std::size_t count, std::vector<float>& values) {
    const std::size_t size = type == 'h' ? sizeof(std::uint16_t) : sizeof(float);
    if (bytes.size() / size < count) return false;
    values.resize(count);
    if (type == 'f') {
        std::memcpy(values.data(), bytes.data(), count * size);
        return true;
    }
    for (std::size_t i = 0; i < count; ++i) {
        std::uint16_t bits = 0;
        std::memcpy(&bits, bytes.data() + i * size, size);
        Imath::half half;
        half.setBits(bits);
        values[i] = half;
    }
    return true;
}

// The next row of the table and what it points to.
std::optional<std::pair<std::string, Tensor>> take_tensor(Bytes& table) {
    const auto length = table.take<std::uint16_t>();
    const auto name = length ? table.text(*length) : std::nullopt;
    const auto dimensions = name ? table.take<std::uint8_t>() : std::nullopt;
    if (!dimensions || *dimensions == 0 || *dimensions > 4) return std::nullopt;
    Tensor tensor;
    std::size_t count = 1;
    for (int i = 0; i < *dimensions; ++i) {
        const auto size = table.take<std::uint32_t>();
        if (!size || *size == 0 || *size > kMostValues / count) return std::nullopt;
        count *= *size;
        tensor.sizes.push_back(*size);
    }
    const auto layout = table.text(*dimensions);
    const auto type = layout ? table.take<char>() : std::nullopt;
    const auto place = type ? table.take<std::uint64_t>() : std::nullopt;
    if (!place || (*type != 'f' && *type != 'h')) return std::nullopt;
    tensor.layout = *layout;
    if (!take_values(table.from(*place), *type, count, tensor.values)) return std::nullopt;
    return std::pair(*name, std::move(tensor));
}

}  // namespace

Expected<Weights> read_weights(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    const auto wrong = [&](std::string_view what) {
        return Problem{Blame::kFailed, fmt::format("{}: {}; expected trained weights in a TZA file, version {}",
                                                   path.string(), what, kMajor)};
    };
    if (!file) return wrong("cannot be read");
    const std::string content{std::istreambuf_iterator<char>(file), {}};
    Bytes bytes(content);
    if (bytes.take<std::uint16_t>() != kMagic) return wrong("is of another kind");
    if (bytes.take<std::uint8_t>() != kMajor) return wrong("is of another version");
    bytes.take<std::uint8_t>();  // the minor version adds nothing that is read here
    const auto table = bytes.take<std::uint64_t>();
    if (!table || !bytes.go_to(*table)) return wrong("is cut short");
    const auto count = bytes.take<std::uint32_t>();
    if (!count || *count > kMostTensors) return wrong("is cut short");
    Weights weights;
    for (std::uint32_t i = 0; i < *count; ++i) {
        auto tensor = take_tensor(bytes);
        if (!tensor) return wrong("is cut short or damaged");
        weights.insert(std::move(*tensor));
    }
    return weights;
}

}  // namespace understudy
