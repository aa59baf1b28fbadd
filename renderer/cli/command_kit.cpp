// understudy kit: what the light kit holds.

#include <fmt/format.h>

#include "cli/commands.h"
#include "report/photometric_text.h"
#include "setup/photometric_file.h"

namespace understudy {

namespace {

struct KitWish {
    std::string photometric;
};

int run_kit(const KitWish& wish) {
    const auto file = read_photometric_file(wish.photometric);
    if (!file) return complain(file.problems());
    fmt::print("{}", photometric_text(*file));
    return kDone;
}

}  // namespace

void add_kit(CLI::App& program, int& status) {
    const auto wish = std::make_shared<KitWish>();
    CLI::App* command = program.add_subcommand("kit", "Tell what a photometric file (IES LM-63) holds");
    command->add_option("--photometric", wish->photometric, "The photometric file")->type_name("FILE")->required();
    command->callback([wish, &status] { status = run_kit(*wish); });
}

}  // namespace understudy
