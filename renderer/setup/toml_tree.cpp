#include "setup/toml_tree.h"

#include <algorithm>
#include <exception>
#include <optional>
#include <string_view>

// Version 3.3 asserts in parse_key() that a key begins with a key's character and refuses the file in the next lines if
// not. Wrong input is no programmer's error, so that refusal has to be reached in debug builds too.
#define TOML_ASSERT(expr) static_assert(true)
#define TOML_HEADER_ONLY 1
#define TOML_EXCEPTIONS 0
#include <toml++/toml.h>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

// A scene nests three levels; the parser's and this file's recursion are kept far from the end of the stack.
constexpr int kDeepest = 8;
constexpr std::size_t kLongestText = 256UL * 1024;
constexpr std::size_t kLongestLine = 4096;

SourcePlace place_of(const toml::source_region& region, const SourcePlace& otherwise) {
    if (region.begin.line == 0) {  // a table that only a dotted key implies
        return otherwise;
    }
    return {otherwise.file, static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

Value value_of(const toml::node& node, const SourcePlace& parent, int depth);

ValueTable table_of(const toml::table& table, const SourcePlace& place, int depth) {
    ValueTable result;
    for (const auto& [key, node] : table) {
        const SourcePlace key_place = place_of(key.source(), place);
        result.entries.push_back({std::string(key.str()), key_place, value_of(node, key_place, depth + 1)});
    }
    return result;
}

ValueList list_of(const toml::array& list, const SourcePlace& place, int depth) {
    ValueList result;
    for (const toml::node& node : list) {
        result.values.push_back(value_of(node, place, depth + 1));
    }
    return result;
}

Value value_of(const toml::node& node, const SourcePlace& parent, int depth) {
    Value result{place_of(node.source(), parent), UnsuitedValue{}};
    if (depth > kDeepest) {
        return result;
    }
    if (const toml::table* table = node.as_table()) {
        result.content = table_of(*table, result.place, depth);
    } else if (const toml::array* list = node.as_array()) {
        result.content = list_of(*list, result.place, depth);
    } else if (const auto* text = node.as_string()) {
        result.content = text->get();
    } else if (const auto* whole = node.as_integer()) {
        result.content = whole->get();
    } else if (const auto* number = node.as_floating_point()) {
        result.content = number->get();
    } else if (const auto* truth = node.as_boolean()) {
        result.content = truth->get();
    }
    return result;
}

std::optional<Problem> too_long(const std::string& text, const std::string& file) {
    if (text.size() > kLongestText) {
        return problem_at({file, 1, 1},
                          fmt::format("the file has {} bytes; expected at most {}", text.size(), kLongestText));
    }
    int line = 1;
    for (std::size_t start = 0; start < text.size(); ++line) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        if (end - start > kLongestLine) {
            return problem_at({file, line, 1},
                              fmt::format("the line has {} bytes; expected at most {}", end - start, kLongestLine));
        }
        start = end + 1;
    }
    return std::nullopt;
}

}  // namespace

Expected<Value> parse_toml(const std::string& text, const std::string& file) {
    if (const std::optional<Problem> problem = too_long(text, file)) {
        return *problem;
    }
    try {
        const toml::parse_result parsed = toml::parse(std::string_view(text), std::string_view(file));
        const SourcePlace top{file, 1, 1};
        if (!parsed) {
            return problem_at(
                place_of(parsed.error().source(), top),
                fmt::format("not valid TOML: {}; expected a TOML 1.0 file", parsed.error().description()));
        }
        Value result = value_of(parsed.table(), top, 0);
        result.place = top;
        return result;
    } catch (const std::exception& error) {
        return problem_at({file, 1, 1},
                          fmt::format("the file cannot be parsed ({}); expected a TOML 1.0 file", error.what()));
    }
}

std::string kind_of(const Value& value) {
    struct Namer {
        std::string operator()(bool truth) const { return truth ? "true" : "false"; }
        std::string operator()(std::int64_t number) const { return fmt::format("the whole number {}", number); }
        std::string operator()(double number) const { return fmt::format("the number {}", number); }
        std::string operator()(const std::string& text) const { return fmt::format("the string \"{}\"", shown(text)); }
        std::string operator()(const ValueTable&) const { return "a table"; }
        std::string operator()(const ValueList& list) const { return fmt::format("a list of {}", list.values.size()); }
        std::string operator()(const UnsuitedValue&) const { return "a date, a time or something nested too deep"; }
    };
    return std::visit(Namer{}, value.content);
}

}  // namespace understudy
