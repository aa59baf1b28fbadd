// A photometric file as light over direction: the planes that its symmetry spares filled in, and its angles turned into
// directions.
//
// Between the measured angles the intensity is linear in both angles (bilinear): the standard leaves that open. Outside
// the measured range there is no light.
//
// How it is held in the studio. The file's own straight ahead goes along the modifier's axis: for type C its vertical 0
// (straight down of a lamp that hangs), for types A and B vertical 0, horizontal 0. With no roll the rest lies as
// follows, left and right as seen by someone who looks at the light:
//   type C  the plane at horizontal 0 points up and the one at 90 right, so that the luminaire's length stands upright;
//   types A and B  vertical angles go up, horizontal ones left (clockwise from above, where the light sends them to its
//           own right); A has its poles above and below, B on both sides.
// A roll turns all of it like the modifier's front.
#pragma once

#include <vector>

#include "base/geometry.h"
#include "setup/photometric_file.h"

namespace understudy {

// A direction in the file's own angles.
struct PhotometricAngles {
    double vertical_deg = 0.0;
    double horizontal_deg = 0.0;
};

class PhotometricWeb {
  public:
    explicit PhotometricWeb(const PhotometricFile& file);

    // cd toward a unit direction: x right and y up as seen by someone who looks at the light, z along its axis.
    double candela(const Vec3& direction) const { return candela_at(angles_of(direction)); }
    double candela_at(const PhotometricAngles& angles) const;

    PhotometricAngles angles_of(const Vec3& direction) const;
    Vec3 direction_of(const PhotometricAngles& angles) const;

    // lm, the exact integral of the interpolated intensity; forward: of what goes into the half-space ahead of it.
    double flux_lm() const { return flux_lm_; }
    double forward_flux_lm() const { return forward_flux_lm_; }

    double peak_candela() const { return peak_candela_; }
    // Where it is measured first, in the file's order.
    const PhotometricAngles& peak_at() const { return peak_at_; }

  private:
    // All three types are a globe with two poles: latitude from one to the other, longitude round the line between.
    struct Place {
        double latitude_deg = 0.0;
        double longitude_deg = 0.0;
    };
    double wrapped(double horizontal_deg) const;
    Place place_of(const PhotometricAngles& angles) const;
    void fill_round(const PhotometricFile& file);
    void fill_ahead(const PhotometricFile& file);
    double flux_below(double latitude_deg) const;

    PhotometricType type_;
    std::vector<double> latitudes_deg_;
    std::vector<double> longitudes_deg_;
    std::vector<std::vector<double>> candela_;  // by longitude, then latitude
    double flux_lm_ = 0.0;
    double forward_flux_lm_ = 0.0;
    double peak_candela_ = 0.0;
    PhotometricAngles peak_at_;
};

}  // namespace understudy
