// How strong a light is, as a scene file says it: exactly one of these.
#pragma once

#include <variant>

namespace understudy {

struct PowerFromMeter {
    double f_number = 4.0;
};
struct PowerFromEnergy {
    double joules = 0.0;
};
struct PowerFromFlux {
    double lumens = 0.0;
};
struct PowerFromKey {
    double stops = 0.0;
};
struct PowerFromDial {
    int steps = 0;  // of the flash head's dial, from full
};
struct PowerFromIlluminance {
    double lux = 0.0;  // at the face, where a meter value is read
};
struct PowerOfFile {};  // what the photometric file says; a placed studio has it as a flux
using Power = std::variant<PowerFromMeter, PowerFromEnergy, PowerFromFlux, PowerFromKey, PowerFromDial,
                           PowerFromIlluminance, PowerOfFile>;

}  // namespace understudy
