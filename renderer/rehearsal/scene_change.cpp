#include "rehearsal/scene_change.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "setup/developed_keys.h"

namespace understudy {

namespace {

using Path = std::vector<std::string>;

bool same(const Value& a, const Value& b);

const Value* value_at(const ValueTable& table, const std::string& key) {
    const auto is_it = [&](const Entry& entry) { return entry.key == key; };
    const auto found = std::find_if(table.entries.begin(), table.entries.end(), is_it);
    return found == table.entries.end() ? nullptr : &found->value;
}

bool same(const ValueTable& a, const ValueTable& b) {
    if (a.entries.size() != b.entries.size()) return false;
    return std::all_of(a.entries.begin(), a.entries.end(), [&](const Entry& entry) {
        const Value* other = value_at(b, entry.key);
        return other != nullptr && same(entry.value, *other);
    });
}

bool same(const ValueList& a, const ValueList& b) {
    return std::equal(a.values.begin(), a.values.end(), b.values.begin(), b.values.end(),
                      [](const Value& one, const Value& other) { return same(one, other); });
}

bool same(const UnsuitedValue& /*a*/, const UnsuitedValue& /*b*/) { return false; }

template <class Plain>
bool same(const Plain& a, const Plain& b) {
    return a == b;
}

// Wherever they were said.
bool same(const Value& a, const Value& b) {
    if (a.content.index() != b.content.index()) return false;
    return std::visit(
        [&](const auto& content) { return same(content, std::get<std::decay_t<decltype(content)>>(b.content)); },
        a.content);
}

// The name of each light, or panel, in its order; none when it is no list of named tables.
std::optional<std::vector<std::string>> names_in(const Value& list) {
    const auto* things = std::get_if<ValueList>(&list.content);
    if (things == nullptr) return std::nullopt;
    std::vector<std::string> names;
    for (const Value& thing : things->values) {
        const auto* table = std::get_if<ValueTable>(&thing.content);
        const Value* name = table != nullptr ? value_at(*table, "name") : nullptr;
        const auto* text = name != nullptr ? std::get_if<std::string>(&name->content) : nullptr;
        if (text == nullptr) return std::nullopt;
        names.push_back(*text);
    }
    return names;
}

// The keys of one table that are not alike in both, each with what leads to it.
void collect(const ValueTable& before, const ValueTable& after, const Path& to_table, std::vector<Path>& changed) {
    const auto note = [&](const std::string& key) {
        Path path = to_table;
        path.push_back(key);
        changed.push_back(std::move(path));
    };
    for (const Entry& entry : before.entries) {
        const Value* now = value_at(after, entry.key);
        if (now == nullptr || !same(entry.value, *now)) note(entry.key);
    }
    for (const Entry& entry : after.entries) {
        if (value_at(before, entry.key) == nullptr) note(entry.key);
    }
}

// Of what stands under one key of the document in both.
void collect_within(const std::string& key, const Value& before, const Value& after, std::vector<Path>& changed) {
    const auto* table = std::get_if<ValueTable>(&before.content);
    const auto* now = std::get_if<ValueTable>(&after.content);
    const auto names = names_in(before);
    if (table != nullptr && now != nullptr) {
        collect(*table, *now, {key}, changed);
    } else if (names && names == names_in(after)) {
        const auto& things = std::get<ValueList>(before.content).values;
        const auto& things_now = std::get<ValueList>(after.content).values;
        for (std::size_t i = 0; i < things.size(); ++i) {
            collect(std::get<ValueTable>(things[i].content), std::get<ValueTable>(things_now[i].content),
                    {key, (*names)[i]}, changed);
        }
    } else {
        changed.push_back({key});
    }
}

std::vector<Path> changed_paths(const ValueTable& before, const ValueTable& after) {
    std::vector<Path> changed;
    for (const Entry& entry : before.entries) {
        const Value* now = value_at(after, entry.key);
        if (now == nullptr) {
            collect_within(entry.key, entry.value, Value{{}, ValueTable{}}, changed);
        } else if (!same(entry.value, *now)) {
            collect_within(entry.key, entry.value, *now, changed);
        }
    }
    for (const Entry& entry : after.entries) {
        if (value_at(before, entry.key) == nullptr) {
            collect_within(entry.key, Value{{}, ValueTable{}}, entry.value, changed);
        }
    }
    return changed;
}

// What grows on the sitter is as fine as the picture shows it.
constexpr std::array<std::string_view, 4> kOfPictureAndSitter{"width", "height", "skin", "strands"};
constexpr std::array<std::string_view, 2> kOfLens{"aperture", "focus"};

template <std::size_t kCount>
bool among(const std::array<std::string_view, kCount>& keys, const std::string& key) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

Reach reach_of(const Path& path) {
    if (comes_in_at_development(path)) return Reach::kDeveloping;
    const std::string& table = path.front();
    if (table == "light" && path.size() == 3) return Reach::kLights;
    if (table == "sitter") return Reach::kSitter;
    if (table == "camera") {
        return path.size() == 2 && among(kOfLens, path.back()) ? Reach::kStudio : Reach::kSitter;
    }
    if (table == "picture") {
        return path.size() == 2 && !among(kOfPictureAndSitter, path.back()) ? Reach::kStudio : Reach::kSitter;
    }
    return Reach::kStudio;
}

}  // namespace

SceneChange change_between(const Value& before, const Value& after) {
    SceneChange change;
    for (const Path& path : changed_paths(std::get<ValueTable>(before.content), std::get<ValueTable>(after.content))) {
        const Reach reach = reach_of(path);
        change.reach = std::max(change.reach, reach);
        const bool of_view = path.front() == "camera" || path.front() == "picture" || path.front() == "sitter";
        if (of_view && reach > Reach::kDeveloping) change.same_view = false;
        if (reach != Reach::kLights) continue;
        if (std::find(change.lights.begin(), change.lights.end(), path[1]) == change.lights.end()) {
            change.lights.push_back(path[1]);
        }
    }
    if (change.reach != Reach::kLights) change.lights.clear();
    return change;
}

}  // namespace understudy
