// Follows light backwards from a camera or a receptor through the stage.
//
// Power and colour of the lights are not known here: every contribution is booked to the light it came from, at unit
// power. Choices of the path (lobe, end) depend on its own throughput only, and every light is sampled at every vertex,
// so a light that is turned up later is no noisier than the rest.
//
// Paths are followed in step, many at a time: what they do alike (random numbers, points of lights) is done for sixteen
// of them at once, and queries of one kind come one after another. What a path brings does not depend on which others
// are under way with it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "scatter/skin_walk.h"
#include "scatter/whole_fibre.h"
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

// What a path is drawn with, and what it has brought.
struct Path {
    Sampler sampler;
    Waves waves{};
    Ray ray{};  // from the camera; gathering chooses its own
    PathLight light{};
    FirstSight sight{};
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
    // tuning: of the walks under the skin; other than usual only for measuring.
    explicit PathTracer(const Stage& stage, const WalkTuning& tuning = {}) : stage_(stage), tuning_(tuning) {}

    // Radiance along each camera ray, added to its path's light: 1/(sr·m²) per lumen; the ambient's per lux.
    // memory: of the same stage's sitter, if any is kept of these paths.
    void look(std::span<Path> paths, RayMemory* memory = nullptr) const;
    FirstSight look(const Ray& ray, const Waves& waves, const Sampler& sampler, PathLight& light) const;

    // The response-weighted integral of radiance over all directions, added to each path's light: for a flat response
    // the illuminance per lumen, lx/lm.
    void gather(const Gathering& place, std::span<Path> paths) const;
    void gather(const Gathering& place, const Waves& waves, const Sampler& sampler, PathLight& light) const;

  private:
    static constexpr float kLeaveOff = 1e-5F;  // of a cornea, or into the skin, metres

    // How an emitter that the path meets is to be counted.
    enum class Arrival { kSeen, kWeighed, kCounted };
    struct Walk {
        Ray ray;
        Light4 throughput{1.0F};
        float began_with = 1.0F;  // of a branch: its chance to go on is measured against it
        Arrival arrival = Arrival::kSeen;
        float density = 0.0F;  // of the direction, for kWeighed
        Vec3 left_from{0.0F};  // the vertex it came from, for kWeighed
        Vec3 left_normal{0.0F};
        Response left_response = Response::kFlat;
        std::uint32_t vertex = 0;
        float before = 0.0F;       // the way through lenses before this ray
        bool ambient_open = true;  // the ambient has not been counted yet
        bool may_split = true;     // no cornea met yet
        bool only_hair = true;     // nothing else met yet
        bool sees = false;         // what it meets is what the camera sees
        std::uint32_t path = 0;    // whose light it adds to
    };
    // Light that is followed under the skin goes in here.
    struct SkinEntry {
        Vec3 inside{0.0F};   // just under the triangle, not under the curved surface that it stands for
        Vec3 outward{0.0F};  // of the triangle
        std::uint32_t triangle = 0;
        SkinDepth depth{};
        Vec4 numbers{0.0F};  // for the way in
    };
    struct Vertex {
        std::uint32_t walk;  // that came to it
        Vec3 leave_from;
        Vec3 leave_behind;  // of the surface, for what goes through it
        Frame frame;
        const Surface* surface;
        Approach from;
        WaysToScrims to_scrims;
        std::optional<SkinEntry> entry{};
        float followed = 1.0F;  // how often its own way on is taken
    };
    struct StrandVertex {
        std::uint32_t walk;  // that came to it
        StrandPlace place;
        Frame frame;  // its tangent runs along the fibre
        WholeFibre from;
    };

    // Walks that are followed in step, and the paths that they belong to.
    struct Group {
        std::span<Path> paths;
        RayMemory* memory = nullptr;
        std::vector<Walk> walks{};
        std::vector<std::uint32_t> under_way{};  // walks that have a ray to follow
        std::vector<Vertex> vertices{};          // where walks of this step have met a surface
        std::vector<Vertex> emerged{};           // where they have come out of the skin
        std::vector<StrandVertex> strands{};     // where they have met a hair

        Path& path_of(const Walk& walk) const { return paths[walk.path]; }
        // Alike for all of them.
        LayerBits asked() const { return paths.front().light.asked; }
        void start(const Walk& walk);
    };

