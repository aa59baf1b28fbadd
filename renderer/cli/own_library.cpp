#include "cli/own_library.h"

#include <fmt/format.h>

#include "sitter/kept.h"

namespace understudy {

Library own_library() {
    const std::filesystem::path assets = UNDERSTUDY_ASSETS_DIR;
    return {assets / "kit", assets / "heads", UNDERSTUDY_HEAD_DIR, UNDERSTUDY_CACHE_DIR};
}

void tell_if_sitters_are_not_kept() {
    const std::string trouble = trouble_keeping(own_library().kept());
    if (!trouble.empty()) fmt::print(stderr, "{}; hair and clothes have to be made again the next time\n", trouble);
}

Expected<Rehearsal> rehearse(const Setup& setup, Growing growing) {
    auto rehearsal = rehearse(setup, own_library(), growing);
    if (!rehearsal) return rehearsal;
    for (const BuiltModifier& modifier : rehearsal->studio.modifiers) {
        if (modifier.not_kept.empty()) continue;
        fmt::print(stderr, "{}; modifiers have to be traced again the next time\n", modifier.not_kept);
        break;
    }
    return rehearsal;
}

Expected<Rehearsal> open_rehearsal(const SceneWish& scene, Growing growing) {
    const auto setup = read_scene(scene);
    if (!setup) return setup.problems();
    if (std::holds_alternative<LibraryHead>(setup->sitter.head)) tell_if_sitters_are_not_kept();
    return rehearse(*setup, growing);
}

}  // namespace understudy
