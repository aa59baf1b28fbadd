#include "cli/compare_cells.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

#include "cli/own_library.h"
#include "meter/ratio.h"
#include "setup/developed_keys.h"
#include "setup/vary_scene.h"
#include "sheet/sheet.h"

namespace understudy {

namespace {

// In more columns a picture becomes too small to be judged, and its lines too narrow.
constexpr std::size_t kMostInARow = 5;
constexpr std::size_t kMostGridColumns = 6;

// As many rows as are needed, all about as long.
int columns_for(std::size_t count) {
    const std::size_t rows = (count + kMostInARow - 1) / kMostInARow;
    return static_cast<int>((count + rows - 1) / rows);
}

// Rows for columns: with at most 48 scenes, one of the two is always short enough.
std::vector<VariedScene> turned(const std::vector<VariedScene>& scenes, std::size_t columns) {
    std::vector<VariedScene> result;
    for (std::size_t column = 0; column < columns; ++column) {
        for (std::size_t i = column; i < scenes.size(); i += columns) result.push_back(scenes[i]);
    }
    return result;
}

}  // namespace

Setup fitted(Setup setup, int widest) {
    PictureSettings& picture = setup.picture;
    if (picture.width <= widest) return setup;
    const double scale = static_cast<double>(widest) / picture.width;
    picture.width = widest;
    picture.height = std::max(1, static_cast<int>(std::lround(scale * picture.height)));
    return setup;
}

Expected<Comparison> read_comparison(const ComparisonWish& wish) {
    Comparison comparison;
    comparison.exposure = wish.exposure;
    Problems problems;
    for (const std::string& argument : wish.vary) {
        const auto variation = read_variation(argument);
        if (variation) {
            comparison.variations.push_back(*variation);
        } else {
            problems.insert(problems.end(), variation.problems().begin(), variation.problems().end());
        }
    }
    if (!problems.empty()) return problems;
    auto scenes = vary_scene(wish.scene, comparison.variations, own_library());
    if (!scenes) return scenes.problems();
    if (comparison.variations.size() == 1) {
        comparison.columns = columns_for(scenes->size());
    } else {
        const std::size_t columns = comparison.variations.back().values.size();
        const std::size_t rows = scenes->size() / columns;
        const bool turn = columns > kMostGridColumns && rows < columns;
        if (turn) *scenes = turned(*scenes, columns);
        comparison.columns = static_cast<int>(turn ? rows : columns);
    }
    const int widest = cell_width(comparison.columns, true);
    for (VariedScene& scene : *scenes) {
        ComparedCell cell;
        cell.values = scene.values;
        cell.setup = fitted(std::move(scene.setup), widest);
        comparison.cells.push_back(std::move(cell));
    }
    return comparison;
}

Expected<ComparedCell> metered_cell(ComparedCell cell, ComparedExposure exposure) {
    auto rehearsal = rehearse(cell.setup);
    if (!rehearsal) return rehearsal.problems();
    auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return metered.problems();
    cell.report = std::move(metered->report);
    cell.card = card_of(rehearsal->studio.setup, metered->lit, cell.report);
    cell.developed_f_number = cell.card.exposure.aperture;
    if (exposure == ComparedExposure::kEqual) {
        const Reading* face = find_reading(cell.report.readings, "face", Receptor::kFlat, Facing::kKey);
        cell.unmetered = !(face->f_number > 0.0);
        if (!cell.unmetered) cell.developed_f_number = face->f_number;
    }
    return cell;
}

Comparison with_films(Comparison comparison) {
    using TracedWith = std::tuple<std::vector<std::string>, double, std::size_t>;
    std::map<TracedWith, std::size_t> films;
    for (ComparedCell& cell : comparison.cells) {
        std::vector<std::string> traced;
        for (std::size_t i = 0; i < comparison.variations.size(); ++i) {
            if (!comes_in_at_development(comparison.variations[i].path)) traced.push_back(cell.values[i]);
        }
        const double pupil = cell.report.pupil ? cell.report.pupil->diameter_mm : 0.0;
        const TracedWith film{traced, pupil, cell.card.lights.size()};
        cell.film = films.emplace(film, films.size()).first->second;
    }
    comparison.films = films.size();
    return comparison;
}

}  // namespace understudy
