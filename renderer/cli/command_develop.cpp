// understudy develop FILM: other powers, colours, aperture or treatment, without tracing a ray.

#include <cmath>
#include <filesystem>

#include <fmt/format.h>

#include "cli/card_gels.h"
#include "cli/commands.h"
#include "cli/deliver.h"
#include "film/exposure.h"
#include "setup/f_number_marks.h"
#include "setup/read_picture.h"
#include "spectrum/illuminant.h"

namespace understudy {

namespace {

struct DevelopWish {
    std::string film;
    std::string picture;
    std::vector<std::string> power;     // key=+1
    std::vector<std::string> meter;     // key=5.6
    std::vector<std::string> colour;    // key=3200
    std::vector<std::string> spectrum;  // key=FL11
    std::vector<std::string> gel;       // rim=full-warm
    std::vector<std::string> off;       // key
    double aperture = 0.0;
    double iso = 0.0;
    double shutter = 0.0;
    std::string treatment;
    std::string white_balance;
    bool as_traced = false;
};

Problem wrong(const std::string& text) { return {Blame::kWrongInput, text}; }

std::string light_names(const FilmCard& card) {
    std::string names;
    for (const CardLight& light : card.lights) names += (names.empty() ? "" : ", ") + light.light;
    return names;
}

// Splits NAME=VALUE and finds the light, then hands both to change, which says what is wrong with the value or "".
template <class Change>
void change_lights(const std::vector<std::string>& wishes, const char* option, FilmCard& card, Problems& problems,
                   const Change& change) {
    for (const std::string& wish : wishes) {
        const auto equals = wish.rfind('=');
        if (equals == std::string::npos) {
            problems.push_back(wrong(fmt::format("{} {}: no \"=\"; expected LIGHT=VALUE", option, wish)));
            continue;
        }
        const std::string name = wish.substr(0, equals);
        bool found = false;
        for (CardLight& light : card.lights) {
            if (light.light != name) continue;
            found = true;
            const std::string complaint = change(light, wish.substr(equals + 1));
            if (!complaint.empty()) problems.push_back(wrong(fmt::format("{} {}: {}", option, wish, complaint)));
        }
        if (!found) {
            problems.push_back(wrong(fmt::format("{} {}: the film has no light \"{}\"; expected one of {}", option,
                                                 wish, name, light_names(card))));
        }
    }
}

std::optional<double> number_in(const std::string& text, double least, double most) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    if (text.empty() || *end != '\0' || !(value >= least && value <= most)) return std::nullopt;
    return value;
}

void change_powers(const DevelopWish& wish, FilmCard& card, Problems& problems) {
    change_lights(wish.power, "--power", card, problems, [](CardLight& light, const std::string& value) -> std::string {
        const auto stops = number_in(value, -20.0, 20.0);
        if (!stops) return "expected stops more or less, -20 to 20";
        light.exposure_power *= std::exp2(*stops);
        light.face_lxs *= std::exp2(*stops);
        return "";
    });
    change_lights(
        wish.meter, "--meter", card, problems, [&](CardLight& light, const std::string& value) -> std::string {
            const auto f_number = number_in(value, 0.5, 128.0);
            if (!f_number) return "expected an f-number, 0.5 to 128";
            if (!(light.own_reading_lxs > 0.0)) return "this light sends nothing to the face, so no reading can set it";
            const double factor = exposure_of_f_number(exact_f_number(*f_number), card.exposure.iso, kIncidentFlat) /
                                  light.own_reading_lxs;
            light.exposure_power *= factor;
            light.face_lxs *= factor;
            light.own_reading_lxs *= factor;
            return "";
        });
    for (const std::string& name : wish.off) {
        change_lights({name + "=off"}, "--off", card, problems,
                      [](CardLight& light, const std::string&) -> std::string {
                          light.exposure_power = 0.0;
                          light.face_lxs = 0.0;
                          return "";
                      });
    }
}

void change_colours(const DevelopWish& wish, FilmCard& card, Problems& problems) {
    change_lights(wish.colour, "--colour-temperature", card, problems,
                  [](CardLight& light, const std::string& value) -> std::string {
                      const auto kelvin = number_in(value, 1000.0, 25000.0);
                      if (!kelvin) return "expected kelvin, 1000 to 25000";
                      light.colour.kelvin = *kelvin;
                      light.colour.illuminant.clear();
                      return "";
                  });
    change_lights(wish.spectrum, "--spectrum", card, problems,
                  [](CardLight& light, const std::string& value) -> std::string {
                      if (!cie_illuminant(value)) {
                          return fmt::format("expected one of {}", fmt::join(cie_illuminant_names(), ", "));
                      }
                      light.colour.illuminant = value;
                      return "";
                  });
    change_lights(wish.gel, "--gel", card, problems, put_gels);
}

void change_camera(const DevelopWish& wish, FilmCard& card, Problems& problems) {
    if (wish.aperture > 0.0) card.exposure.aperture = exact_f_number(wish.aperture);
    if (wish.iso > 0.0) card.exposure.iso = wish.iso;
    if (wish.shutter > 0.0) {
        for (CardLight& light : card.lights) {
            if (light.flash) continue;  // a flash is over long before the shutter closes
            light.exposure_power *= wish.shutter / card.exposure.shutter_s;
            light.face_lxs *= wish.shutter / card.exposure.shutter_s;
        }
        card.exposure.shutter_s = wish.shutter;
    }
    if (!wish.treatment.empty()) {
        card.treatment = wish.treatment == "colour" ? Treatment::kColour : Treatment::kBlackAndWhite;
    }
    if (wish.white_balance.empty()) return;
    if (const auto named = white_balance_named(wish.white_balance)) {
        card.white_balance = *named;
    } else if (const auto kelvin = number_in(wish.white_balance, 1000.0, 25000.0)) {
        card.white_balance = {false, *kelvin, ""};
    } else {
        problems.push_back(
            wrong(fmt::format("--white-balance {}: expected flash, tungsten, as-lit, an illuminant such as FL11, or "
                              "kelvin, 1000 to 25000",
                              wish.white_balance)));
    }
}

int run_develop(const DevelopWish& wish) {
    const std::filesystem::path picture =
        wish.picture.empty() ? std::filesystem::path(wish.film).stem().string() + ".png" : wish.picture;
    if (const auto kind = picture_kind(picture); !kind) return complain(kind.problems());
    if (const auto writable = check_writable(picture); !writable) return complain(writable.problems());
    const auto saved = read_film(wish.film);
    if (!saved) return complain(saved.problems());
    auto card = read_card(saved->scene_text, wish.film);
    if (!card) return complain(card.problems());
    if (card->lights.size() != saved->film.layers.size()) {
        return complain(
            {wrong(fmt::format("{}: {} layers but {} lights on its card; expected a film saved with render "
                               "--film",
                               wish.film, saved->film.layers.size(), card->lights.size()))});
    }
    Problems problems;
    change_camera(wish, *card, problems);
    change_colours(wish, *card, problems);
    change_powers(wish, *card, problems);
    if (!problems.empty()) return complain(problems);
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return complain(finisher.problems());
    const auto done = deliver_picture(picture, saved->film, *card, *finisher);
    return done ? kDone : complain(done.problems());
}

}  // namespace

