#include "cli/compare_told.h"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "report/compared_rows.h"
#include "report/f_number.h"
#include "report/report_json.h"
#include "report/table.h"
#include "report/words.h"

namespace understudy {

namespace {

constexpr const char* kMissing = "-";
constexpr const char* kUnmetered = "no light on the face toward the key: exposed as set";

// A line of the sheet, a text for each cell.
struct Line {
    std::string name;
    std::vector<std::string> words;
};

// Without those that no cell has anything to say to.
std::vector<Line> lines_of(const Comparison& comparison) {
    std::vector<Line> lines;
    for (const ComparedRow& row : compared_rows()) {
        Line line{row.name, {}};
        bool any = false;
        for (const ComparedCell& cell : comparison.cells) {
            std::string words = without_controls(row.words({cell.report, cell.developed_f_number}));
            any = any || !words.empty();
            line.words.push_back(words.empty() ? kMissing : std::move(words));
        }
        if (any) lines.push_back(std::move(line));
    }
    return lines;
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
    for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
        text.replace(at, from.size(), to);
    }
    return text;
}

// For a sheet's narrow columns: numbers stay on the line of what belongs to them, and each light has a line of its own.
std::string in_lines(const std::string& words) {
    return replaced(replaced(replaced(words, " %", "\u00a0%"), " x ", "\u00a0x\u00a0"), "; ", "\n");
}

// In the words of the scene file: "key modifier octa-120", "camera focal_length 85 mm"; one for each variation.
std::vector<std::string> titles_of(const Comparison& comparison, const std::vector<std::string>& values) {
    std::vector<std::string> titles;
    for (std::size_t i = 0; i < comparison.variations.size(); ++i) {
        const std::vector<std::string>& path = comparison.variations[i].path;
        const bool named = path.front() == "light" || path.front() == "panel";
        const std::string words = fmt::format("{}", fmt::join(path.begin() + (named ? 1 : 0), path.end(), " "));
        titles.push_back(words + " " + values[i]);
    }
    return titles;
}

// "0.95 m" is not broken.
std::string sheet_title_of(const Comparison& comparison, const ComparedCell& cell) {
    constexpr std::size_t kShort = 12;
    std::vector<std::string> values = cell.values;
    for (std::string& value : values) {
        if (value.size() <= kShort) value = replaced(value, " ", "\u00a0");
    }
    return fmt::format("{}", fmt::join(titles_of(comparison, values), "\n"));
}

std::string exposure_name(const Comparison& comparison) {
    return comparison.exposure == ComparedExposure::kEqual ? "equal exposure" : "locked exposure";
}

std::string camera_words(const ExposureSettings& camera) {
    return fmt::format("{}, {}, ISO {:.0f}", marked_f_number(camera.aperture), shutter_time(camera.shutter_s),
                       camera.iso);
}

std::string exposure_words(const Comparison& comparison) {
    if (comparison.exposure == ComparedExposure::kEqual) {
        return "Each picture is exposed for what a flat meter at the face reads toward the key.";
    }
    const std::string first = camera_words(comparison.cells.front().setup.camera.exposure);
    const bool same = std::all_of(comparison.cells.begin(), comparison.cells.end(), [&](const ComparedCell& cell) {
        return camera_words(cell.setup.camera.exposure) == first;
    });
    return same ? fmt::format("Every picture is exposed as the scene sets the camera: {}.", first)
                : "Each picture is exposed as its scene sets the camera.";
}

std::string sheet_title(const Comparison& comparison) {
    return fmt::format("{}, {}", without_controls(comparison.cells.front().report.title), exposure_name(comparison));
}

}  // namespace

ContactSheet sheet_of(const Comparison& comparison, const std::vector<CellPictures>& pictures) {
    ContactSheet sheet;
    sheet.title = fmt::format("{}, compared by understudy", sheet_title(comparison));
    sheet.note = exposure_words(comparison);
    sheet.columns = comparison.columns;
    const std::vector<Line> lines = lines_of(comparison);
    for (const Line& line : lines) sheet.labels.push_back(line.name);
    for (std::size_t i = 0; i < comparison.cells.size(); ++i) {
        const ComparedCell& cell = comparison.cells[i];
        SheetCell shown{sheet_title_of(comparison, cell), pictures[i].picture, pictures[i].eyes, {}, ""};
        for (const Line& line : lines) shown.lines.push_back(in_lines(line.words[i]));
        if (cell.unmetered) shown.mark = kUnmetered;
        sheet.cells.push_back(std::move(shown));
    }
    return sheet;
}

std::string comparison_text(const Comparison& comparison) {
    std::string text = fmt::format("{}\n{}\n", sheet_title(comparison), exposure_words(comparison));
    const std::vector<Line> lines = lines_of(comparison);
    const auto columns = static_cast<std::size_t>(comparison.columns);
    for (std::size_t first = 0; first < comparison.cells.size(); first += columns) {
        const std::size_t last = std::min(first + columns, comparison.cells.size());
        std::vector<Column> headings{{""}};
        for (std::size_t i = first; i < last; ++i) {
            headings.push_back({fmt::format("{}", fmt::join(titles_of(comparison, comparison.cells[i].values), ", "))});
        }
        Table table(headings);
        for (const Line& line : lines) {
            std::vector<std::string> row{line.name};
            for (std::size_t i = first; i < last; ++i) row.push_back(line.words[i]);
            table.add_row(std::move(row));
        }
        text += "\n" + table.text();
        for (std::size_t i = first; i < last; ++i) {
            if (comparison.cells[i].unmetered)
                text += fmt::format("  {}: {}\n", headings[i - first + 1].heading, kUnmetered);
        }
    }
    return text;
}

std::string comparison_json(const Comparison& comparison) {
    using Json = nlohmann::ordered_json;
    Json vary = Json::array();
    for (const Variation& variation : comparison.variations) {
        vary.push_back({{"key", variation.key}, {"values", variation.values}});
    }
    const std::vector<Line> lines = lines_of(comparison);
    Json cells = Json::array();
    for (std::size_t i = 0; i < comparison.cells.size(); ++i) {
        const ComparedCell& cell = comparison.cells[i];
        Json values = Json::object();
        for (std::size_t v = 0; v < comparison.variations.size(); ++v) {
            values[comparison.variations[v].key] = cell.values[v];
        }
        Json words = Json::object();
        for (const Line& line : lines) words[line.name] = line.words[i];
        cells.push_back({{"values", values},
                         {"developed_f_number", cell.developed_f_number},
                         {"exposed_by_meter", comparison.exposure == ComparedExposure::kEqual && !cell.unmetered},
                         {"film", cell.film},
                         {"words", words},
                         {"report", Json::parse(report_json(cell.report))}});
    }
    const Json json{{"exposure", comparison.exposure == ComparedExposure::kEqual ? "equal" : "locked"},
                    {"columns", comparison.columns},
                    {"films", comparison.films},
                    {"vary", vary},
                    {"cells", cells}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace understudy
