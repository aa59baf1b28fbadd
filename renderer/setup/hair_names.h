// The names that hair goes by, in scene files and in heads' own files.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "setup/hair_settings.h"

namespace understudy {

template <class T, std::size_t N>
using NamesOf = std::array<std::pair<std::string_view, T>, N>;

inline constexpr NamesOf<HairStyle, 9> kHairStyles{{{"none", HairStyle::kNone},
                                                    {"shaved", HairStyle::kShaved},
                                                    {"cropped", HairStyle::kCropped},
                                                    {"side-part", HairStyle::kSidePart},
                                                    {"bob", HairStyle::kBob},
                                                    {"long", HairStyle::kLong},
                                                    {"tied-back", HairStyle::kTiedBack},
                                                    {"curly", HairStyle::kCurly},
                                                    {"afro", HairStyle::kAfro}}};
inline constexpr NamesOf<BeardStyle, 4> kBeardStyles{{{"none", BeardStyle::kNone},
                                                      {"stubble", BeardStyle::kStubble},
                                                      {"short", BeardStyle::kShort},
                                                      {"full", BeardStyle::kFull}}};
inline constexpr NamesOf<BrowStyle, 4> kBrowStyles{{{"none", BrowStyle::kNone},
                                                    {"thin", BrowStyle::kThin},
                                                    {"medium", BrowStyle::kMedium},
                                                    {"full", BrowStyle::kFull}}};
// Blond, brown and black by the concentrations of eumelanin that Chiang and others 2016 show, those between by eye. Of
// pheomelanin there is the same trace in all of them: S. Ito and K. Wakamatsu, "Diversity of human hair pigmentation as
// studied by chemical analysis of eumelanin and pheomelanin", J. Eur. Acad. Dermatol. Venereol. 25, 2011, 1369; how
// much a trace is in this unit is by eye. Red hair has about as much of the one as of the other by the same authors;
// with these spectra it takes more for it to look red.
inline constexpr NamesOf<HairPigment, 8> kHairColours{{{"black", {8.0, 0.05}},
                                                       {"dark-brown", {3.0, 0.05}},
                                                       {"brown", {1.3, 0.05}},
                                                       {"light-brown", {0.7, 0.05}},
                                                       {"auburn", {0.9, 1.6}},
                                                       {"red", {0.25, 1.3}},
                                                       {"blond", {0.3, 0.05}},
                                                       {"white", {0.01, 0.01}}}};

template <class T, std::size_t N>
std::optional<T> named(const NamesOf<T, N>& names, std::string_view name) {
    for (const auto& [known, value] : names) {
        if (known == name) return value;
    }
    return std::nullopt;
}

template <class T, std::size_t N>
std::vector<std::string> all_names(const NamesOf<T, N>& names) {
    std::vector<std::string> all;
    for (const auto& [known, value] : names) all.emplace_back(known);
    return all;
}

}  // namespace understudy
