// Places and lists as JSON has them.
#pragma once

#include "base/geometry.h"
#include "report/json_values.h"

namespace understudy {

inline Json triple(const Double3& v) { return Json::array({number(v.x), number(v.y), number(v.z)}); }

inline Json pair(const Vec2& v) {
    return Json::array({number(static_cast<double>(v.x)), number(static_cast<double>(v.y))});
}

template <class Items, class ToJson>
Json list(const Items& items, ToJson to_json) {
    Json array = Json::array();
    for (const auto& item : items) array.push_back(to_json(item));
    return array;
}

}  // namespace understudy
