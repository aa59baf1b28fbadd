#include "setup/vary_tree.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/nearest_name.h"
#include "setup/problem_log.h"
#include "setup/usual_names.h"

namespace understudy {
namespace {

Problem wrong(const std::string& where, std::string_view what, std::string_view expected) {
    return problem_at({where, 0, 0}, fmt::format("{}; expected {}", what, expected));
}

Entry* entry_of(Value& table, const std::string& key) {
    for (Entry& entry : std::get<ValueTable>(table.content).entries) {
        if (entry.key == key) return &entry;
    }
    return nullptr;
}

// The value and all that is in it were said on the command line.
void say_at(Value& value, const SourcePlace& place) {
    value.place = place;
    if (auto* table = std::get_if<ValueTable>(&value.content)) {
        for (Entry& entry : table->entries) {
            entry.place = place;
            say_at(entry.value, place);
        }
    }
    if (auto* list = std::get_if<ValueList>(&value.content)) {
        for (Value& element : list->values) say_at(element, place);
    }
}

std::string name_of(Value& thing, const std::string& kind, int number) {
    const Entry* name = entry_of(thing, "name");
    if (name != nullptr) {
        const std::string* text = std::get_if<std::string>(&name->value.content);
        return text == nullptr ? "" : *text;
    }
    return kind == "light" ? usual_light_name(number) : usual_panel_name(number);
}

// Of the [[light]]s or [[panel]]s, the one of that name.
Expected<Value*> named_in(ValueList& list, const std::string& kind, const std::string& name, const std::string& where) {
    std::vector<std::string> names;
    for (Value& thing : list.values) {
        if (!std::holds_alternative<ValueTable>(thing.content)) continue;
        names.push_back(name_of(thing, kind, static_cast<int>(names.size()) + 1));
        if (names.back() == name) return &thing;
    }
    if (names.empty()) return wrong(where, fmt::format("the scene has no {}", kind), "a key that it has");
    return wrong(where, fmt::format("there is no {} \"{}\"", kind, shown(name)), expected_names(name, names));
}

Expected<Value*> flash_named(Value& tree, const std::string& name, const std::string& where) {
    std::vector<std::string> names;
    Entry* flashes = entry_of(tree, "flash");
    if (flashes != nullptr && std::holds_alternative<ValueTable>(flashes->value.content)) {
        for (Entry& head : std::get<ValueTable>(flashes->value.content).entries) {
            if (head.key == name && std::holds_alternative<ValueTable>(head.value.content)) return &head.value;
            names.push_back(head.key);
        }
    }
    if (names.empty()) return wrong(where, "the scene file itself has no [flash.NAME]", "a key that it has");
    return wrong(where, fmt::format("there is no flash head \"{}\"", shown(name)), expected_names(name, names));
}

// The table that the path's later keys are in, and how many of its parts have been used up.
struct Beginning {
    Value* table = nullptr;
    std::size_t used = 0;
};

Expected<Beginning> beginning_of(Value& tree, const std::vector<std::string>& path, const std::string& where) {
    const std::string& kind = path.front();
    Entry* entry = entry_of(tree, kind);
    auto* list = entry == nullptr ? nullptr : std::get_if<ValueList>(&entry->value.content);
    const bool has_names = kind == "light" || kind == "panel" || kind == "flash";
    if (!has_names) return Beginning{&tree, 0};
    if (path.size() < 3) {
        return wrong(where, path.size() == 1 ? "names no key" : fmt::format("names a {} and no key of it", kind),
                     fmt::format("{}.NAME.KEY", kind));
    }
    if (kind == "flash") {
        const auto head = flash_named(tree, path[1], where);
        if (!head) return head.problems();
        return Beginning{*head, 2};
    }
    ValueList none;
    const auto thing = named_in(list == nullptr ? none : *list, kind, path[1], where);
    if (!thing) return thing.problems();
    return Beginning{*thing, 2};
}

// Keys that say the same thing in different ways: whoever sets one takes it in place of the others.
const std::vector<std::vector<std::vector<std::string_view>>>& in_place_of_each_other() {
    static const std::vector<std::vector<std::vector<std::string_view>>> kWays{
        {{"position"}, {"angle", "height", "elevation", "distance"}},
        {{"height"}, {"elevation"}},
        {{"meter"}, {"energy"}, {"lumens"}, {"lux"}, {"dial"}, {"from_key"}}};
    return kWays;
}

// The keys that `key` stands in place of.
std::vector<std::string_view> replaced_by(std::string_view key) {
    std::vector<std::string_view> replaced;
    for (const auto& ways : in_place_of_each_other()) {
        const auto holds = [&](const std::vector<std::string_view>& way) {
            return std::find(way.begin(), way.end(), key) != way.end();
        };
        if (std::none_of(ways.begin(), ways.end(), holds)) continue;
        for (const auto& way : ways) {
            if (!holds(way)) replaced.insert(replaced.end(), way.begin(), way.end());
        }
    }
    return replaced;
}

// Of a light, a panel or the camera: a picture's height has nothing to do with an elevation.
bool is_placed(const std::vector<std::string>& path) {
    return path.size() == 3 ? path.front() == "light" || path.front() == "panel"
                            : path.size() == 2 && path.front() == "camera";
}

void take_out(Value& table, const std::vector<std::string_view>& keys) {
    auto& entries = std::get<ValueTable>(table.content).entries;
    std::erase_if(entries,
                  [&](const Entry& entry) { return std::find(keys.begin(), keys.end(), entry.key) != keys.end(); });
}

}  // namespace

Expected<Value> read_value(const std::string& text, const std::string& where) {
    Value plain{{where, 0, 0}, text};
    const std::string_view openers = "\"'[{";
    const bool enclosed = openers.find(text.front()) != std::string_view::npos;
    if (!enclosed && text.find('#') != std::string::npos) return plain;  // not a comment
    const auto parsed = parse_toml("value = " + text, where);
    if (!parsed) {
        if (!enclosed) return plain;
        return wrong(where, fmt::format("\"{}\" is not a value", shown(text)),
                     "a string in quotes, a list such as [0, 1.2, 2] or a table such as { smile = 0.5 }, as in TOML");
    }
    Value value = std::get<ValueTable>(parsed->content).entries.front().value;
    if (!enclosed && std::holds_alternative<UnsuitedValue>(value.content)) return plain;
    say_at(value, plain.place);
    return value;
}

Expected<Value> with_value(Value tree, const std::vector<std::string>& path, const Value& value,
                           const std::string& where) {
    const auto beginning = beginning_of(tree, path, where);
    if (!beginning) return beginning.problems();
    Value* table = beginning->table;
    for (std::size_t i = beginning->used; i + 1 < path.size(); ++i) {
        Entry* next = entry_of(*table, path[i]);
        if (next == nullptr) {
            auto& entries = std::get<ValueTable>(table->content).entries;
            entries.push_back({path[i], value.place, {table->place, ValueTable{}}});
            next = &entries.back();
        }
        if (!std::holds_alternative<ValueTable>(next->value.content)) {
            return wrong(where, fmt::format("{} is {}", path[i], kind_of(next->value)),
                         fmt::format("a table that holds {}, or another key", path[i + 1]));
        }
        table = &next->value;
    }
    if (is_placed(path)) take_out(*table, replaced_by(path.back()));
    if (Entry* last = entry_of(*table, path.back()); last != nullptr) {
        last->value = value;
    } else {
        std::get<ValueTable>(table->content).entries.push_back({path.back(), value.place, value});
    }
    return tree;
}

}  // namespace understudy
