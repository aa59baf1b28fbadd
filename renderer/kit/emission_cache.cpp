#include "kit/emission_cache.h"

#include <cmath>
#include <cstring>
#include <fstream>
#include <iterator>
#include <system_error>

#include <fmt/format.h>
#include <unistd.h>

namespace understudy {

namespace {

constexpr std::string_view kMark = "understudy emission 1\n";
constexpr std::size_t kMostValues = 1U << 24U;

// FNV-1a: G. Fowler, L. C. Noll and K.-P. Vo, 64 bits.
std::uint64_t seal_of(std::string_view bytes) {
    std::uint64_t hash = 0xcbf29ce484222325ULL;
    for (const char byte : bytes) {
        hash ^= static_cast<unsigned char>(byte);
        hash *= 0x100000001b3ULL;
    }
    return hash;
}

template <class T>
void put(std::string& bytes, const T& value) {
    bytes.append(reinterpret_cast<const char*>(&value), sizeof(value));
}

void put_all(std::string& bytes, const std::vector<float>& values) {
    put(bytes, static_cast<std::uint64_t>(values.size()));
    bytes.append(reinterpret_cast<const char*>(values.data()), values.size() * sizeof(float));
}

// Takes one thing after another; once something is missing, nothing more is there.
class Taker {
  public:
    explicit Taker(std::string_view bytes) : rest_(bytes) {}

    bool mark(std::string_view expected) {
        whole_ = whole_ && rest_.substr(0, expected.size()) == expected;
        if (whole_) rest_.remove_prefix(expected.size());
        return whole_;
    }
    template <class T>
    T number() {
        T value{};
        whole_ = whole_ && rest_.size() >= sizeof(T);
        if (!whole_) return value;
        std::memcpy(&value, rest_.data(), sizeof(T));
        rest_.remove_prefix(sizeof(T));
        return value;
    }
    std::vector<float> numbers() {
        const auto count = number<std::uint64_t>();
        whole_ = whole_ && count <= kMostValues && rest_.size() >= count * sizeof(float);
        if (!whole_) return {};
        std::vector<float> values(count);
        std::memcpy(values.data(), rest_.data(), count * sizeof(float));
        rest_.remove_prefix(count * sizeof(float));
        return values;
    }
    bool whole() const { return whole_; }
    bool at_end() const { return rest_.empty(); }

