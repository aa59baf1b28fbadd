// From a film to the picture that people see: developed, and cleaned of noise.
#pragma once

#include <optional>

#include "denoise/denoiser.h"

namespace CLI {
class App;
}

namespace understudy {

// Adds --no-denoise to a command.
void take_denoising(CLI::App& command, bool& as_traced);

class Finisher {
  public:
    // With the trained weights that setting up has fetched, or without. Damaged ones are a problem.
    static Expected<Finisher> open(bool as_traced);

    Picture finish(const Film& film, const Developing& developing) const;

  private:
    std::optional<Denoiser> denoiser_;  // none: pictures stay as they were traced
};

}  // namespace understudy
