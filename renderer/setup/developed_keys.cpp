#include "setup/developed_keys.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace understudy {
namespace {

constexpr std::array<std::string_view, 9> kOfLight{
    "meter", "energy", "dial", "lumens", "lux", "from_key", "gel", "colour_temperature", "spectrum"};
constexpr std::array<std::string_view, 2> kOfCamera{"shutter", "iso"};
constexpr std::array<std::string_view, 2> kOfPicture{"treatment", "white_balance"};
constexpr std::array<std::string_view, 3> kOfRoom{"ambient", "ambient_temperature", "ambient_spectrum"};

template <std::size_t kCount>
bool among(const std::array<std::string_view, kCount>& keys, const std::string& key) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

}  // namespace

bool comes_in_at_development(const std::vector<std::string>& path) {
    const std::string& table = path.front();
    if (table == "flash" || (table == "title" && path.size() == 1)) return true;
    if (table == "light") return path.size() == 3 && among(kOfLight, path.back());
    if (path.size() != 2) return false;
    return (table == "camera" && among(kOfCamera, path.back())) ||
           (table == "picture" && among(kOfPicture, path.back())) || (table == "room" && among(kOfRoom, path.back()));
}

}  // namespace understudy
