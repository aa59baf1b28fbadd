// Other gels before a light of a saved film.
#pragma once

#include <string>

#include "rehearsal/film_card.h"

namespace understudy {

// gels: "full-warm", several with commas between, or "none". The head stays as it was set, so the light loses what the
// gels take. Says what is wrong, "" if nothing is.
std::string put_gels(CardLight& light, const std::string& gels);

}  // namespace understudy
