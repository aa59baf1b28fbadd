#include "kit/light_walk.h"

#include <cmath>

#include "kit/grid_cells.h"

namespace understudy {

namespace {

// Paths this long end by chance, in proportion to what they still carry.
constexpr int kBouncesForSure = 3;
// A photon that carries less than this share goes on by chance with just so much.
constexpr float kFaint = 0.1F;
// In a room that absorbs a hundredth at each wall, one path in 10⁴ would go on.
constexpr int kMostBounces = 1000;

}  // namespace

// A place that light has reached, seen from where it will go.
struct LightWalk::Bounce {
    Vec3 place;
    Frame frame;
    Vec3 wo;  // local
    const Sheet* sheet;
    Part part;
};

LightWalk::LightWalk(const Construction& construction, const ModifierShape& front)
    : interior_(construction, front),
      tube_(construction.tube, interior_.tube_height()),
      lining_(Sheet::wall(construction.lining)),
      front_part_(construction.body == Construction::Body::kBall ? Part::kWall : Part::kFront),
      grid_(construction.grid) {
    if (construction.front_cloth) front_ = Sheet::cloth(*construction.front_cloth);
    if (construction.deflector) deflector_ = Sheet::wall(construction.deflector->lining);
    if (construction.inner_cloth) inner_cloth_ = Sheet::cloth(construction.inner_cloth->cloth);
}

// None at an opening.
const Sheet* LightWalk::sheet_at(Part part) const {
    if (part == front_part_) return front_ ? &*front_ : nullptr;
    if (part == Part::kDeflector) return &*deflector_;
    if (part == Part::kInnerCloth) return &*inner_cloth_;
    return &lining_;
}

float LightWalk::share_out(const Vec3& direction) const { return grid_ ? grid_passes(*grid_, direction) : 1.0F; }

WalkTotals LightWalk::follow(int photons, std::uint64_t stream) const {
    WalkNumbers random(stream);
    double out = 0.0;
    double out2 = 0.0;
    double absorbed = 0.0;
    for (int i = 0; i < photons; ++i) {
        auto [place, direction] = tube_.photon(random);
        Part last = Part::kNone;
        float carried = 1.0F;
        float leaves = 0.0F;
        for (int bounces = 0; bounces < kMostBounces; ++bounces) {
            const InteriorHit hit = interior_.next(place, direction, last);
            if (hit.part == Part::kNone) break;
            place += hit.distance * direction;
            const Sheet* sheet = sheet_at(hit.part);
            SheetSample sample{Vec3(0.0F, 0.0F, -1.0F), 1.0F, 0.0F};
            if (sheet != nullptr) {
                const Frame frame = Frame::around(hit.normal);
                const float u = random.next();
                const float v = random.next();
                const float w = random.next();
                sample = sheet->sample(frame.to_local(-direction), u, v, w);
                absorbed += static_cast<double>(carried * (1.0F - sample.weight));
                carried *= sample.weight;
                if (carried < kFaint) {
                    if (random.next() * kFaint >= carried) break;
                    carried = kFaint;
                }
                direction = frame.to_world(sample.wi);
            }
            last = hit.part;
            if (hit.part != front_part_ || sample.wi.z > 0.0F) continue;
            leaves = carried * share_out(direction);
            absorbed += static_cast<double>(carried - leaves);
            break;
        }
        out += static_cast<double>(leaves);
        out2 += static_cast<double>(leaves * leaves);
    }
    const double count = photons;
    const auto flux = static_cast<double>(tube_.flux());
    const double mean = out / count;
    return {flux * mean, flux * absorbed / count + (1.0 - flux),
            flux * std::sqrt(std::max(0.0, out2 / count - mean * mean) / count)};
}

float LightWalk::from_tube(const Bounce& bounce, WalkNumbers& random) const {
    const TubeSample sample = tube_.sample(bounce.place, random);
    if (sample.density <= 0.0F) return 0.0F;
    const Vec3 wi = bounce.frame.to_local(sample.direction);
    const float value = bounce.sheet->value(bounce.wo, wi) * std::abs(wi.z);
    if (value <= 0.0F || !interior_.open_between(bounce.place, sample.direction, sample.distance, bounce.part)) {
        return 0.0F;
    }
    // A metal's own samples find the tube too: the balance heuristic, Veach and Guibas, SIGGRAPH 1995.
    return value * tube_.radiance() / (sample.density + bounce.sheet->density(bounce.wo, wi));
}

float LightWalk::radiance_along(const Vec3& origin, const Vec3& direction, bool with_tube, WalkNumbers& random) const {
    Vec3 place = origin;
    Vec3 along = direction;
    Part last = front_part_;
    float sum = 0.0F;
    float throughput = 1.0F;
    float density = with_tube ? kInfinity : 0.0F;  // that the ray was drawn with, where the tube counts for it
    for (int bounces = 0; bounces < kMostBounces; ++bounces) {
        const InteriorHit hit = interior_.next(place, along, last);
        if (density > 0.0F) {
            tube_.each_met(place, along, hit.distance, [&](float tube_density) {
                const float share = density == kInfinity ? 1.0F : density / (density + tube_density);
                sum += throughput * share * tube_.radiance();
            });
        }
        const Sheet* sheet = hit.part == Part::kNone ? nullptr : sheet_at(hit.part);
        if (sheet == nullptr) return sum;
        const Frame frame = Frame::around(hit.normal);
        const Bounce bounce{place + hit.distance * along, frame, frame.to_local(-along), sheet, hit.part};
        sum += throughput * from_tube(bounce, random);
        const float u = random.next();
        const float v = random.next();
        const float w = random.next();
        const SheetSample sample = sheet->sample(bounce.wo, u, v, w);
        if (hit.part == front_part_ && sample.wi.z < 0.0F) return sum;  // out again: nothing comes from there
        throughput *= sample.weight;
        if (bounces >= kBouncesForSure) {
            const float goes_on = std::min(1.0F, throughput);
            if (random.next() >= goes_on) return sum;
            throughput /= goes_on;
        }
        if (throughput <= 0.0F) return sum;
        place = bounce.place;
        along = frame.to_world(sample.wi);
        last = hit.part;
        density = sample.density;
    }
    return sum;
}

}  // namespace understudy
