// The light of a photometric file as what leaves a light: from a point, or spread evenly over a flat front.
//
// The file says how much light goes where, not from where on the luminaire. Spread over a front of area A, every part
// of it sends its share of the file's intensity I into each direction, so that its radiance is I / (A cos θ): far away
// the front gives just the file's light, near by it is as soft as its size. A flat front gives nothing backward.
//
// A point has no radiance. It is held as a speck of a square micrometre that faces whoever looks at it: sampled like
// any front and never hit by a ray, it gives I / d² to the last digit of a float.
#pragma once

#include <algorithm>
#include <memory>

#include "kit/photometric_web.h"

namespace understudy {

inline constexpr double kPointArea = 1e-12;  // m², of a light that has none

class WebEmission {
  public:
    static WebEmission from_point(std::shared_ptr<const PhotometricWeb> web) {
        const double lumens = web->flux_lm();
        return {std::move(web), lumens, kPointArea, true};
    }
    // The front is flat, and some of the web's light goes ahead.
    static WebEmission over_front(std::shared_ptr<const PhotometricWeb> web, double area_m2) {
        const double lumens = web->forward_flux_lm();
        return {std::move(web), lumens, area_m2, false};
    }

    // What leaves the light in the studio when its candela are the file's, lm.
    double lumens() const { return lumens_; }

    // For 1 lm, 1/(sr·m²); direction unit, in the front's axes.
    float radiance(const Vec3& direction) const {
        constexpr float kGrazing = 1e-4F;  // keeps the quotient a number: the last 0.006 degrees
        if (point_) return scale_ * static_cast<float>(web_->candela(direction));
        if (!(direction.z > 0.0F)) return 0.0F;
        return scale_ * static_cast<float>(web_->candela(direction)) / std::max(direction.z, kGrazing);
    }

  private:
    WebEmission(std::shared_ptr<const PhotometricWeb> web, double lumens, double area_m2, bool point)
        : web_(std::move(web)), lumens_(lumens), scale_(static_cast<float>(1.0 / (lumens * area_m2))), point_(point) {}

    std::shared_ptr<const PhotometricWeb> web_;
    double lumens_;
    float scale_;
    bool point_;
};

}  // namespace understudy
