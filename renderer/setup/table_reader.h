// Reads one table of a scene file key by key, with types and ranges, and knows at the end which keys nobody asked for.
//
// A getter gives nothing when the key is missing or its value is wrong; the wrong value is then in the log, so the
// caller may go on with the default and every problem of the file is found in one go.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "setup/problem_log.h"
#include "setup/toml_tree.h"
#include "setup/units.h"

namespace understudy {

// Both ends belong to it; in SI, degrees, or the number itself. A NaN is in no range.
struct Range {
    double least = 0.0;
    double most = 0.0;
    bool contains(double value) const { return value >= least && value <= most; }
};

template <class T>
using Choices = std::initializer_list<std::pair<std::string_view, T>>;

class TableReader {
  public:
    // name: how messages call the table, "[picture]". Value and log have to outlive the reader.
    TableReader(const Value& table, std::string name, ProblemLog& log);

    const Value* find(std::string_view key);  // counts as asked for
    bool has(std::string_view key) const;
    SourcePlace place() const { return value_->place; }
    SourcePlace place_of(std::string_view key) const;  // of the key's value, else of the table
    SourcePlace key_place_of(std::string_view key) const;
    const std::string& name() const { return name_; }
    const Value& value() const { return *value_; }

    std::optional<std::string> text(std::string_view key);
    std::optional<bool> truth(std::string_view key);
    std::optional<long long> whole(std::string_view key, long long least, long long most);
    std::optional<double> quantity(std::string_view key, const Quantity& quantity, Range range);
    // A list of exactly so many.
    std::optional<std::vector<double>> quantities(std::string_view key, std::size_t count, const Quantity& quantity,
                                                  Range range);
    std::optional<Double3> point(std::string_view key, const Quantity& quantity, Range range);
    // A string that is one of some names.
    template <class T>
    std::optional<T> choice(std::string_view key, Choices<T> choices);

    bool is_text(std::string_view key) const;
    bool is_list(std::string_view key) const;

    // [name] and [[name]] below this one.
    std::optional<TableReader> table(std::string_view key);
    std::vector<TableReader> tables(std::string_view key);

    void wrong(std::string_view key, std::string_view what, std::string_view expected);
    void unknown_name(std::string_view key, std::string_view given, const std::vector<std::string>& valid);
    // Every key that no getter asked for.
    void report_unknown_keys();

    ProblemLog& log() { return *log_; }

  private:
    std::optional<double> measure(std::string_view key, const Value& value, const Quantity& quantity, Range range);
    const Entry* entry(std::string_view key) const;

    const Value* value_;
    std::string name_;
    ProblemLog* log_;
    std::vector<std::string> asked_;
};

template <class T>
std::optional<T> TableReader::choice(std::string_view key, Choices<T> choices) {
    const std::optional<std::string> given = text(key);
    if (!given) {
        return std::nullopt;
    }
    std::vector<std::string> valid;
    for (const auto& [name, value] : choices) {
        if (name == *given) {
            return value;
        }
        valid.emplace_back(name);
    }
    unknown_name(key, *given, valid);
    return std::nullopt;
}

}  // namespace understudy
