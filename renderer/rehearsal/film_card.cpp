#include "rehearsal/film_card.h"

#include <algorithm>
#include <tuple>

#include <nlohmann/json.hpp>

#include <fmt/format.h>

#include "film/exposure.h"
#include "meter/light_colours.h"
#include "meter/meter_points.h"
#include "meter/ratio.h"
#include "meter/read_point.h"

namespace understudy {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kKind = "understudy film card 2";

Json json_of(const CardLight& light) {
    return {{"light", light.light},
            {"flash", light.flash},
            {"exposure_power", light.exposure_power},
            {"own_reading_lxs", light.own_reading_lxs},
            {"face_lxs", light.face_lxs},
            {"kelvin", light.colour.kelvin},
            {"illuminant", light.colour.illuminant},
            {"gels", light.colour.gels}};
}

CardLight light_of(const Json& json) {
    CardLight light;
    light.light = json.at("light");
    light.flash = json.at("flash");
    light.exposure_power = json.at("exposure_power");
    light.own_reading_lxs = json.at("own_reading_lxs");
    light.face_lxs = json.at("face_lxs");
    light.colour.kelvin = json.at("kelvin");
    light.colour.illuminant = json.at("illuminant");
    light.colour.gels = json.at("gels").get<std::vector<std::string>>();
    return light;
}

bool is_of_one_colour(const Setup& setup) {
    const auto key_of = [](const LightColour& colour) {
        return std::tie(colour.kelvin, colour.illuminant, colour.gels);
    };
    std::vector<LightColour> colours;
    for (const LightSettings& light : setup.lights) colours.push_back(light.colour);
    if (setup.room.ambient_lx > 0.0) colours.push_back({setup.room.ambient_kelvin, setup.room.ambient_illuminant, {}});
    return std::all_of(colours.begin(), colours.end(),
                       [&](const LightColour& colour) { return key_of(colour) == key_of(colours.front()); });
}

}  // namespace

FilmCard card_of(const Setup& setup, const LitStudio& lit, const MeterReport& report) {
    FilmCard card;
    card.title = setup.title;
    card.scene_text = setup.text;
    card.exposure = setup.camera.exposure;
    card.focal_length_m = setup.camera.focal_length_m;
    card.treatment = setup.picture.treatment;
    card.white_balance = setup.picture.white_balance;
    const Reading* face = find_reading(report.readings, "face", Receptor::kDome, Facing::kCamera);
    for (std::size_t i = 0; i < lit.layers.size(); ++i) {
        CardLight light;
        light.light = lit.layers[i].light;
        light.exposure_power = lit.layers[i].exposure_power;
        light.face_lxs = face->by_light[i].exposure_lxs;
        if (i < setup.lights.size()) {
            light.flash = setup.lights[i].source == SourceKind::kFlash;
            light.colour = setup.lights[i].colour;
            light.own_reading_lxs = exposure_of_f_number(lit.powers[i].f_number, card.exposure.iso, kIncidentFlat);
        } else {
            light.flash = false;
            light.colour.kelvin = setup.room.ambient_kelvin;
            light.colour.illuminant = setup.room.ambient_illuminant;
            light.own_reading_lxs = light.exposure_power;
        }
        card.lights.push_back(light);
    }
    return card;
}

FilmCard quick_card(const Rehearsal& rehearsal, const LitStudio& lit) {
    const Studio& studio = rehearsal.studio;
    // Where all light is of one colour, so is white, whatever each brings.
    const double known = is_of_one_colour(studio.setup) ? 0.1 : 0.005;
    MeterReport report;
    for (const MeterPoint& point : meter_points(studio)) {
        if (point.name != "face") continue;
        report.readings.push_back(
            read_point(point, *rehearsal.nobody, lit.layers, studio.setup.camera.exposure, known));
    }
    return card_of(studio.setup, lit, report);
}

std::string card_text(const FilmCard& card) {
    Json lights = Json::array();
    for (const CardLight& light : card.lights) lights.push_back(json_of(light));
    const Json json{{"kind", kKind},
                    {"title", card.title},
                    {"aperture", card.exposure.aperture},
                    {"shutter_s", card.exposure.shutter_s},
                    {"iso", card.exposure.iso},
                    {"focal_length_m", card.focal_length_m},
                    {"black_and_white", card.treatment == Treatment::kBlackAndWhite},
                    {"white_as_lit", card.white_balance.as_lit},
                    {"white_kelvin", card.white_balance.kelvin},
                    {"white_illuminant", card.white_balance.illuminant},
                    {"lights", lights},
                    {"scene", card.scene_text}};
    return json.dump();
}

Expected<FilmCard> read_card(const std::string& text, const std::filesystem::path& film) {
    try {
        const Json json = Json::parse(text);
        if (json.at("kind") != kKind) throw std::invalid_argument("another kind of card");
        FilmCard card;
        card.title = json.at("title");
        card.exposure = {json.at("aperture"), json.at("shutter_s"), json.at("iso")};
        card.focal_length_m = json.at("focal_length_m");
        card.treatment = json.at("black_and_white") ? Treatment::kBlackAndWhite : Treatment::kColour;
        card.white_balance = {json.at("white_as_lit"), json.at("white_kelvin"), json.at("white_illuminant")};
        for (const Json& light : json.at("lights")) card.lights.push_back(light_of(light));
        card.scene_text = json.at("scene");
        return card;
    } catch (const std::exception& error) {
        return Problem{Blame::kWrongInput,
                       fmt::format("{}: carries no card of its lights ({}); expected a film saved with render --film",
                                   film.string(), error.what())};
    }
}

Developing developing_of(const FilmCard& card) {
    Developing developing;
    developing.aperture = card.exposure.aperture;
    developing.iso = card.exposure.iso;
    developing.treatment = card.treatment;
    Spectrum lit(0.0F);
    for (const CardLight& light : card.lights) {
        const Spectrum spectrum = light_spectrum(light.colour);
        developing.lights.push_back({light.light, light.exposure_power, spectrum});
        lit += spectrum * static_cast<float>(light.face_lxs);
    }
    developing.white =
        card.white_balance.as_lit ? lit : white_spectrum(card.white_balance.kelvin, card.white_balance.illuminant);
    return developing;
}

PictureTags tags_of(const FilmCard& card) {
    return {card.title, card.exposure.aperture, card.exposure.shutter_s, card.exposure.iso, card.focal_length_m};
}

}  // namespace understudy
