#include "spectrum/observer.h"

#include <cassert>

#include "spectrum/cie_tables.h"

namespace understudy {

const Spectrum& observer_x() {
    static const Spectrum kX(kCie1931X);
    return kX;
}

const Spectrum& observer_y() {
    static const Spectrum kY(kCie1931Y);
    return kY;
}

const Spectrum& observer_z() {
    static const Spectrum kZ(kCie1931Z);
    return kZ;
}

Xyz xyz_of(const Spectrum& spectrum) {
    return {integral(spectrum * observer_x()), integral(spectrum * observer_y()), integral(spectrum * observer_z())};
}

Spectrum normalised_to_luminance(const Spectrum& spectrum) {
    const double luminance = integral(spectrum * observer_y());
    assert(luminance > 0.0);
    return spectrum * static_cast<float>(1.0 / luminance);
}

}  // namespace understudy
