// A studio made traceable: what a ray meets, and what stands between two points.
//
// Lights, panels, backdrop and eyes are analytic shapes beside the sitter's mesh tree, so moving one rebuilds nothing.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "kit/emitter.h"
#include "scatter/surface.h"
#include "stage/board.h"
#include "stage/cloth_relief.h"
#include "stage/eye_optics.h"
#include "stage/flesh.h"
#include "stage/iris_pattern.h"
#include "stage/lens.h"
#include "stage/mesh_tree.h"
#include "stage/mottled_paint.h"
#include "stage/ray_memory.h"
#include "stage/sclera_pattern.h"
#include "stage/skin_cover.h"
#include "stage/strand_grid.h"
#include "stage/studio.h"

namespace understudy {

enum class Thing : std::uint8_t {
    kSitter,
    kBall,
    kEyeWhite,
    kCornea,
    kPanel,
    kBackdrop,
    kWall,
    kLens,
    kEmitter,
    kStrand
};

struct Hit {
    Thing thing = Thing::kSitter;
    std::uint32_t index = 0;  // of the eye, panel, wall or emitter; of the sitter's triangle or the strands' piece
    bool luminous = false;    // an emitter's shining side
    float distance = 0.0F;
    Vec3 position{0.0F};
    Vec3 geometric{0.0F};              // unit, toward where the ray came from
    Vec3 shading{0.0F};                // unit, toward where the ray came from
    Vec3 leave_from{0.0F};             // rays that go on start here, on the side the ray came from
    const Surface* surface = nullptr;  // none for an emitter or a strand
    SkinSpot spot{};                   // where the surface is skin
    Vec2 share{0.0F};                  // of the sitter's triangle
    StrandPlace strand{};              // of a strand; position is on its axis

    // Where a ray in this direction starts: beyond the surface for one that goes through it.
    Vec3 start_toward(const Vec3& direction) const {
        return glm::dot(direction, geometric) < 0.0F ? 2.0F * position - leave_from : leave_from;
    }
};

// A panel that light goes through shines on whatever faces it, on either side. Seen as a light, so that ways to it can
// be sampled; what it shines with is found there.
struct Scrim {
    std::uint32_t panel = 0;
    Emitter front;
    Emitter back;
};

// What a ray meets first, before it is worked out what lies there.
struct Meeting {
    float distance = kInfinity;  // nothing is met
    Thing thing = Thing::kSitter;
    bool luminous = false;
    std::uint32_t index = 0;
    Vec3 normal{0.0F};  // of the mesh, not unit
    const Surface* surface = nullptr;
    Vec2 share{0.0F};  // of the mesh's triangle; x along the strand's piece
};

class Stage {
  public:
    // With the sitter, or the same studio with nobody in it, as a free meter sees it.
    enum class With { kSitter, kNobody };
    Stage(const Studio& studio, With with);

    // Takes everything but the sitter of another studio, and where the eyes look: nothing of the sitter is built anew.
    void rearrange(const Studio& studio);
    // Takes its sitter as well, of the same head in another pose. The first time a tree that can follow is built.
    void seat(const Studio& studio);

    // The lenses of glasses are looked through, as by whoever asks what stands there.
    std::optional<Hit> intersect(const Ray& ray) const;
    // Whether anything stands in the way; a cloth with open places between its threads does not.
    bool blocks(const Ray& ray) const;
    // What share of light gets along the ray without being turned: 0 or 1, but for the cloths and the lenses of glasses
    // on its way.
    float passes(const Ray& ray) const;

    // For the rays of some lanes at once: what misses a shape is told for all of them together, mesh and strands are
    // asked ray by ray; or for strands a memory of what they have answered before, when there is one.
    std::array<Meeting, kLanes> meet(const WideRays& rays, LaneBits lanes, RayMemory* memory = nullptr) const;
    std::array<Meeting, kLanes> meet_but_lenses(const WideRays& rays, LaneBits lanes,
                                                RayMemory* memory = nullptr) const;
    Hit hit_at(const Ray& ray, const Meeting& meeting) const;

    // What lies under the sitter's skin, when light is followed there.
    const Flesh* flesh() const { return flesh_ ? &*flesh_ : nullptr; }
    // Where a walk comes out of the skin, seen from outside.
    Hit emerged(const Flesh::Wall& wall) const;
    // The hit on the sitter with the fine relief of skin or the weave of cloth, which only what the camera sees needs.
    Hit relieved(Hit hit, const Ray& ray) const;
    // Of each lane's ray, as passes.
    Wide passed(const WideRays& rays, LaneBits lanes) const;
    // Who stands in the way, nearest first; for messages.
    std::optional<std::string> blocker(const Ray& ray) const;

