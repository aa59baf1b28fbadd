// A ray in Embree's form.
#pragma once

#include <embree3/rtcore.h>

#include "base/geometry.h"

namespace understudy {

inline RTCRay embree_ray(const Ray& ray) {
    RTCRay result{};
    result.org_x = ray.origin.x;
    result.org_y = ray.origin.y;
    result.org_z = ray.origin.z;
    result.tnear = ray.near;
    result.dir_x = ray.direction.x;
    result.dir_y = ray.direction.y;
    result.dir_z = ray.direction.z;
    result.tfar = ray.far;
    result.mask = ~0U;
    return result;
}

}  // namespace understudy
