// The card that goes with a saved film: what its light was, so that it can be developed differently without the scene.
#pragma once

#include <string>
#include <vector>

#include "base/expected.h"
#include "film/develop.h"
#include "film/picture_file.h"
#include "rehearsal/rehearsal.h"
#include "setup/setup.h"

namespace understudy {

struct CardLight {
    std::string light;
    bool flash = true;             // else it shines all through the exposure
    double exposure_power = 0.0;   // lm·s; the ambient's lx·s
    double own_reading_lxs = 0.0;  // its own reading at the face, as its power was set by
    double face_lxs = 0.0;         // at the face, dome toward the camera: its part of the light there
    LightColour colour;
};

struct FilmCard {
    std::string title;
    std::string scene_text;
    ExposureSettings exposure;
    double focal_length_m = 0.085;
    Treatment treatment = Treatment::kColour;
    WhiteBalance white_balance;
    std::vector<CardLight> lights;  // in the order of the film's layers
};

FilmCard card_of(const Setup& setup, const LitStudio& lit, const MeterReport& report);
// Without the whole report: the one reading that it needs is taken, well enough for a white that is "as lit".
FilmCard quick_card(const Rehearsal& rehearsal, const LitStudio& lit);

std::string card_text(const FilmCard& card);
// A text that is no card is a problem that names the film.
Expected<FilmCard> read_card(const std::string& text, const std::filesystem::path& film);

// What to develop with as the card stands.
Developing developing_of(const FilmCard& card);
PictureTags tags_of(const FilmCard& card);

}  // namespace understudy
