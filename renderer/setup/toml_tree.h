// A TOML document as plain data with places: the only file pair that knows the parser.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "base/expected.h"
#include "setup/setup.h"

namespace understudy {

struct Value;
struct Entry;

struct ValueTable {
    std::vector<Entry> entries;
};
struct ValueList {
    std::vector<Value> values;
};
struct UnsuitedValue {};  // a date, a time, or something nested deeper than any scene

struct Value {
    SourcePlace place;
    std::variant<bool, std::int64_t, double, std::string, ValueTable, ValueList, UnsuitedValue> content;
};

struct Entry {
    std::string key;
    SourcePlace place;  // of the key
    Value value;
};

// The document's top table. A problem is the parser's own message with its place.
Expected<Value> parse_toml(const std::string& text, const std::string& file);

// "a string", "a list": what a value is, for messages.
std::string kind_of(const Value& value);

}  // namespace understudy
