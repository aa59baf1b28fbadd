// What is told under each of several pictures that are compared: the one place where a line is added.
#pragma once

#include <span>
#include <string>

#include "meter/reading.h"

namespace understudy {

struct ComparedScene {
    const MeterReport& report;
    double developed_f_number = 4.0;  // what its picture is developed at
};

struct ComparedRow {
    const char* name;
    std::string (*words)(const ComparedScene&);  // "" for what the scene does not have
};

// In the order that they are read in: exposure, contrast, eyes, backdrop, warnings.
std::span<const ComparedRow> compared_rows();

}  // namespace understudy
