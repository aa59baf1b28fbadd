#include "setup/read_gel.h"

#include <fmt/format.h>

#include "setup/nearest_name.h"
#include "spectrum/gel.h"

namespace understudy {
namespace {

constexpr std::size_t kMostGels = 8;  // more than any clip holds

std::string expected_gels(const std::string& given) {
    return fmt::format("{}; or {}", expected_names(given, gel_names()), kGelsByNumber);
}

// Several are told apart by their places, each with its own message.
void check_gel(TableReader& table, const std::string& name, const SourcePlace& place) {
    if (gel_transmission(name)) return;
    table.log().add(place, fmt::format("{} gel is the unknown name \"{}\"", table.name(), shown(name)),
                    expected_gels(name));
}

}  // namespace

std::vector<std::string> read_gels(TableReader& table) {
    const Value* value = table.find("gel");
    if (value == nullptr) return {};
    if (const auto* name = std::get_if<std::string>(&value->content)) {
        check_gel(table, *name, value->place);
        return {*name};
    }
    const auto* list = std::get_if<ValueList>(&value->content);
    if (list == nullptr) {
        table.wrong("gel", "is " + kind_of(*value), "a gel's name, or a list of them");
        return {};
    }
    if (list->values.size() > kMostGels) {
        table.wrong("gel", fmt::format("is a list of {}", list->values.size()), fmt::format("at most {}", kMostGels));
        return {};
    }
    std::vector<std::string> gels;
    for (const Value& item : list->values) {
        const auto* name = std::get_if<std::string>(&item.content);
        if (name == nullptr) {
            table.log().add(item.place, fmt::format("{} gel holds {}", table.name(), kind_of(item)), "gels' names");
            continue;
        }
        check_gel(table, *name, item.place);
        gels.push_back(*name);
    }
    return gels;
}

std::string gel_complaint(const std::string& name) {
    if (gel_transmission(name)) return "";
    return fmt::format("\"{}\" is no gel; expected {}", shown(name), expected_gels(name));
}

}  // namespace understudy