    void follow(Group& group) const;
    // Light straight from the lights, and the walks that fetch the rest.
    void gather_first(Group& group, const Gathering& place, std::size_t first, std::size_t count) const;
    // Up to where light is gathered: a surface becomes a vertex of the group.
    void meet(Group& group, std::span<const std::uint32_t> walks) const;
    void arrive(Group& group, std::uint32_t index, const Meeting& meeting) const;
    void meet_emitter(const Walk& walk, const Hit& hit, PathLight& light) const;
    static void book(const Walk& walk, PathLight& light, std::size_t layer, const Light4& brought);
    void meet_ambient(Walk& walk, PathLight& light) const;
    Vertex vertex_at(const Hit& hit, std::uint32_t walk, const Frame& frame, const Approach& from) const;
    // Of a surface that is alike all over, for light that goes back along wo (the studio's axes).
    Vertex vertex_at(const Hit& hit, std::uint32_t walk, const Vec3& wo, const Waves& waves) const;
    // By what falls on their front, the side that the path came from, or on their back.
    enum class Side { kFront, kBack };
    // Lit by every light, and followed on.
    void treat(Group& group, std::span<const Vertex> vertices) const;
    void light_vertices(const Group& group, std::span<const Vertex> vertices, Side side) const;
    static Light4 sent_on(const Vertex& vertex, float facing, const LightSample& sample);
    // Whether a ray that comes to a cornea's edge meets the white that reaches over it.
    bool white_covers(const Path& path, const Walk& walk, const Hit& hit) const;
    // The tears over the white, and the white as a walk of its own.
    void meet_white(Group& group, std::uint32_t index, const Hit& met) const;
    std::optional<Hit> place_within(const Eye& eye, const Hit& met, const Vec4& numbers) const;
    // Both ways on from a cornea: the mirror image becomes a walk of its own.
    void cross_cornea(Group& group, std::uint32_t index, const Hit& hit) const;
    // The share that passes goes straight on; what the camera sees mirrored becomes a walk of its own.
    void cross_lens(Group& group, std::uint32_t index, const Hit& hit) const;
    // How a place behind the cornea looks.
    struct IrisLook {
        Vec3 normal{0.0F};  // of the relief
        Light4 colour{0.0F};
    };
    IrisLook look_of_iris(std::uint32_t index, const IrisHit& iris, const Waves& waves) const;
    void light_iris(const Walk& walk, const Eye& eye, const IrisHit& iris, const IrisLook& look, Path& path) const;
    bool scatter_at_iris(Walk& walk, const Eye& eye, const IrisHit& iris, const IrisLook& look, Path& path) const;
    void scatter(Group& group, std::span<const Vertex> vertices) const;
    bool scatter_at(Walk& walk, const Vertex& vertex, const Vec4& numbers) const;
    void arrive_at_strand(Group& group, std::uint32_t index, const Hit& hit) const;
    void light_strands(const Group& group, std::span<const StrandVertex> vertices) const;
    void scatter_at_strands(Group& group, std::span<const StrandVertex> vertices) const;
    // The surface's own way, or one to a cloth that light goes through. None: nothing is left to follow.
    static std::optional<ScatterSample> choose_way(const Vertex& vertex, const Vec3& u);
    // What it still carries of what it began with.
    static float strength(const Walk& walk);
    // With this chance, and then with what makes up for those that are not.
    static bool is_followed(Walk& walk, float chance, float u);
    // often: its chance, over what it still carries.
    static bool survives(Walk& walk, float u, float often = 1.0F);
    static bool goes_on(Walk& walk, float u);
    // On skin that the camera sees: the coat is lit and followed there, the rest where light comes out again.
    static void enter_skin(Vertex& vertex, const Hit& hit, const Waves& waves);
    void draw_entries(const Group& group, std::span<Vertex> vertices) const;
    static float kept_of_coat(const Vertex& vertex, std::size_t light, const Light4& brought,
                              const LightSample& sample);
    void follow_coat(Group& group, const Vertex& vertex, const Vec4& numbers) const;
    SkinWalkResult wander(const SkinEntry& entry, Path& path) const;
    void pass_through_skin(Group& group, const Vertex& vertex) const;
    static bool weighed(const Vertex& vertex);

    const Stage& stage_;
    WalkTuning tuning_;
};

}  // namespace understudy
