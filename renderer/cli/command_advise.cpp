// understudy advise SCENE
#include <fmt/format.h>

#include "advice/advise.h"
#include "cli/commands.h"
#include "cli/rehearsal.h"
#include "report/advice_text.h"
#include "setup/read_setup.h"

namespace understudy {

namespace {

int run_advise(const std::string& scene) {
    const auto setup = read_setup(scene, own_library());
    if (!setup) return complain(setup.problems());
    const auto advice = advise(*setup, own_library());
    if (!advice) return complain(advice.problems());
    fmt::print("{}", advice_text(*advice));
    return kDone;
}

}  // namespace

void add_advise(CLI::App& program, int& status) {
    const auto scene = std::make_shared<std::string>();
    CLI::App* command = program.add_subcommand(
        "advise", "The changes that would light both eyes, cheapest first, each with what else it does");
    command->add_option("SCENE", *scene, "The scene file")->required();
    command->callback([scene, &status] { status = run_advise(*scene); });
}

}  // namespace understudy
