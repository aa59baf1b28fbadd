#include "sitter/sitter.h"

#include <array>
#include <cstddef>

namespace understudy {

std::string_view zone_name(Zone zone) {
    static constexpr std::array<std::string_view, static_cast<std::size_t>(Zone::kCount)> kNames = {
        "face",  "forehead", "brow",     "upper lid", "lower lid", "nose",  "cheek",  "lips",
        "mouth", "chin",     "ear",      "scalp",     "neck",      "top",   "collar", "jacket",
        "hat",   "glasses",  "caruncle", "tears",     "teeth",     "socket"};
    return kNames.at(static_cast<std::size_t>(zone));
}

}  // namespace understudy
