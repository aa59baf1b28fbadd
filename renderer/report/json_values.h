// Numbers and names as JSON has them: what does not exist is null.
#pragma once

#include <cmath>
#include <string>

#include <nlohmann/json.hpp>

#include "report/f_number.h"

namespace understudy {

using Json = nlohmann::ordered_json;

inline Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

// For what is a number only when there is some: no lens has f/0, and a light of no energy was never set.
inline Json positive(double value) { return value > 0.0 ? number(value) : Json(nullptr); }

inline Json name_or_null(const std::string& name) { return name.empty() ? Json(nullptr) : Json(name); }

// As people read an f-number: its mark on a lens, and the whole stop with tenths of a hand-held meter.
inline Json lens_mark(double f_number) {
    const std::string mark = marked_f_number(f_number);
    return mark.starts_with("f/") ? Json(mark) : Json(nullptr);
}
inline Json meter_mark(double f_number) {
    return lens_mark(f_number).is_null() ? Json(nullptr) : Json(whole_stop_and_tenths(f_number));
}

}  // namespace understudy
