#include "meter/read_point.h"

#include <cmath>

#include "film/exposure.h"
#include "meter/integrate.h"

namespace understudy {

namespace {

// Readings this far under the working exposure are black in any picture and need not be known to a share of themselves.
constexpr double kBlack = 1.0 / 4096.0;

double constant_of(Receptor receptor) { return receptor == Receptor::kFlat ? kIncidentFlat : kIncidentDome; }

}  // namespace

Reading read_point(const MeterPoint& point, const Stage& stage, const std::vector<LayerLight>& layers,
                   const ExposureSettings& exposure, double relative) {
    const double constant = constant_of(point.receptor);
    const double working = exposure_of_f_number(exposure.aperture, exposure.iso, constant);
    Gathering place{Vec3(point.position), Vec3(point.normal)};
    place.response = point.receptor == Receptor::kFlat ? Response::kFlat : Response::kDome;
    const Gathered gathered =
        gather_light(stage, place, exposure_weights(layers), {relative, relative * kBlack * working});
    Reading reading;
    reading.point = point.name;
    reading.receptor = point.receptor;
    reading.facing = point.facing;
    reading.position_m = point.position;
    reading.normal = point.normal;
    reading.exposure_lxs = gathered.total.mean;
    reading.standard_error_lxs = gathered.total.standard_error;
    reading.by_backdrop_lxs = gathered.by_backdrop.mean;
    reading.by_backdrop_error_lxs = gathered.by_backdrop.standard_error;
    reading.by_room_lxs = gathered.by_room.mean;
    reading.by_room_error_lxs = gathered.by_room.standard_error;
    reading.f_number = f_number_of_exposure(gathered.total.mean, exposure.iso, constant);
    reading.stops_from_camera = std::log2(gathered.total.mean / working);
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const Estimate& light = gathered.layers[i];
        reading.by_light.push_back({layers[i].light, light.mean, light.standard_error,
                                    f_number_of_exposure(light.mean, exposure.iso, constant)});
    }
    return reading;
}

}  // namespace understudy
