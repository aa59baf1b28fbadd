// How a path goes on where it meets a lens of glasses: straight on, and mirrored where the camera sees it.
#include <algorithm>

#include "transport/dimensions.h"
#include "transport/path_tracer.h"

namespace understudy {

void PathTracer::cross_lens(Group& group, std::uint32_t index, const Hit& hit) const {
    Walk& walk = group.walks[index];
    const Vec3 back = -walk.ray.direction;
    const float cosine = std::min(1.0F, glm::dot(back, hit.geometric));
    const float mirrored = stage_.lenses()[hit.index].mirrors(cosine);

    Walk mirror = walk;
    mirror.ray = {hit.leave_from, 2.0F * cosine * hit.geometric - back};
    mirror.throughput *= mirrored;
    mirror.arrival = Arrival::kSeen;
    mirror.may_split = false;
    mirror.sees = false;
    mirror.only_hair = false;
    mirror.vertex += kLensBranch;

    // Shadow rays pass lenses in the same way, so whatever was sampled before the lens still stands. Of paths that have
    // been scattered only the straight way is followed, which loses what a lens would mirror of them.
    walk.throughput *= 1.0F - mirrored;
    walk.ray.origin = hit.start_toward(walk.ray.direction);
    walk.before += hit.distance;
    group.under_way.push_back(index);
    if (walk.may_split) group.start(mirror);
}

}  // namespace understudy
