// understudy meter SCENE [--json FILE] [--envelope], and understudy check SCENE.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/own_library.h"
#include "film/picture_file.h"
#include "report/envelope_text.h"
#include "report/json_file.h"
#include "report/report_json.h"
#include "report/report_text.h"

namespace understudy {

namespace {

struct MeterWish {
    SceneWish scene;
    std::string json;
    bool envelope = false;
};

// The report's JSON, and how far the sitter may move as one more part of it.
std::string json_with(const MeterReport& report, const Envelope& envelope) {
    Json json = Json::parse(report_json(report));
    json["envelope"] = envelope_json(envelope);
    return json.dump(2) + "\n";
}

int run_meter(const MeterWish& wish) {
    const std::string& json = wish.json;
    if (!json.empty()) {
        if (const auto writable = check_writable(json); !writable) return complain(writable.problems());
    }
    auto rehearsal = open_rehearsal(wish.scene);
    if (!rehearsal) return complain(rehearsal.problems());
    const auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return complain(metered.problems());
    fmt::print("{}", report_text(metered->report));
    if (wish.envelope) {
        const auto envelope = find_envelope(rehearsal->studio.setup, own_library());
        if (!envelope) return complain(envelope.problems());
        fmt::print("{}", envelope_text(*envelope));
        if (json.empty()) return kDone;
        const auto written = write_whole_file(json, json_with(metered->report, *envelope));
        return written ? kDone : complain(written.problems());
    }
    if (!json.empty()) {
        if (const auto written = write_report_file(json, metered->report); !written)
            return complain(written.problems());
    }
    return kDone;
}

int run_check(const SceneWish& scene) {
    const auto rehearsal = open_rehearsal(scene, Growing::kNothing);
    if (!rehearsal) return complain(rehearsal.problems());
    const Setup& setup = rehearsal->studio.setup;
    fmt::print("{}: a scene in order, {} light{}, {} panel{}\n", scene.file, setup.lights.size(),
               setup.lights.size() == 1 ? "" : "s", setup.panels.size(), setup.panels.size() == 1 ? "" : "s");
    return kDone;
}

}  // namespace

void add_meter(CLI::App& program, int& status) {
    const auto wish = std::make_shared<MeterWish>();
    CLI::App* command = program.add_subcommand("meter", "Meter readings, ratio, eyes and catchlights of a scene");
    take_scene(*command, wish->scene);
    command->add_option("--json", wish->json, "Write the report to this file as well");
    command->add_flag("--envelope", wish->envelope,
                      "Say as well how far the sitter may move while pattern, eyes and exposure hold");
    command->callback([wish, &status] { status = run_meter(*wish); });
}

void add_check(CLI::App& program, int& status) {
    const auto scene = std::make_shared<SceneWish>();
    CLI::App* command = program.add_subcommand("check", "Read a scene file and say what is wrong with it");
    take_scene(*command, *scene);
    command->callback([scene, &status] { status = run_check(*scene); });
}

}  // namespace understudy
