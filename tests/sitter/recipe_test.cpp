#include "sitter/head_recipe.h"

#include <unistd.h>
#include <fstream>

#include "sitter/head_for_test.h"

namespace understudy {
namespace {

std::string first_problem(const std::string& text) {
    const auto path = std::filesystem::temp_directory_path() / ("recipe_test_" + std::to_string(getpid()) + ".toml");
    std::ofstream(path) << text;
    SitterSettings settings;
    settings.head = LibraryHead{"test", path};
    const auto head = load_head(settings, test_library());
    std::filesystem::remove(path);
    return head ? "" : head.problems().front().text;
}

TEST(Recipe, UnknownShapeOffersTheNearest) {
    const auto text = first_problem("[shape]\n\"nose/nose-hump-morehumb\" = 0.5\n");
    EXPECT_NE(text.find("\"nose/nose-hump-morehump\""), std::string::npos) << text;
}

TEST(Recipe, UnknownKeyAndWrongValuesSayWhere) {
    EXPECT_NE(first_problem("melamin = 0.1\n").find(":1:"), std::string::npos);
    EXPECT_NE(first_problem("blood = 0.02\nmelanin = 0.9\n").find(":2:"), std::string::npos);
    EXPECT_NE(first_problem("melanin = \"much\"\n").find("melanin"), std::string::npos);
    EXPECT_NE(first_problem("[shape]\n\"nose/nose-hump-morehump\" = 9\n").find(":2:"), std::string::npos);
    EXPECT_NE(first_problem("melanin = \n").find(":1:"), std::string::npos);
}

}  // namespace
}  // namespace understudy