void add_develop(CLI::App& program, int& status) {
    const auto wish = std::make_shared<DevelopWish>();
    CLI::App* command = program.add_subcommand(
        "develop", "Mix a saved film anew: powers, colours, aperture, treatment; nothing is traced");
    command->add_option("FILM", wish->film, "A film kept by render --film")->required();
    command->add_option("-o,--output", wish->picture,
                        "The picture: .png, .jpg or .exr (default: the film's name .png)");
    command->add_option("--power", wish->power, "LIGHT=STOPS: more or less than it was, such as key=-1");
    command->add_option("--meter", wish->meter, "LIGHT=F-NUMBER: what it alone reads at the face, such as fill=2.8");
    command->add_option("--off", wish->off, "LIGHT: leave it out");
    command->add_option("--colour-temperature", wish->colour, "LIGHT=KELVIN");
    command->add_option("--spectrum", wish->spectrum, "LIGHT=NAME: a CIE illuminant, such as key=FL11");
    command->add_option("--gel", wish->gel,
                        "LIGHT=GELS: such as rim=full-warm,nd-0.3 or none; the head stays as it was set");
    command->add_option("--aperture", wish->aperture, "f-number")->check(CLI::Range(0.5, 128.0));
    command->add_option("--iso", wish->iso, "Sensitivity")->check(CLI::Range(1.0, 1e6));
    command->add_option("--shutter", wish->shutter, "Seconds; reaches continuous and room light only")
        ->check(CLI::Range(1e-5, 3600.0));
    command->add_option("--treatment", wish->treatment, "colour or black-and-white")
        ->check(CLI::IsMember({"colour", "black-and-white"}));
    command->add_option("--white-balance", wish->white_balance,
                        "flash, tungsten, as-lit, an illuminant such as FL11, or kelvin");
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_develop(*wish); });
}

}  // namespace understudy
