// Who sits there, and how.
#pragma once

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>

#include "base/geometry.h"
#include "scatter/iris_colour.h"
#include "setup/face_settings.h"
#include "setup/hair_settings.h"
#include "setup/source_place.h"
#include "setup/wardrobe_settings.h"

namespace understudy {

// Eyes turn 45° ± 7° aside, 28° ± 8° up and 47° ± 8° down from straight ahead (W. J. Lee and others, "Differences in
// eye movement range based on age and gaze direction", Eye 33, 2019, 1145: 261 people). Nobody looks farther than this.
inline constexpr double kFarthestGazeDeg = 50.0;

struct GazeAtCamera {};
struct GazeAtLight {
    std::string name;
};
struct GazeAngles {
    double across_deg = 0.0;  // relative to the face, positive = camera right
    double up_deg = 0.0;
};
// Out through the pupil: the angles on a globe whose pole is up, in the axes of the face.
inline Double3 gaze_direction(const GazeAngles& gaze) {
    const double across = radians(gaze.across_deg);
    const double up = radians(gaze.up_deg);
    return {std::sin(across) * std::cos(up), std::sin(up), std::cos(across) * std::cos(up)};
}

// The angles of a unit direction.
inline GazeAngles gaze_angles(const Double3& way) {
    return {degrees(std::atan2(way.x, way.z)), degrees(std::asin(std::min(1.0, std::max(-1.0, way.y))))};
}

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
    double shine = 0.5;             // of the skin's coat: 0 powdered, 1 glossy
};

// The widest opening that is offered, of what is natural: about 3 mm more between the lids.
inline constexpr double kWidestLids = 1.3;

// The eyes of somebody on a stool, and of a person standing: the mean stature of the US Army's survey of 2012, women
// and men alike, less the 11.4 cm from the eyes to the crown.
inline constexpr double kSeatedEyes = 1.25;
inline constexpr double kStandingEyes = 1.58;

struct SitterSettings {
    HeadChoice head;
    SourcePlace head_said_at;
    double eye_height_m = kSeatedEyes;
    FaceSettings face;  // what the head's own file says, but for what is asked for here
    ExpressionSettings expression;
    Double3 step_m{0.0};         // from the mark; stands, camera and their aims stay. Its y is 0.
    double body_deg = 0.0;       // of the trunk, positive = toward camera right
    double shoulders_deg = 0.0;  // positive = the shoulder on camera right is the lower one
    double turn_deg = 0.0;       // of the head, positive = toward camera right
    double chin_deg = 0.0;       // positive = up
    double lean_deg = 0.0;       // positive = toward camera right
    Gaze gaze = GazeAtCamera{};
    SkinSettings skin;
    ClothesSettings clothes;  // of a head of the library; others come as they are
    std::optional<GlassesSettings> glasses;
    std::optional<HatSettings> hat;
    HairSettings hair;
    std::optional<double> pupil_m;   // diameter as seen through the cornea; none: from the standing light
    std::optional<double> lids;      // how far open, of what is natural: 0 closed; none: the head's own
    std::optional<IrisColour> iris;  // none: the head's own
};

}  // namespace understudy
