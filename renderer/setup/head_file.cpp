#include "setup/head_file.h"

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/read_face.h"
#include "setup/read_hair.h"
#include "setup/read_iris.h"
#include "setup/sitter_settings.h"
#include "setup/table_reader.h"

namespace understudy {
namespace {

constexpr Range kShapeAmount{-2.0, 2.0};

// Their names are the head package's own; whoever has the package checks them.
ShapeAmounts read_shapes(TableReader table) {
    ShapeAmounts shapes;
    for (const Entry& entry : std::get<ValueTable>(table.value().content).entries) {
        const auto amount = table.quantity(entry.key, kPlainNumber, kShapeAmount);
        if (amount) shapes[entry.key] = *amount;
    }
    return shapes;
}

// A head has to say who it is; only a scene may leave that open.
void demand(TableReader& top, bool there, std::string_view key, std::string_view expected) {
    if (!there) top.log().add(top.place_of("face"), fmt::format("[face] has no {}", key), expected);
}

HeadFile read_tree(const Value& tree, ProblemLog& log) {
    TableReader top(tree, "the head's file", log);
    HeadFile head;
    head.sitter = top.text("sitter").value_or("");
    head.melanin = top.quantity("melanin", kPlainNumber, {0.0, 0.5}).value_or(head.melanin);
    head.blood = top.quantity("blood", kPlainNumber, {0.0, 0.2}).value_or(head.blood);
    head.lids = top.quantity("lids", kPlainNumber, {0.0, kWidestLids}).value_or(head.lids);
    head.iris = read_iris(top).value_or(head.iris);
    head.hair = read_hair(top);
    const auto face = top.table("face");
    if (face) head.face = read_face(*face);
    const auto has = [&](std::string_view key) { return face && face->has(key); };
    demand(top, has("age"), "age", "years from 16 to 90");
    demand(top, has("sex"), "sex", R"("woman", "man" or a number from 0 to 1)");
    demand(top, has("ancestry"), "ancestry", R"("african", "asian", "european" or a table of their shares)");
    const auto shapes = top.table("shape");
    if (shapes) head.shapes = read_shapes(*shapes);
    top.report_unknown_keys();
    return head;
}

}  // namespace

Expected<HeadFile> read_head_file(const std::filesystem::path& path) {
    const auto text = read_text_file(path, "a head's TOML file");
    if (!text) return text.problems();
    const auto tree = parse_toml(*text, path.string());
    if (!tree) return tree.problems();
    ProblemLog log;
    HeadFile head = read_tree(*tree, log);
    if (!log.empty()) return log.in_order();
    return head;
}

}  // namespace understudy
