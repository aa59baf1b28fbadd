// A comparison as a sheet, as tables and as JSON: the same lines in each.
#pragma once

#include <string>
#include <vector>

#include "cli/compare_films.h"
#include "sheet/sheet.h"

namespace understudy {

ContactSheet sheet_of(const Comparison& comparison, const std::vector<CellPictures>& pictures);

// A table for each row of the sheet, a column a picture.
std::string comparison_text(const Comparison& comparison);

// "exposure", "vary" with each key and its values, and "cells": the values, the lines in words, and the whole report.
std::string comparison_json(const Comparison& comparison);

}  // namespace understudy
