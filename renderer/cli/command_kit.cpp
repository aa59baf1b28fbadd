// understudy kit [NAME], and understudy kit --photometric FILE: what the light kit holds.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/kit_list.h"
#include "report/photometric_text.h"
#include "setup/photometric_file.h"

namespace understudy {

namespace {

struct KitWish {
    std::string name;
    std::string photometric;
};

int describe_photometric(const std::string& path) {
    const auto file = read_photometric_file(path);
    if (!file) return complain(file.problems());
    fmt::print("{}", photometric_text(*file));
    return kDone;
}

int run_kit(const KitWish& wish) {
    if (!wish.photometric.empty()) return describe_photometric(wish.photometric);
    return wish.name.empty() ? list_kit() : describe_modifier(wish.name);
}

}  // namespace

void add_kit(CLI::App& program, int& status) {
    const auto wish = std::make_shared<KitWish>();
    CLI::App* command = program.add_subcommand(
        "kit", "List the light kit's modifiers, describe one, or tell what a photometric file (IES LM-63) holds");
    CLI::Option* name = command->add_option("NAME", wish->name, "The modifier to describe");
    command->add_option("--photometric", wish->photometric, "The photometric file")->type_name("FILE")->excludes(name);
    command->callback([wish, &status] { status = run_kit(*wish); });
}

}  // namespace understudy
