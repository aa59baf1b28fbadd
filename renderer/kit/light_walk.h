// Light on its way through a modifier's inside: outward from the tube, and back from the front. Two estimators of the
// same thing that share nothing but the geometry and the sheets.
#pragma once

#include <optional>

#include "kit/flash_tube.h"
#include "kit/interior.h"
#include "kit/sheet.h"
#include "setup/setup.h"

namespace understudy {

// Where a photon ended: each share of 1 lm out of the bare tube.
struct WalkTotals {
    double out = 0.0;
    double absorbed = 0.0;        // by sheets, glass and grid, counted as it is lost at each of them
    double standard_error = 0.0;  // of out
};

class LightWalk {
  public:
    LightWalk(const Construction& construction, const ModifierShape& front);

    const FlashTube& tube() const { return tube_; }
    const Interior& interior() const { return interior_; }
    // The cloth or glass that the light leaves through; none: an opening.
    const std::optional<Sheet>& front() const { return front_; }

    // Follows so many photons from the tube to their ends.
    WalkTotals follow(int photons, std::uint64_t stream) const;

    // Radiance that comes along a ray from inside, for 1 lm out of the bare tube; one path. origin lies on the front,
    // direction points inward. with_tube: counts the tube where the ray itself meets it.
    float radiance_along(const Vec3& origin, const Vec3& direction, bool with_tube, WalkNumbers& random) const;

  private:
    struct Bounce;
    const Sheet* sheet_at(Part part) const;
    float from_tube(const Bounce& bounce, WalkNumbers& random) const;
    float share_out(const Vec3& direction) const;

    Interior interior_;
    FlashTube tube_;
    Sheet lining_;
    Part front_part_;
    std::optional<Sheet> front_;
    std::optional<Sheet> deflector_;
    std::optional<Sheet> inner_cloth_;
    std::optional<Grid> grid_;
};

}  // namespace understudy