  private:
    std::string_view rest_;
    bool whole_ = true;
};

std::string lining_key(const Lining& lining) {
    return fmt::format("{} {} {}", lining.metal ? "metal" : "matt", lining.reflectance, lining.roughness);
}

std::string cloth_key(const DiffusingCloth& cloth) {
    return fmt::format("{} {} {} {}", cloth.transmittance, cloth.reflectance, cloth.straight, cloth.roughness);
}

bool usable(const EmissionLayout& layout, const std::vector<float>& values) {
    if (layout.across < 2 || layout.across > 4096 || layout.along < 1 || layout.along > 4096 || layout.azimuths < 1 ||
        layout.azimuths > 4096 || layout.angles.size() < 2 || values.size() != layout.size()) {
        return false;
    }
    float sum = 0.0F;
    for (const float value : values) {
        if (!(value >= 0.0F && std::isfinite(value))) return false;
        sum += value;
    }
    return sum > 0.0F;
}

}  // namespace

std::string emission_key(const Construction& built, const ModifierShape& front) {
    const EmissionLayout layout = EmissionLayout::of(front);
    std::string key = fmt::format("version {}\n", kTraceVersion);
    key += fmt::format("front {} {} {} {}\n", static_cast<int>(layout.fold), layout.reach, layout.second_reach,
                       layout.sides);
    key += fmt::format("body {} {} {} {}\n", static_cast<int>(built.body), built.depth_m, built.back_diameter_m,
                       lining_key(built.lining));
    const Tube& tube = built.tube;
    key += fmt::format("tube {} {} {} {} {} {}\n", tube.ring, tube.diameter_m, tube.thickness_m, tube.before_back_m,
                       static_cast<int>(tube.glass), tube.glass_diameter_m);
    if (const auto& plate = built.deflector) {
        key += fmt::format("deflector {} {} {}\n", plate->diameter_m, plate->before_back_m, lining_key(plate->lining));
    }
    if (const auto& inner = built.inner_cloth) {
        key += fmt::format("inner cloth {} {} {}\n", inner->behind_front_m, inner->gap_m, cloth_key(inner->cloth));
    }
    if (built.front_cloth) key += fmt::format("front cloth {}\n", cloth_key(*built.front_cloth));
    if (const auto& grid = built.grid) {
        key += fmt::format("grid {} {} {}\n", static_cast<int>(grid->cells), grid->width_m, grid->depth_m);
    }
    return key;
}

std::filesystem::path emission_file(const std::filesystem::path& folder, const std::string& key) {
    return folder / fmt::format("{:016x}.emission", seal_of(key));
}

std::optional<TracedEmission> read_emission(const std::filesystem::path& file, const std::string& key) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) return std::nullopt;
    const std::string bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    constexpr std::size_t kSeal = sizeof(std::uint64_t);
    if (bytes.size() < kSeal) return std::nullopt;
    const std::string_view sealed = std::string_view(bytes).substr(0, bytes.size() - kSeal);
    std::uint64_t seal = 0;
    std::memcpy(&seal, bytes.data() + sealed.size(), kSeal);
    Taker taker(sealed);
    if (seal != seal_of(sealed) || !taker.mark(kMark) || !taker.mark(key)) return std::nullopt;
    EmissionLayout layout;
    layout.fold = static_cast<EmissionLayout::Fold>(taker.number<std::uint32_t>());
    layout.reach = taker.number<float>();
    layout.second_reach = taker.number<float>();
    layout.sides = taker.number<std::uint32_t>();
    layout.across = taker.number<std::uint32_t>();
    layout.along = taker.number<std::uint32_t>();
    layout.azimuths = taker.number<std::uint32_t>();
    layout.angles = taker.numbers();
    const auto efficiency = taker.number<double>();
    const auto standard_error = taker.number<double>();
    const auto traced_flux = taker.number<double>();
    std::vector<float> values = taker.numbers();
    if (!taker.whole() || !taker.at_end() || !usable(layout, values)) return std::nullopt;
    return TracedEmission{EmissionTable(layout, std::move(values)), efficiency, standard_error, traced_flux};
}

std::string write_emission(const std::filesystem::path& file, const std::string& key, const TracedEmission& traced) {
    const EmissionLayout& layout = traced.table.layout();
    std::string bytes = std::string(kMark) + key;
    put(bytes, static_cast<std::uint32_t>(layout.fold));
    put(bytes, layout.reach);
    put(bytes, layout.second_reach);
    put(bytes, layout.sides);
    put(bytes, layout.across);
    put(bytes, layout.along);
    put(bytes, layout.azimuths);
    put_all(bytes, layout.angles);
    put(bytes, traced.efficiency);
    put(bytes, traced.standard_error);
    put(bytes, traced.traced_flux);
    put_all(bytes, traced.table.values());
    put(bytes, seal_of(bytes));

    std::error_code error;
    std::filesystem::create_directories(file.parent_path(), error);
    if (error) return fmt::format("{}: {}", file.parent_path().string(), error.message());
    const std::filesystem::path beside = file.string() + fmt::format(".{}", getpid());
    std::ofstream stream(beside, std::ios::binary);
    stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    stream.close();
    if (!stream) {
        std::filesystem::remove(beside, error);
        return fmt::format("{}: cannot be written", beside.string());
    }
    std::filesystem::rename(beside, file, error);
    if (!error) return "";
    std::string trouble = fmt::format("{}: {}", file.string(), error.message());
    std::filesystem::remove(beside, error);
    return trouble;
}

}  // namespace understudy
