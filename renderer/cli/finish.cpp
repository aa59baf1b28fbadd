#include "cli/finish.h"

#include <utility>

#include <CLI/CLI.hpp>

namespace understudy {

void take_denoising(CLI::App& command, bool& as_traced) {
    command.add_flag("--no-denoise", as_traced, "Leave the picture's noise as it was traced");
}

Expected<Finisher> Finisher::open(bool as_traced) {
    Finisher finisher;
    if (as_traced) return finisher;
    auto denoiser = Denoiser::open(UNDERSTUDY_DENOISER_FILE);
    if (!denoiser) return denoiser.problems();
    finisher.denoiser_.emplace(std::move(*denoiser));
    return finisher;
}

Picture Finisher::finish(const Film& film, const Developing& developing) const {
    return denoiser_ ? denoiser_->clean(film, developing) : develop(film, developing);
}

}  // namespace understudy
