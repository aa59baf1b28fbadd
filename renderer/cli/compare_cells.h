// The scenes that are compared: read, checked and metered before anything is traced.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "rehearsal/film_card.h"
#include "setup/variation.h"

namespace understudy {

enum class ComparedExposure {
    kEqual,   // each developed at what the face's flat reading toward the key asks for
    kLocked,  // as the scene sets the camera
};

// One picture of the sheet.
struct ComparedCell {
    std::vector<std::string> values;  // of the variations
    Setup setup;                      // its picture as large as the sheet shows it
    FilmCard card;
    MeterReport report;
    double developed_f_number = 4.0;
    bool unmetered = false;  // no light on the face to expose by, so as the scene sets the camera
    std::size_t film = 0;    // which of the traced films it is developed from
};

struct Comparison {
    std::vector<Variation> variations;
    ComparedExposure exposure = ComparedExposure::kEqual;
    int columns = 1;
    std::vector<ComparedCell> cells;  // in the order of the sheet, row by row
    std::size_t films = 0;
};

struct ComparisonWish {
    std::string scene;
    std::vector<std::string> vary;
    ComparedExposure exposure = ComparedExposure::kEqual;
};

// The sheet's form and every scene's setup. Scenes that differ only in what comes in at development share a film.
Expected<Comparison> read_comparison(const ComparisonWish& wish);

// The setup with its picture no wider than this, in its own proportions.
Setup fitted(Setup setup, int widest);

// Places and meters one of them, and says at which f-number it is developed.
Expected<ComparedCell> metered_cell(ComparedCell cell, ComparedExposure exposure);

// Numbers the films, once every cell is metered.
Comparison with_films(Comparison comparison);

}  // namespace understudy
