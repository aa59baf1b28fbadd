#include "film/exif.h"

#include <cmath>
#include <cstdint>
#include <string>

namespace understudy {
namespace {

using Bytes = std::vector<unsigned char>;

enum class FieldType : std::uint16_t { kText = 2, kShort = 3, kLong = 4, kFraction = 5, kBytes = 7 };

void put(Bytes& bytes, std::uint32_t value, int count) {
    for (int i = 0; i < count; ++i) bytes.push_back(static_cast<unsigned char>(value >> (8 * i)));
}

struct Field {
    std::uint16_t tag;
    FieldType type;
    std::uint32_t count;
    Bytes value;
};

Field text(std::uint16_t tag, const std::string& words) {
    Bytes value(words.begin(), words.end());
    value.push_back(0);
    return {tag, FieldType::kText, static_cast<std::uint32_t>(value.size()), value};
}

Field number(std::uint16_t tag, FieldType type, std::uint32_t value) {
    Field field{tag, type, 1, {}};
    put(field.value, value, type == FieldType::kShort ? 2 : 4);
    return field;
}

Field fraction(std::uint16_t tag, double above, double below) {
    Field field{tag, FieldType::kFraction, 1, {}};
    put(field.value, static_cast<std::uint32_t>(std::lround(above)), 4);
    put(field.value, static_cast<std::uint32_t>(std::lround(below)), 4);
    return field;
}

// 1/200 s as people say it, where it is one over a whole number.
Field shutter(std::uint16_t tag, double seconds) {
    constexpr double kFine = 1e6;
    const double below = std::round(1.0 / seconds);
    if (seconds < 1.0 && std::abs(seconds * below - 1.0) < 1e-6) return fraction(tag, 1.0, below);
    return fraction(tag, seconds * kFine, kFine);
}

constexpr std::uint32_t kFieldLength = 12;

// A directory that begins so far into the block; its longer values follow it.
Bytes directory(const std::vector<Field>& fields, std::uint32_t begins) {
    Bytes bytes;
    Bytes values;
    const auto count = static_cast<std::uint32_t>(fields.size());
    const std::uint32_t after = begins + 2 + count * kFieldLength + 4;
    put(bytes, count, 2);
    for (const Field& field : fields) {
        put(bytes, field.tag, 2);
        put(bytes, static_cast<std::uint32_t>(field.type), 2);
        put(bytes, field.count, 4);
        Bytes value = field.value;
        if (value.size() > 4) {
            put(bytes, after + static_cast<std::uint32_t>(values.size()), 4);
            if (value.size() % 2 != 0) value.push_back(0);  // values begin at even places
            values.insert(values.end(), value.begin(), value.end());
        } else {
            value.resize(4);
            bytes.insert(bytes.end(), value.begin(), value.end());
        }
    }
    put(bytes, 0, 4);  // there is no further directory
    bytes.insert(bytes.end(), values.begin(), values.end());
    return bytes;
}

// Fields stand in the order of their tags.
std::vector<Field> camera_fields(const PictureTags& tags) {
    constexpr double kHundredth = 100.0;
    constexpr double kMillimetres = 1000.0;
    std::vector<Field> fields;
    if (tags.shutter_s > 0.0) fields.push_back(shutter(0x829A, tags.shutter_s));
    if (tags.aperture > 0.0) fields.push_back(fraction(0x829D, kHundredth * tags.aperture, kHundredth));
    if (tags.iso > 0.0) {
        fields.push_back(number(0x8827, FieldType::kShort, static_cast<std::uint32_t>(std::lround(tags.iso))));
    }
    fields.push_back({0x9000, FieldType::kBytes, 4, {'0', '2', '3', '0'}});
    if (tags.focal_length_m > 0.0) {
        fields.push_back(fraction(0x920A, kHundredth * kMillimetres * tags.focal_length_m, kHundredth));
    }
    fields.push_back(number(0xA001, FieldType::kShort, 1));  // sRGB
    return fields;
}

}  // namespace

std::vector<unsigned char> exif_block(const PictureTags& tags) {
    constexpr std::uint32_t kHeaderLength = 8;
    std::vector<Field> fields;
    if (!tags.title.empty()) fields.push_back(text(0x010E, tags.title));
    fields.push_back(text(0x0131, "understudy"));
    fields.push_back(number(0x8769, FieldType::kLong, 0));  // where the camera's directory begins
    const auto camera_begins = kHeaderLength + static_cast<std::uint32_t>(directory(fields, kHeaderLength).size());
    fields.back() = number(0x8769, FieldType::kLong, camera_begins);
    Bytes block{'I', 'I', 42, 0};
    put(block, kHeaderLength, 4);
    for (const Bytes& part : {directory(fields, kHeaderLength), directory(camera_fields(tags), camera_begins)}) {
        block.insert(block.end(), part.begin(), part.end());
    }
    return block;
}

}  // namespace understudy
