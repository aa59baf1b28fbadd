// Goes through the text of a photometric file: whole lines up to TILT, then numbers that may stand on any line.
//
// The first thing that is wrong ends the reading: from then on every getter gives nothing, and problem() tells what it
// was. So a reader may ask for several things and look once whether they came.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "setup/table_reader.h"

namespace understudy {

// Without the blanks and tabs at either end.
std::string_view trimmed(std::string_view text);

class PhotometricScanner {
  public:
    // The text has to outlive the scanner.
    PhotometricScanner(std::string_view text, std::string file);

    // The next line without its end (CR LF, LF or CR); none at the end of the file.
    std::optional<std::string_view> line();

    // A number and what messages call it. Numbers are parted by blanks, tabs and line ends, with at most one comma.
    std::optional<double> number(std::string_view name, Range range);
    std::optional<int> whole(std::string_view name, int least, int most);
    // So many of them. Nothing is set aside for them before they are read: the count may be a lie.
    std::vector<double> numbers(std::string_view name, std::size_t count, Range range);
    // Nothing but blanks may follow; other text is warned of, more numbers are a problem.
    void end(std::string_view expected);

    // At the beginning of what was read last.
    void fail(std::string_view what, std::string_view expected);
    void warn(std::string_view what);
    bool failed() const { return problem_.has_value(); }
    const Problem& problem() const { return *problem_; }
    const std::vector<std::string>& warnings() const { return warnings_; }

  private:
    struct Position {
        std::size_t at = 0;
        int line = 1;
        std::size_t line_start = 0;
    };
    void step();  // over one character
    std::string place() const;
    bool skip_to_value();
    std::optional<std::string_view> value(std::string_view name);
    std::optional<double> finite(std::string_view token);

    std::string_view text_;
    std::string file_;
    Position next_;
    Position last_;  // the beginning of what was read last
    bool comma_may_come_ = false;
    bool tab_told_ = false;
    bool point_told_ = false;
    std::optional<Problem> problem_;
    std::vector<std::string> warnings_;
};

}  // namespace understudy