    // Keeps every ray that is asked for from now on, until none is given; for measuring, on one thread only.
    struct RayLog {
        std::vector<Ray> nearest;  // asked for their first hit
        std::vector<Ray> shadow;   // asked whether something blocks them
    };
    void log_rays(RayLog* log) { log_ = log; }
    const std::optional<MeshTree>& sitter_mesh() const { return mesh_; }

    const std::vector<Emitter>& emitters() const { return emitters_; }
    const std::vector<Board>& panels() const { return panels_; }
    const std::vector<Scrim>& scrims() const { return scrims_; }
    const std::vector<Eye>& eyes() const { return eyes_; }
    const std::vector<Lens>& lenses() const { return lenses_; }
    // Behind the cornea. Nothing has to be rebuilt.
    void set_pupil_radius(double radius_m) {
        for (Eye& eye : eyes_) eye.pupil_radius_m = radius_m;
    }
    // The room's even light comes from wherever a ray goes without meeting anything, or from the walls.
    bool has_ambient() const { return has_ambient_; }
    // The layers that light is booked to: a light each, then the ambient.
    std::size_t layer_count() const { return emitters_.size() + (has_ambient_ ? 1 : 0); }

    const IrisPattern& iris() const { return iris_; }
    const ScleraPattern& sclera() const { return sclera_; }
    const Surface& eye_white_surface() const { return eye_white_; }
    // The same taken apart: the tears alone, and the white without them.
    const Surface& tear_gloss() const { return tear_gloss_; }
    const Surface& eye_white_base() const { return eye_white_base_; }

    // Problems that only geometry shows: a light or the camera inside the sitter, a thing outside the room.
    Problems problems_with(const Studio& studio) const;

  private:
    void furnish(const Studio& studio);
    void put_up_lights(const Studio& studio);
    void put_up_panels(const Studio& studio);
    void put_up_backdrop(const std::optional<BackdropSettings>& settings);
    void put_up_room(const RoomSettings& settings);
    void meet_emitter(std::size_t index, const Ray& ray, Meeting& nearest) const;
    static void meet_board(const std::optional<BoardHit>& met, Thing thing, std::size_t index, const Surface* surface,
                           Meeting& nearest);
    void meet_eye(std::size_t index, const Ray& ray, Meeting& nearest) const;
    void meet_ball(const Ray& ray, Meeting& nearest) const;
    void meet_mesh(const Ray& ray, Meeting& nearest) const;
    void meet_strand(const Ray& ray, RayMemory* memory, Meeting& nearest) const;
    bool ball_blocks(const Ray& ray) const;
    LaneBits blocked(const WideRays& rays, LaneBits lanes) const;
    Hit analytic_hit(const Ray& ray, const Meeting& nearest) const;
    Hit sitter_hit(const Ray& ray, const Meeting& nearest) const;
    Hit strand_hit(const Ray& ray, const Meeting& nearest) const;
    bool encloses(const Vec3& point) const;

    std::vector<std::string> names_;  // of the emitters
    std::vector<std::string> panel_names_;
    std::vector<Emitter> emitters_;
    std::vector<Board> panels_;
    std::vector<Surface> panel_surfaces_;
    std::vector<float> panel_open_shares_;
    bool any_open_ = false;
    std::vector<Scrim> scrims_;
    std::vector<Board> backdrop_;
    std::optional<Sweep> sweep_;
    std::optional<Surface> backdrop_surface_;
    std::optional<MottledPaint> paint_;  // instead of the backdrop's one surface
    std::vector<Board> walls_;
    std::vector<Surface> wall_surfaces_;  // one a wall
    std::vector<Eye> eyes_;
    std::vector<Lens> lenses_;
    std::optional<MeshTree> mesh_;
    bool mesh_moves_ = false;  // its tree was made to
    std::optional<ClothRelief> cloth_;
    std::vector<Surface> zone_surfaces_;
    std::optional<SkinCover> cover_;
    std::optional<Flesh> flesh_;
    std::optional<StrandGrid> strands_;
    float ball_radius_ = 0.0F;
    Vec3 ball_centre_{0.0F};
    Surface ball_surface_;
    Surface eye_white_;
    Surface tear_gloss_;
    Surface eye_white_base_;
    ScleraPattern sclera_;
    IrisPattern iris_;
    bool has_ambient_ = false;
    RayLog* log_ = nullptr;
};

}  // namespace understudy
