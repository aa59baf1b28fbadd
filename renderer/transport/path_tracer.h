// Follows light backwards from a camera or a receptor through the stage.
//
// Power and colour of the lights are not known here: every contribution is booked to the light it came from, at unit
// power. Choices of the path (lobe, end) depend on its own throughput only, and every light is sampled at every vertex,
// so a light that is turned up later is no noisier than the rest.
#pragma once

#include <optional>

#include "stage/stage.h"
#include "transport/path_light.h"
#include "transport/sampler.h"
#include "transport/ways_to_scrims.h"

namespace understudy {

// What the camera sees first that is not a mirror or a lens.
struct FirstSight {
    Light4 albedo{0.0F};
    Vec3 normal{0.0F};
    float distance = 0.0F;  // along the ray; 0 when there is nothing
};

// A place that light is gathered at.
struct Gathering {
    Vec3 position{0.0F};
    Vec3 normal{0.0F, 0.0F, 1.0F};
    Response response = Response::kFlat;
    float radius = 0.0F;  // of the disc round it that the reading is averaged over; 0: a point
    const Eye* behind_cornea =
        nullptr;  // the place lies on this eye's iris plane; the cornea itself takes nothing away
};

class PathTracer {
  public:
    explicit PathTracer(const Stage& stage) : stage_(stage) {}

    // Radiance along a camera ray, added to light: 1/(sr·m²) per lumen; the ambient's per lux.
    FirstSight look(const Ray& ray, const Waves& waves, const Sampler& sampler, PathLight& light) const;

    // The response-weighted integral of radiance over all directions, added to light: for a flat response the
    // illuminance per lumen, lx/lm.
    void gather(const Gathering& place, const Waves& waves, const Sampler& sampler, PathLight& light) const;

  private:
    // How an emitter that the path meets is to be counted.
    enum class Arrival { kSeen, kWeighed, kCounted };
    struct Walk {
        Ray ray;
        Light4 throughput{1.0F};
        Arrival arrival = Arrival::kSeen;
        float density = 0.0F;  // of the direction, for kWeighed
        Vec3 left_from{0.0F};  // the vertex it came from, for kWeighed
        Vec3 left_normal{0.0F};
        std::uint32_t vertex = 0;
        bool ambient_open = true;  // the ambient has not been counted yet
        bool may_split = true;     // no cornea met yet
    };
    struct Vertex {
        Vec3 leave_from;
        Vec3 leave_behind;  // of the surface, for what goes through it
        Frame frame;
        const Surface* surface;
        Approach from;
        WaysToScrims to_scrims;
    };

    void follow(Walk walk, const Waves& waves, const Sampler& sampler, PathLight& light, FirstSight* sight) const;
    void meet_emitter(const Walk& walk, const Hit& hit, PathLight& light) const;
    void meet_ambient(Walk& walk, PathLight& light) const;
    Vertex vertex_at(const Hit& hit, const Walk& walk, const Waves& waves) const;
    void light_vertex(const Vertex& vertex, const Walk& walk, const Sampler& sampler, PathLight& light) const;
    // By what falls on its front, the side that the path came from, or on its back.
    enum class Side { kFront, kBack };
    void light_side(const Vertex& vertex, Side side, const Walk& walk, const Sampler& sampler, PathLight& light) const;
    // Both ways on from a cornea; the walk goes on with the one through it. False: nothing is left to follow.
    bool cross_cornea(Walk& walk, const Hit& hit, const Waves& waves, const Sampler& sampler, PathLight& light,
                      FirstSight* sight) const;
    bool scatter_at_iris(Walk& walk, const Eye& eye, const IrisHit& iris, const Waves& waves, const Sampler& sampler,
                         PathLight& light) const;
    bool scatter_at(Walk& walk, const Vertex& vertex, const Sampler& sampler) const;
    // The surface's own way, or one to a cloth that light goes through. None: nothing is left to follow.
    static std::optional<ScatterSample> choose_way(const Vertex& vertex, const Vec3& u);
    bool survives(Walk& walk, float u) const;

    const Stage& stage_;
};

}  // namespace understudy
