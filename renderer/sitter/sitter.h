// The sitter as the rest of the program sees one: a posed mesh, two eyes, and the places people measure at.
//
// Metres, in the studio's axes: y up, the camera on the +z side, the mark at the origin.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include <glm/mat4x4.hpp>

#include "base/expected.h"
#include "base/geometry.h"
#include "scatter/skin_spot.h"
#include "setup/setup.h"
#include "sitter/strands.h"

namespace understudy {

// What a triangle of the sitter's mesh belongs to: its material, and its name when it hides a light.
enum class Zone : std::uint8_t {
    kFace,
    kForehead,
    kBrow,
    kUpperLid,
    kLowerLid,
    kNose,
    kCheek,
    kLips,
    kMouth,  // its lining, the gums and the tongue
    kChin,
    kEar,
    kScalp,
    kNeck,
    kTop,  // the outer garment, or the shirt under a jacket
    kCollar,
    kJacket,
    kHat,
    kGlasses,  // their frame
    kCaruncle,
    kTearLine,
    kTeeth,
    kSocket,  // the lids' lining and what lies behind the eyes
    kCount,
};

// Seen only between parted lips, or not at all: no skin to measure, to grow on or to wear on.
constexpr bool is_inside(Zone zone) { return zone == Zone::kMouth || zone == Zone::kTeeth || zone == Zone::kSocket; }

// In words, as it is printed: "brow", "upper lid", …
std::string_view zone_name(Zone zone);

// The skin at a vertex.
struct SkinVertex {
    SkinSpot spot;
    float pores = 0.0F;  // how deep, 1 where they are deepest
    float lip = 0.0F;    // 1 on the red of the lips
};

struct SitterMesh {
    std::vector<Vec3> positions;
    std::vector<Vec3> normals;                            // one a position, smooth, unit
    std::vector<std::array<std::uint32_t, 3>> triangles;  // counter-clockwise from outside
    std::vector<Zone> zones;                              // one a triangle
    std::vector<Vec3> straight;                           // one a position: where it lies before the pose
    std::vector<SkinVertex> skin;                         // one a position
};

// Anatomy of the eye, from the schematic-eye tables: see sitter/eye.h for sources and the derived places.
struct Eye {
    Double3 centre{0.0};          // of the eyeball
    Double3 axis{0.0, 0.0, 1.0};  // unit, out through the pupil
    double pupil_radius_m = 0.00175;
    Double3 up{0.0, 1.0, 0.0};  // of the head
};

// One lens of a pair of glasses: a cap of a sphere, thin, without power.
struct SpectacleLens {
    Double3 centre{0.0};          // of the sphere
    Double3 axis{0.0, 0.0, 1.0};  // unit, from there out through the lens's middle
    Double3 right{1.0, 0.0, 0.0};
    Double3 up{0.0, 1.0, 0.0};
    double radius_m = 0.110;
    // The outline, seen along the axis: |x / half_width|^roundness + |y / half_height|^roundness = 1.
    double half_width_m = 0.025;
    double half_height_m = 0.018;
    double roundness = 2.0;
};

// Where the meter is held: on the skin, facing along its normal.
struct Landmark {
    Double3 position{0.0};
    Double3 normal{0.0, 0.0, 1.0};
};

struct Landmarks {
    Landmark forehead, nose_bridge, nose_tip, cheek_camera_left, cheek_camera_right, chin, throat, crown;
};

// Where strands grow on a posed head: its own axes, straight, the origin on the turning axis at the height of the eyes.
struct Growth {
    glm::dmat4 to_studio{1.0};
    std::array<std::vector<std::uint32_t>, 2> lash_lines;  // the lids' outer edges: closed lines of the mesh's vertices
    HairLook look;
    // A plane of the head's own axes, its place and its way up: what grows above it is under a hat's crown.
    std::optional<std::array<Double3, 2>> hat_band;
};

struct Sitter {
    enum class Kind { kNobody, kBall, kHead };
    Kind kind = Kind::kNobody;
    SitterMesh mesh;                         // empty but for kHead
    std::optional<std::array<Eye, 2>> eyes;  // [0] camera left (the sitter's right), [1] camera right
    std::vector<SpectacleLens> lenses;       // none without glasses
    std::optional<Landmarks> landmarks;      // of a head whose landmarks are known
    Strands strands;                         // hair, beard, brows and lashes
    std::optional<Growth> growth;            // of a head of the library: what strands grow by
    double ball_radius_m = 0.0;              // kBall: centre at the face point
    Double3 straight_neck{0.0};              // the base of the neck before the pose
    // What the zones that are worn are made of.
    ClothesSettings clothes;
    std::optional<GlassesSettings> glasses;
    std::optional<HatSettings> hat;
    double melanin = 0.02;        // volume fraction of melanosomes in the epidermis
    double blood = 0.02;          // volume fraction of blood in the dermis
    double gaze_asked_deg = 0.0;  // from straight ahead, of the eye that would turn more; eyes stop at kFarthestGazeDeg
    IrisColour iris = IrisColour::kBrown;
};

}  // namespace understudy
