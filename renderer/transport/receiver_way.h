// The first way of a path that starts at a receiver: a flat or a dome receptor, an iris.
#pragma once

#include "stage/stage.h"
#include "transport/light_sample.h"

namespace understudy {

struct WayFromReceiver {
    Vec3 direction;
    float weight = 0.0F;  // the response over the density
};

// As the receiver answers to light, or toward a cloth that light goes through. u.x chooses which, u.y and u.z the
// direction.
WayFromReceiver choose_way_from(const Stage& stage, const Receiver& receiver, const Vec4& u);

}  // namespace understudy
