// understudy settle CLAIM [-o FILE] [--json FILE], and understudy settle --list: a disputed claim put to the test.

#include <memory>

#include <fmt/format.h>

#include "claims/claim_text.h"
#include "cli/commands.h"
#include "cli/finish.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/progress_line.h"
#include "cli/settle_sheet.h"
#include "cli/sheet_output.h"
#include "report/json_file.h"
#include "setup/nearest_name.h"
#include "setup/vary_scene.h"

namespace understudy {

namespace {

struct SettleWish {
    std::string claim;
    bool list = false;
    std::string sheet;
    std::string json;
    int samples = 0;
    bool as_traced = false;
};

// As short as it can be written from where the command is run.
std::filesystem::path scenes_folder() {
    const std::filesystem::path scenes = UNDERSTUDY_CLAIM_SCENES_DIR;
    std::error_code error;
    const std::filesystem::path near = std::filesystem::proximate(scenes, error);
    return error || *near.begin() == ".." ? scenes : near;
}

Problem no_such(const std::string& name) {
    std::vector<std::string> names;
    for (const Claim& claim : all_claims()) names.push_back(claim.name);
    return {Blame::kWrongInput,
            fmt::format("there is no claim \"{}\"; expected {}", name, expected_names(name, names))};
}

Problems problems_with_outputs(const SettleWish& wish) {
    Problems problems = problems_with_sheet(wish.sheet, wish.json);
    if (wish.sheet.empty() && wish.samples > 0) {
        problems.push_back({Blame::kWrongInput, "--samples without a picture; expected -o FILE with it"});
    }
    return problems;
}

Expected<std::vector<ClaimReading>> read_cases(const Claim& claim, const std::filesystem::path& scenes,
                                               ProgressLine& line) {
    std::vector<ClaimReading> readings;
    for (const ClaimCase& one : claim.cases) {
        if (interruption()) break;
        line.say(fmt::format("metering {} of {}", readings.size() + 1, claim.cases.size()));
        const auto setup = changed_scene(scenes / (one.scene + ".toml"), one.changes, own_library());
        if (!setup) return setup.problems();
        auto reading = read_case(*setup, own_library(), claim.asked);
        if (!reading) return reading.problems();
        readings.push_back(std::move(*reading));
    }
    return readings;
}

int settle(const SettleWish& wish, const Claim& claim) {
    const std::filesystem::path scenes = scenes_folder();
    std::vector<ClaimReading> readings;
    std::vector<CellPictures> pictures;
    {
        ProgressLine line;
        auto read = read_cases(claim, scenes, line);
        if (!read) return complain(read.problems());
        if (interruption()) return say_interrupted();
        readings = std::move(*read);
        if (!wish.sheet.empty()) {
            auto traced = trace_pictures(
                comparison_of(claim, readings),
                {wish.samples, [&](double share) { line.show(share); }, &interruption(), wish.as_traced});
            if (!traced) return complain(traced.problems());
            if (!*traced || interruption()) return say_interrupted();
            pictures = std::move(**traced);
        }
    }
    fmt::print("{}", claim_text(claim, readings, scenes));
    if (!wish.sheet.empty()) {
        const auto written = write_sheet(wish.sheet, sheet_of(claim, readings, pictures), claim.name);
        if (!written) return complain(written.problems());
        fmt::print("\n{}\n", *written);
    }
    if (!wish.json.empty()) {
        const auto done = write_whole_file(wish.json, claim_json(claim, readings, scenes));
        if (!done) return complain(done.problems());
    }
    return kDone;
}

int run_settle(const SettleWish& wish) {
    if (wish.list != wish.claim.empty()) {
        return complain({{Blame::kWrongInput, "settle: expected the name of a claim, or --list for all of them"}});
    }
    if (wish.list) {
        if (!wish.sheet.empty() || !wish.json.empty() || wish.samples > 0) {
            return complain({{Blame::kWrongInput, "settle --list: expected no other option"}});
        }
        fmt::print("{}", claim_list_text());
        return kDone;
    }
    const Claim* claim = find_claim(wish.claim);
    if (claim == nullptr) return complain({no_such(wish.claim)});
    if (const Problems problems = problems_with_outputs(wish); !problems.empty()) return complain(problems);
    return settle(wish, *claim);
}

}  // namespace

void add_settle(CLI::App& program, int& status) {
    const auto wish = std::make_shared<SettleWish>();
    CLI::App* command = program.add_subcommand(
        "settle", "A disputed claim of the trade put to the test: what holds here, with numbers, and when it does not");
    command->add_option("CLAIM", wish->claim, "The claim's name (see --list)");
    command->add_flag("--list", wish->list, "List the claims, each with its opposite");
    command->add_option("-o,--output", wish->sheet,
                        "Trace the cases as well and write them side by side: .png or .jpg (takes minutes)");
    command->add_option("--json", wish->json, "Write the numbers and the outcome to this file as well");
    command->add_option("--samples", wish->samples, "With -o: camera paths a pixel, in place of the scene's own")
        ->check(CLI::Range(1, 65536));
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_settle(*wish); });
}

}  // namespace understudy
