// understudy advise SCENE
#include <fmt/format.h>

#include "advice/advise.h"
#include "cli/commands.h"
#include "cli/own_library.h"
#include "film/picture_file.h"
#include "report/advice_json.h"
#include "report/advice_text.h"
#include "report/json_file.h"

namespace understudy {

namespace {

int run_advise(const SceneWish& scene, const std::string& json) {
    if (!json.empty()) {
        if (const auto writable = check_writable(json); !writable) return complain(writable.problems());
    }
    const auto setup = read_scene(scene);
    if (!setup) return complain(setup.problems());
    const auto advice = advise(*setup, own_library());
    if (!advice) return complain(advice.problems());
    fmt::print("{}", advice_text(*advice));
    if (json.empty()) return kDone;
    const auto written = write_whole_file(json, advice_json(*advice).dump(2) + "\n");
    return written ? kDone : complain(written.problems());
}

}  // namespace

void add_advise(CLI::App& program, int& status) {
    struct Wish {
        SceneWish scene;
        std::string json;
    };
    const auto wish = std::make_shared<Wish>();
    CLI::App* command = program.add_subcommand(
        "advise", "The changes that would light both eyes, cheapest first, each with what else it does");
    take_scene(*command, wish->scene);
    command->add_option("--json", wish->json, "Write the advice to this file as well");
    command->callback([wish, &status] { status = run_advise(wish->scene, wish->json); });
}

}  // namespace understudy
