// A table in plain text whose columns stay in line however long a name is, and whatever alphabet it is written in.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace understudy {

// The columns a text takes on a screen: none for an accent that joins its letter, two for East Asian characters.
std::size_t display_width(std::string_view utf8);

// Without the control characters that could move the cursor, ring, colour or blink: each becomes a space.
std::string without_controls(std::string_view text);

enum class Align { kLeft, kRight };

struct Column {
    std::string heading;
    Align align = Align::kLeft;
};

class Table {
  public:
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

    // As many cells as there are columns.
    void add_row(std::vector<std::string> cells);

    // Headings, a rule and the rows, each line indented by two and ended by a newline.
    std::string text() const;

  private:
    std::string line(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) const;

    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
};

}  // namespace understudy
