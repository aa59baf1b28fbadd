// What only a moved light asks for: a film of some layers, made whole by the film before.
#pragma once

#include "transport/film.h"
#include "transport/path_light.h"

namespace understudy {

// traced: has these layers, of every so many-th pixel of every so many-th row; the others are taken from the film
// before, which has all pixels. So is what the camera sees, while fewer paths have told of it than before; but not
// where nothing that reflects is or was: where a light's body stands or stood, or the open room's edge.
Film laid_over(const Film& before, const Film& traced, LayerBits layers, int every);

}  // namespace understudy
