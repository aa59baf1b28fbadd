// Pictures to measure others by: long renders, made once and kept beside the bench, and what lies between two pictures.
#pragma once

#include "bench.h"
#include "film/develop.h"
#include "rehearsal/film_card.h"
#include "transport/film.h"

namespace understudy {

// seed: another than 1, which the references have.
Film traced(const Rehearsal& rehearsal, int samples, unsigned seed = 0);

// As the scene's exposure and white want it. Ends the program when a reading cannot be taken.
FilmCard bench_card(Rehearsal& rehearsal);

// Of so many samples, whose own noise is little beside what it is compared with.
Film reference_of(const std::string& name, const Rehearsal& rehearsal, const FilmCard& card, int samples);

// Squared difference over the squared light, as the mean over all pixels. The darkest count as a tenth of white.
double squared_error(const Picture& picture, const Picture& reference);

}  // namespace understudy
