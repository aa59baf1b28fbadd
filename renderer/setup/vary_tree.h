// A value put into a parsed document in another's place.
#pragma once

#include <string>
#include <vector>

#include "setup/toml_tree.h"

namespace understudy {

// As a scene file would hold it: a number, true or false, a list or a table where the text is one in TOML, and
// otherwise the text itself, in quotes or bare. where: what messages call it. A list or table with a mistake in it is a
// problem.
Expected<Value> read_value(const std::string& text, const std::string& where);

// Sets the value at the path. light and panel are followed by a name, which has to exist, as has a flash head; tables
// that are not there are made, so that the scene file's reader says whether there may be such. Other ways to say the
// same thing are taken out: a position stands in place of angle, height and distance, one kind of power in place of
// another. The problem says what about the path is wrong, and what was expected; where: what it calls the path.
Expected<Value> with_value(Value tree, const std::vector<std::string>& path, const Value& value,
                           const std::string& where);

}  // namespace understudy
