// The pixels that show an iris, and those beside them: a catchlight is a few of them, and is looked for first.
#pragma once

#include <cmath>
#include <vector>

#include "stage/camera.h"
#include "stage/eye_optics.h"

namespace understudy {

class EyePixels {
  public:
    // Whether anything hides the eye is not asked.
    EyePixels(const Camera& camera, const std::vector<Eye>& eyes) {
        for (const Eye& eye : eyes) {
            const Double3 centre = iris_centre(eye);
            if (!(glm::dot(centre - camera.position(), camera.axis()) > 0.0)) continue;
            const Vec2 at = camera.pixel_of(centre);
            const Vec2 edge = camera.pixel_of(centre + kIrisRadius * camera.up());
            irises_.push_back({at, glm::length(edge - at) + 1.0F});
        }
    }
    // x, y: from the top left.
    bool include(int x, int y) const {
        const Vec2 middle(static_cast<float>(x) + 0.5F, static_cast<float>(y) + 0.5F);
        for (const Iris& iris : irises_) {
            if (glm::length(middle - iris.centre) < iris.radius) return true;
        }
        return false;
    }

  private:
    struct Iris {
        Vec2 centre;
        float radius;
    };
    std::vector<Iris> irises_;
};

}  // namespace understudy
