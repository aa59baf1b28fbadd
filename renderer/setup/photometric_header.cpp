#include "setup/photometric_header.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

struct EditionLine {
    std::string_view text;
    PhotometricEdition edition;
};

// The first five as the editions have them, the last from memory; the others are met in files and warned of.
constexpr std::array<EditionLine, 9> kEditionLines{{{"IESNA91", PhotometricEdition::k1991},
                                                    {"IESNA:LM-63-1995", PhotometricEdition::k1995},
                                                    {"IESNA:LM-63-2002", PhotometricEdition::k2002},
                                                    {"IES:LM-63-2019", PhotometricEdition::k2019},
                                                    {"IESNA:LM-63-2019", PhotometricEdition::k2019},
                                                    {"IES:LM-63-2002", PhotometricEdition::k2002},
                                                    {"IESNA:LM-63-1991", PhotometricEdition::k1991},
                                                    {"IESNA:LM-63-1986", PhotometricEdition::k1986},
                                                    {"IESNA86", PhotometricEdition::k1986}}};
constexpr std::size_t kProperEditionLines = 4;

// Small letters made large, blanks and tabs left out.
std::string squeezed(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (c != ' ' && c != '\t') {
            result += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        }
    }
    return result;
}

bool begins_with(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

// Whether the line told the edition; if not it belongs to what follows.
bool take_edition(PhotometricScanner& scanner, std::string_view line, PhotometricHeader& header) {
    const std::string plain = squeezed(line);
    if (!begins_with(plain, "IESNA") && !begins_with(plain, "IES:")) {
        scanner.warn("there is no line with the edition; read as LM-63-1986");
        return false;
    }
    for (std::size_t i = 0; i < kEditionLines.size(); ++i) {
        if (kEditionLines[i].text != plain) {
            continue;
        }
        header.edition = kEditionLines[i].edition;
        if (line != plain || i >= kProperEditionLines) {
            scanner.warn(
                fmt::format("the edition is written \"{}\"; taken for {}", shown(line), kEditionLines[i].text));
        }
        return true;
    }
    scanner.fail(fmt::format("the edition \"{}\" is not known", shown(line)),
                 "IESNA91, IESNA:LM-63-1995, IESNA:LM-63-2002 or IES:LM-63-2019");
    return true;
}

// Old files carry bytes of Latin-1; a message or a terminal wants UTF-8.
std::string as_utf8(PhotometricScanner& scanner, std::string_view text) {
    const auto is_plain = [](char c) { return static_cast<unsigned char>(c) >= 0x20 || c == '\t'; };
    const bool control = !std::all_of(text.begin(), text.end(), is_plain);
    const bool high = std::any_of(text.begin(), text.end(), [](char c) { return (c & 0x80) != 0; });
    if (!high && !control) {
        return std::string(text);
    }
    scanner.warn("this line holds characters other than those of ASCII; shown as Latin-1");
    std::string result;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x80U) {
            result += is_plain(c) ? c : '?';
        } else if (byte < 0xA0U) {
            result += '?';
        } else {
            result += static_cast<char>(0xC0U | (byte >> 6U));
            result += static_cast<char>(0x80U | (byte & 0x3FU));
        }
    }
    return result;
}

void take_keyword(PhotometricScanner& scanner, std::string_view line, PhotometricHeader& header) {
    const std::string text = as_utf8(scanner, trimmed(line));
    if (text.empty()) {
        scanner.warn("a blank line before TILT");
        return;
    }
    const std::size_t close = text.find(']');
    if (text.front() != '[' || close == std::string::npos) {
        if (header.edition != PhotometricEdition::k1986) {
            scanner.warn(fmt::format("\"{}\" is no line of the form [KEYWORD] text; kept as a label", shown(text)));
        }
        header.keywords.push_back({"", text});
        return;
    }
    const std::string key = squeezed(text.substr(1, close - 1));
    const std::string rest(trimmed(std::string_view(text).substr(close + 1)));
    if (key != "MORE") {
        header.keywords.push_back({key, rest});
    } else if (header.keywords.empty()) {
        scanner.warn("[MORE] has nothing before it that it could continue");
        header.keywords.push_back({key, rest});
    } else {
        header.keywords.back().text += " " + rest;
    }
}

// What LM-63-2002 asks for.
void check_required(PhotometricScanner& scanner, const PhotometricHeader& header) {
    if (header.edition != PhotometricEdition::k2002 && header.edition != PhotometricEdition::k2019) {
        return;
    }
    std::vector<std::string_view> missing;
    for (const std::string_view key : {"TEST", "TESTLAB", "ISSUEDATE", "MANUFAC"}) {
        const auto is_it = [&](const PhotometricKeyword& keyword) { return keyword.key == key; };
        if (std::none_of(header.keywords.begin(), header.keywords.end(), is_it)) {
            missing.push_back(key);
        }
    }
    if (!missing.empty()) {
        scanner.warn(fmt::format("keywords that the edition wants are missing: {}", fmt::join(missing, ", ")));
    }
}

// Whether the line is TILT's.
bool take_tilt(PhotometricScanner& scanner, std::string_view line, PhotometricHeader& header) {
    const std::string plain = squeezed(line);
    if (!begins_with(plain, "TILT=")) {
        return false;
    }
    const std::string_view value = trimmed(line.substr(line.find('=') + 1));
    const std::string large = squeezed(value);
    if (value.empty()) {
        scanner.fail("TILT= says nothing", "TILT=NONE, TILT=INCLUDE or a file's name");
    }
    const bool is_word = large == "NONE" || large == "INCLUDE";
    header.tilt = is_word ? large : std::string(value);
    if (trimmed(line) != "TILT=" + header.tilt) {
        scanner.warn(fmt::format("\"{}\" is read as TILT={}", shown(trimmed(line)), shown(header.tilt)));
    }
    return true;
}

}  // namespace

std::optional<PhotometricHeader> read_photometric_header(PhotometricScanner& scanner) {
    PhotometricHeader header;
    bool first = true;
    while (!scanner.failed()) {
        const std::optional<std::string_view> line = scanner.line();
        if (!line) {
            scanner.fail("there is no line with TILT before the file ends",
                         "a photometric file of LM-63 with TILT=NONE, TILT=INCLUDE or TILT= and a file's name");
            return std::nullopt;
        }
        const bool edition = first && take_edition(scanner, trimmed(*line), header);
        first = false;
        if (edition) {
            continue;
        }
        if (take_tilt(scanner, *line, header)) {
            check_required(scanner, header);
            break;
        }
        take_keyword(scanner, *line, header);
    }
    return scanner.failed() ? std::nullopt : std::optional(header);
}

}  // namespace understudy
