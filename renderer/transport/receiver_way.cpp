#include "transport/receiver_way.h"

#include <algorithm>

#include "base/turns.h"
#include "transport/ways_to_scrims.h"

namespace understudy {

namespace {

// A direction about +z with density (1 + cosine) / 4π: a dome receptor's response.
Vec3 sample_dome(float u, float v) {
    const float cosine = std::min(1.0F, 2.0F * std::sqrt(u) - 1.0F);
    const float sine = std::sqrt(std::max(0.0F, 1.0F - cosine * cosine));
    return {sine * std::cos(2.0F * kPi * v), sine * std::sin(2.0F * kPi * v), cosine};
}

}  // namespace

WayFromReceiver choose_way_from(const Stage& stage, const Receiver& receiver, const Vec4& u) {
    const bool flat = receiver.response == Response::kFlat;
    const float all = flat ? kPi : 2.0F * kPi;  // the response's integral over all directions
    const auto own_way = [&] {
        const Vec3 local = flat ? sample_cosine(u.y, u.z) : sample_dome(u.y, u.z);
        return Frame::around(receiver.normal).to_world(local);
    };
    if (stage.scrims().empty()) return {own_way(), all};
    const WaysToScrims to_scrims(stage.scrims(), receiver);
    const float share = to_scrims.share();
    const Vec3 direction = u.x < share ? to_scrims.sample({u.x / share, u.y, u.z}) : own_way();
    const float response = response_to(receiver.response, glm::dot(direction, receiver.normal));
    if (!(response > 0.0F)) return {direction, 0.0F};
    return {direction, response / to_scrims.with_own(response / all, direction)};
}

}  // namespace understudy
