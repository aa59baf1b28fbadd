#include "report/table.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace understudy {
namespace {

struct Range {
    char32_t first;
    char32_t last;
};

// Combining marks, and the blocks that the Unicode standard (annex 11) calls wide: enough for names, not all of
// Unicode.
constexpr std::array kNoWidth = {Range{0x0300, 0x036F}, Range{0x200B, 0x200F}, Range{0x20D0, 0x20FF},
                                 Range{0xFE00, 0xFE0F}};
constexpr std::array kTwoWide = {Range{0x1100, 0x115F}, Range{0x2E80, 0xA4CF},   Range{0xAC00, 0xD7A3},
                                 Range{0xF900, 0xFAFF}, Range{0xFE30, 0xFE6F},   Range{0xFF00, 0xFF60},
                                 Range{0xFFE0, 0xFFE6}, Range{0x1F300, 0x1FAFF}, Range{0x20000, 0x3FFFD}};

template <class Ranges>
bool is_in(const Ranges& ranges, char32_t character) {
    return std::any_of(ranges.begin(), ranges.end(),
                       [=](const Range& range) { return character >= range.first && character <= range.last; });
}

struct Decoded {
    char32_t character;
    std::size_t bytes;
};

// The first character; a byte that begins none counts as one of its own.
Decoded decode(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    const std::size_t bytes = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    if (bytes == 1 || bytes > text.size()) return {lead, 1};
    char32_t character = lead & (0x7FU >> bytes);
    for (std::size_t i = 1; i < bytes; ++i) character = (character << 6U) | (byte(i) & 0x3FU);
    return {character, bytes};
}

bool is_control(char32_t character) { return character < 0x20 || (character >= 0x7F && character < 0xA0); }

}  // namespace

std::size_t display_width(std::string_view utf8) {
    std::size_t width = 0;
    while (!utf8.empty()) {
        const Decoded next = decode(utf8);
        width += is_in(kNoWidth, next.character) ? 0 : is_in(kTwoWide, next.character) ? 2 : 1;
        utf8.remove_prefix(next.bytes);
    }
    return width;
}

std::string without_controls(std::string_view text) {
    std::string plain;
    while (!text.empty()) {
        const Decoded next = decode(text);
        if (is_control(next.character)) {
            plain += ' ';
        } else {
            plain += text.substr(0, next.bytes);
        }
        text.remove_prefix(next.bytes);
    }
    return plain;
}

void Table::add_row(std::vector<std::string> cells) {
    assert(cells.size() == columns_.size());
    for (std::string& cell : cells) cell = without_controls(cell);
    rows_.push_back(std::move(cells));
}

std::string Table::line(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) const {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string padding(widths[i] - display_width(cells[i]), ' ');
        line += "  ";
        line += columns_[i].align == Align::kLeft ? cells[i] + padding : padding + cells[i];
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return line + '\n';
}

std::string Table::text() const {
    std::vector<std::string> headings;
    for (const Column& column : columns_) headings.push_back(without_controls(column.heading));
    std::vector<std::size_t> widths;
    std::vector<std::string> rules;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        std::size_t width = display_width(headings[i]);
        for (const auto& row : rows_) width = std::max(width, display_width(row[i]));
        widths.push_back(width);
        rules.emplace_back(width, '-');
    }
    std::string text = line(headings, widths) + line(rules, widths);
    for (const auto& row : rows_) text += line(row, widths);
    return text;
}

}  // namespace understudy
