// One lighting setup as plain data: what a scene file says, checked, in SI units.
//
// Angles are in degrees here, as in the file, because a person reads both; every other number is in the unit of its
// name. Places on the studio floor are resolved by setup/placement.h once the sitter's face is known.
#pragma once

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/geometry.h"
#include "setup/construction.h"
#include "setup/dial.h"
#include "setup/lit_shapes.h"
#include "setup/power.h"
#include "spectrum/spectrum.h"

namespace understudy {

// Where in a file a thing was said, for messages about it.
struct SourcePlace {
    std::string file;
    int line = 0;
    int column = 0;
};

// ---- places -------------------------------------------------------------------------------------------------------

// Like a stand on the studio floor. Exactly one of height_m and elevation_deg, or neither: eye height.
struct StandPlacement {
    double angle_deg = 0.0;  // round the mark from the camera's side, negative = camera left
    std::optional<double> height_m;
    std::optional<double> elevation_deg;
    double distance_m = 1.0;  // from the sitter's face, in a straight line
    SourcePlace said_at;
};

struct Aim {
    enum class Target { kFace, kEyes, kChest, kCrown, kBackdrop, kCamera, kPoint };
    Target target = Target::kFace;
    Double3 point_m{0.0};  // for kPoint
};

struct Placement {
    std::variant<StandPlacement, Double3> where = StandPlacement{};
    Aim aim;
    double feather_deg = 0.0;  // the axis turned away sideways, positive = toward the camera
    // Round the axis, positive = counterclockwise as seen by someone who looks at the front. 0 = height upright.
    double roll_deg = 0.0;
    SourcePlace said_at;
};

// ---- picture and camera -------------------------------------------------------------------------------------------

enum class Treatment { kColour, kBlackAndWhite };

struct WhiteBalance {
    bool as_lit = false;     // the white of the light that falls on the face
    double kelvin = 5500.0;  // otherwise
    std::string illuminant;  // "", or a name known to spectrum/illuminant.h in place of kelvin
};

struct PictureSettings {
    int width = 640;
    int height = 800;
    Treatment treatment = Treatment::kColour;
    int samples = 64;
    WhiteBalance white_balance;
    unsigned seed = 0;
};

struct Focus {
    enum class On { kNearEye, kFace, kBackdrop, kDistance };
    On on = On::kNearEye;
    double distance_m = 0.0;  // from the lens, for kDistance
};

// What decides how bright a given light is in the picture.
struct ExposureSettings {
    double aperture = 4.0;
    double shutter_s = 1.0 / 200.0;
    double iso = 200.0;
};

struct CameraSettings {
    double focal_length_m = 0.085;
    double sensor_long_m = 0.036;
    double sensor_short_m = 0.024;
    Placement placement;  // its StandPlacement's distance is from lens to face
    ExposureSettings exposure;
    Focus focus;
};

// ---- sitter -------------------------------------------------------------------------------------------------------

struct GazeAtCamera {};
struct GazeAtLight {
    std::string name;
};
struct GazeAngles {
    double across_deg = 0.0;  // relative to the face, positive = camera right
    double up_deg = 0.0;
};
using Gaze = std::variant<GazeAtCamera, GazeAtLight, GazeAngles>;

// An .obj of one's own: how it stands in its file.
struct OwnMesh {
    std::filesystem::path path;
    double scale_m = 1.0;             // metres a unit of the file
    Double3 up{0.0, 1.0, 0.0};        // in the file's axes
    Double3 front{0.0, 0.0, 1.0};     // in the file's axes
    std::optional<Double3> left_eye;  // the sitter's left eyeball's centre, in the file's units and axes
    std::optional<Double3> right_eye;
};

struct NobodyThere {};
struct MattBall {};
struct LibraryHead {
    std::string name;
    std::filesystem::path path;  // its TOML file of shape amounts
};
using HeadChoice = std::variant<NobodyThere, MattBall, LibraryHead, OwnMesh>;

struct SkinSettings {
    std::optional<double> melanin;  // volume fraction of melanosomes in the epidermis, 0 … 0.5; none: the head's own
    std::optional<double> blood;    // volume fraction of blood in the dermis, 0 … 0.2; none: the head's own
};

struct SitterSettings {
    HeadChoice head;
    SourcePlace head_said_at;
    double eye_height_m = 1.25;
    double turn_deg = 0.0;  // positive = toward camera right
    double chin_deg = 0.0;  // positive = up
    double lean_deg = 0.0;  // positive = toward camera right
    Gaze gaze = GazeAtCamera{};
    SkinSettings skin;
    std::optional<double> pupil_m;  // diameter as seen through the cornea; none: from the standing light
};

// ---- lights -------------------------------------------------------------------------------------------------------

struct RectangleShape {
    double width_m = 0.0;
    double height_m = 0.0;
};
struct DiscShape {
    double diameter_m = 0.0;
};
struct RingShape {
    double diameter_m = 0.0;
    double inner_m = 0.0;
};
struct PolygonShape {
    int sides = 8;
    double diameter_m = 0.0;  // across the corners
};
struct SphereShape {
    double diameter_m = 0.0;
};
struct DomeShape {  // the inside of an umbrella's canopy
    double diameter_m = 0.0;
    double depth_m = 0.0;  // from the rim's plane to the canopy's middle, at most half the diameter
};
struct PointShape {};  // no size at all: the light of a photometric file from one place
using ModifierShape = std::variant<RectangleShape, DiscShape, RingShape, PolygonShape, SphereShape, DomeShape,
                                   UmbrellaShape, FrameShape, WindowShape, PointShape>;

struct PhotometricFile;

struct ModifierSettings {
    std::string name;  // of the kit, or the shape's name for one's own
    ModifierShape shape;
    double efficiency = 1.0;  // light out of the front over light out of the tube; not used with a construction
    std::optional<Construction> construction;              // none: the front shines evenly
    std::shared_ptr<const PhotometricFile> photometric{};  // its light over direction, where a file says it
};

// One reading of one's own unit: at this setting, in this modifier, a flat receptor on its axis read so much.
struct FlashCalibration {
    ModifierSettings modifier;
    int steps = 0;            // of the dial, from full
    double distance_m = 0.0;  // from the modifier's front
    double f_number = 0.0;    // exact
    double iso = 100.0;
    SourcePlace said_at;
};

// [flash.NAME]: a flash head as its owner knows it.
struct FlashHead {
    std::string name;
    double full_energy_j = 0.0;
    Dial dial;
    std::optional<double> efficacy_lms_per_j;  // of the tube; none: the stated default
    double modelling_lamp_lm = 0.0;            // 0: none, or off
    std::optional<FlashCalibration> calibration;
};

enum class SourceKind { kFlash, kContinuous };

// What the light's spectrum is: a colour temperature, or a CIE illuminant by name; and what is clipped before it.
struct LightColour {
    double kelvin = 5500.0;
    std::string illuminant;         // "" or a name known to spectrum/illuminant.h, e.g. "FL11"
    std::vector<std::string> gels;  // names known to spectrum/gel.h, one behind the other
};

struct LightSettings {
    std::string name;
    ModifierSettings modifier;
    Placement placement;
    SourceKind source = SourceKind::kFlash;
    LightColour colour;
    std::optional<std::size_t> flash;  // which of the setup's flash heads; none: some flash
    Power power;
    SourcePlace said_at;
};

// ---- things that only reflect -------------------------------------------------------------------------------------

enum class Metal { kSilver, kGold };
struct Reflectance {
    double value = 0.0;  // 0 … 0.98
};
// A cloth that light goes through: shares of the light that falls on it, 1 in all at most.
struct Cloth {
    double reflects = 0.0;   // scattered back evenly
    double transmits = 0.0;  // scattered evenly out of the other side
    double open = 0.0;       // passes between the threads without being turned
};
// Matt and coloured.
struct Tint {
    Spectrum reflectance;
};
// Painted in soft blotches of two tones.
struct Mottled {
    Spectrum first;
    Spectrum second;
    double scale_m = 0.5;  // a blotch and its neighbour
    unsigned seed = 0;
};
using Finish = std::variant<Reflectance, Metal, Cloth, Tint, Mottled>;

enum class PanelShape { kRectangle, kDisc };
inline constexpr double kUsualDisc = 1.1;  // metres across

struct PanelSettings {
    std::string name;
    Finish surface;
    PanelShape shape = PanelShape::kRectangle;
    double width_m = 1.0;   // of a disc, its diameter
    double height_m = 1.5;  // of a disc, its diameter
    Placement placement;
    SourcePlace said_at;
};

struct BackdropSettings {
    Finish surface;
    double distance_m = 1.5;  // behind the mark
    double width_m = 2.72;
    double height_m = 2.7;
    bool floor = true;  // swept onto the floor toward the camera
};

struct RoomSettings {
    double ambient_lx = 0.0;
    double ambient_kelvin = 4000.0;
    std::string ambient_illuminant;  // "", or a name known to spectrum/illuminant.h in place of kelvin
    std::optional<Double3> size_m;   // width, depth, height; none: no walls
    Finish walls = Reflectance{0.8};
    Finish ceiling = Reflectance{0.8};
    Finish floor = Reflectance{0.8};
};

// ---- all of it ----------------------------------------------------------------------------------------------------

struct Setup {
    std::string title;
    std::filesystem::path file;
    std::string text;  // the scene file as it was read, kept with a saved film
    PictureSettings picture;
    CameraSettings camera;
    SitterSettings sitter;
    std::vector<FlashHead> flashes;
    std::vector<LightSettings> lights;  // at least one; the first is the key
    std::vector<PanelSettings> panels;
    std::optional<BackdropSettings> backdrop;
    RoomSettings room;
};

// Where the program finds what it brings along.
struct Library {
    std::filesystem::path kit;        // *.toml, one modifier each
    std::filesystem::path heads;      // *.toml, one head's shape amounts each
    std::filesystem::path head_mesh;  // the folder that the asset step wrote: mesh, shapes, rig
    std::filesystem::path cache;      // the folder for modifiers once built; empty: nothing is kept
};

}  // namespace understudy
