#include "setup/table_reader.h"

#include <algorithm>
#include <cassert>

#include <fmt/format.h>

#include "setup/nearest_name.h"

namespace understudy {

TableReader::TableReader(const Value& table, std::string name, ProblemLog& log)
    : value_(&table), name_(std::move(name)), log_(&log) {
    assert(std::holds_alternative<ValueTable>(table.content));
}

const Entry* TableReader::entry(std::string_view key) const {
    for (const Entry& candidate : std::get<ValueTable>(value_->content).entries) {
        if (candidate.key == key) {
            return &candidate;
        }
    }
    return nullptr;
}

const Value* TableReader::find(std::string_view key) {
    if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) {
        asked_.emplace_back(key);
    }
    const Entry* found = entry(key);
    return found == nullptr ? nullptr : &found->value;
}

bool TableReader::has(std::string_view key) const { return entry(key) != nullptr; }

SourcePlace TableReader::place_of(std::string_view key) const {
    const Entry* found = entry(key);
    return found == nullptr ? value_->place : found->value.place;
}

SourcePlace TableReader::key_place_of(std::string_view key) const {
    const Entry* found = entry(key);
    return found == nullptr ? value_->place : found->place;
}

bool TableReader::is_text(std::string_view key) const {
    const Entry* found = entry(key);
    return found != nullptr && std::holds_alternative<std::string>(found->value.content);
}

bool TableReader::is_list(std::string_view key) const {
    const Entry* found = entry(key);
    return found != nullptr && std::holds_alternative<ValueList>(found->value.content);
}

void TableReader::wrong(std::string_view key, std::string_view what, std::string_view expected) {
    log_->add(place_of(key), fmt::format("{} {} {}", name_, key, what), expected);
}

void TableReader::unknown_name(std::string_view key, std::string_view given, const std::vector<std::string>& valid) {
    wrong(key, fmt::format("is the unknown name \"{}\"", shown(given)), expected_names(given, valid));
}

std::optional<std::string> TableReader::text(std::string_view key) {
    const Value* value = find(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (const std::string* text = std::get_if<std::string>(&value->content)) {
        return *text;
    }
    wrong(key, "is " + kind_of(*value), "a string");
    return std::nullopt;
}

std::optional<bool> TableReader::truth(std::string_view key) {
    const Value* value = find(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (const bool* truth = std::get_if<bool>(&value->content)) {
        return *truth;
    }
    wrong(key, "is " + kind_of(*value), "true or false");
    return std::nullopt;
}

std::optional<long long> TableReader::whole(std::string_view key, long long least, long long most) {
    const Value* value = find(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    const std::int64_t* number = std::get_if<std::int64_t>(&value->content);
    if (number != nullptr && *number >= least && *number <= most) {
        return *number;
    }
    wrong(key, "is " + kind_of(*value), fmt::format("a whole number from {} to {}", least, most));
    return std::nullopt;
}

std::optional<double> TableReader::measure(std::string_view key, const Value& value, const Quantity& quantity,
                                           Range range) {
    const auto complain = [&](std::string_view what, std::string_view expected) -> std::optional<double> {
        log_->add(value.place, fmt::format("{} {} {}", name_, key, what), expected);
        return std::nullopt;
    };
    double result = 0.0;
    if (const std::int64_t* whole = std::get_if<std::int64_t>(&value.content)) {
        result = static_cast<double>(*whole) * quantity.bare.in_si;
    } else if (const double* number = std::get_if<double>(&value.content)) {
        result = *number * quantity.bare.in_si;
    } else if (const std::string* text = std::get_if<std::string>(&value.content)) {
        const Expected<double> read = &quantity == &kShutter ? read_shutter(*text) : read_measure(*text, quantity);
        if (!read) {
            log_->add_all(
                value.place,
                {problem_at(value.place, fmt::format("{} {}: {}", name_, key, read.problems().front().text))});
            return std::nullopt;
        }
        result = *read;
    } else {
        return complain("is " + kind_of(value), quantity.expected);
    }
    if (!range.contains(result)) {
        return complain(
            fmt::format("is {}, out of range", show_measure(result, quantity)),
            fmt::format("{} to {}", show_measure(range.least, quantity), show_measure(range.most, quantity)));
    }
    return result;
}

std::optional<double> TableReader::quantity(std::string_view key, const Quantity& quantity, Range range) {
    const Value* value = find(key);
    return value == nullptr ? std::nullopt : measure(key, *value, quantity, range);
}

std::optional<std::vector<double>> TableReader::quantities(std::string_view key, std::size_t count,
                                                           const Quantity& quantity, Range range) {
    const Value* value = find(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    const ValueList* list = std::get_if<ValueList>(&value->content);
    if (list == nullptr || list->values.size() != count) {
        wrong(key, "is " + kind_of(*value), fmt::format("a list of {}, each {}", count, quantity.expected));
        return std::nullopt;
    }
    std::vector<double> result;
    for (const Value& element : list->values) {
        if (const std::optional<double> number = measure(key, element, quantity, range)) {
            result.push_back(*number);
        }
    }
    return result.size() == count ? std::optional(result) : std::nullopt;
}

std::optional<Double3> TableReader::point(std::string_view key, const Quantity& quantity, Range range) {
    const std::optional<std::vector<double>> xyz = quantities(key, 3, quantity, range);
    return xyz ? std::optional(Double3((*xyz)[0], (*xyz)[1], (*xyz)[2])) : std::nullopt;
}

std::optional<TableReader> TableReader::table(std::string_view key) {
    const Value* value = find(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!std::holds_alternative<ValueTable>(value->content)) {
        log_->add(value->place, fmt::format("{} is {}", key, kind_of(*value)), fmt::format("a table [{}]", key));
        return std::nullopt;
    }
    return TableReader(*value, fmt::format("[{}]", key), *log_);
}

std::vector<TableReader> TableReader::tables(std::string_view key) {
    std::vector<TableReader> result;
    const Value* value = find(key);
    if (value == nullptr) {
        return result;
    }
    const std::string expected = fmt::format("one table [[{}]] for each", key);
    const ValueList* list = std::get_if<ValueList>(&value->content);
    if (list == nullptr) {
        log_->add(value->place, fmt::format("{} is {}", key, kind_of(*value)), expected);
        return result;
    }
    for (const Value& element : list->values) {
        if (std::holds_alternative<ValueTable>(element.content)) {
            result.emplace_back(element, fmt::format("[[{}]]", key), *log_);
        } else {
            log_->add(element.place, fmt::format("{} holds {}", key, kind_of(element)), expected);
        }
    }
    return result;
}

void TableReader::report_unknown_keys() {
    for (const Entry& candidate : std::get<ValueTable>(value_->content).entries) {
        if (std::find(asked_.begin(), asked_.end(), candidate.key) == asked_.end()) {
            log_->add(candidate.place, fmt::format("unknown key \"{}\" in {}", shown(candidate.key), name_),
                      expected_names(candidate.key, asked_));
        }
    }
}

}  // namespace understudy
