// understudy meter SCENE [--json FILE], and understudy check SCENE.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/rehearsal.h"
#include "film/picture_file.h"
#include "report/json_file.h"
#include "report/report_text.h"

namespace understudy {

namespace {

int run_meter(const std::string& scene, const std::string& json) {
    if (!json.empty()) {
        if (const auto writable = check_writable(json); !writable) return complain(writable.problems());
    }
    auto rehearsal = open_rehearsal(scene);
    if (!rehearsal) return complain(rehearsal.problems());
    const auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return complain(metered.problems());
    fmt::print("{}", report_text(metered->report));
    if (!json.empty()) {
        if (const auto written = write_report_file(json, metered->report); !written)
            return complain(written.problems());
    }
    return kDone;
}

int run_check(const std::string& scene) {
    const auto rehearsal = open_rehearsal(scene, Growing::kNothing);
    if (!rehearsal) return complain(rehearsal.problems());
    const Setup& setup = rehearsal->studio.setup;
    fmt::print("{}: a scene in order, {} light{}, {} panel{}\n", scene, setup.lights.size(),
               setup.lights.size() == 1 ? "" : "s", setup.panels.size(), setup.panels.size() == 1 ? "" : "s");
    return kDone;
}

}  // namespace

void add_meter(CLI::App& program, int& status) {
    struct Wish {
        std::string scene;
        std::string json;
    };
    const auto wish = std::make_shared<Wish>();
    CLI::App* command = program.add_subcommand("meter", "Meter readings, ratio, eyes and catchlights of a scene");
    command->add_option("SCENE", wish->scene, "The scene file")->required();
    command->add_option("--json", wish->json, "Write the report to this file as well");
    command->callback([wish, &status] { status = run_meter(wish->scene, wish->json); });
}

void add_check(CLI::App& program, int& status) {
    const auto scene = std::make_shared<std::string>();
    CLI::App* command = program.add_subcommand("check", "Read a scene file and say what is wrong with it");
    command->add_option("SCENE", *scene, "The scene file")->required();
    command->callback([scene, &status] { status = run_check(*scene); });
}

}  // namespace understudy
