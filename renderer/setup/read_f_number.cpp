#include "setup/read_f_number.h"

#include <fmt/format.h>

#include "setup/f_number_marks.h"

namespace understudy {

std::optional<double> read_f_number(TableReader& table, std::string_view key, Range range) {
    if (!table.is_text(key)) {
        const std::optional<double> marked = table.quantity(key, kFNumber, range);
        return marked ? std::optional(exact_f_number(*marked)) : std::nullopt;
    }
    const Expected<double> read = read_meter_notation(*table.text(key));
    if (!read) {
        table.log().add_all(table.place_of(key),
                            {problem_at(table.place_of(key),
                                        fmt::format("{} {} {}", table.name(), key, read.problems().front().text))});
        return std::nullopt;
    }
    if (!range.contains(*read)) {
        table.wrong(key, "is " + show_measure(*read, kFNumber) + ", out of range",
                    show_measure(range.least, kFNumber) + " to " + show_measure(range.most, kFNumber));
        return std::nullopt;
    }
    return read.value();
}

}  // namespace understudy
