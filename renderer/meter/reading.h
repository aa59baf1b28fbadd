// What the meter found, as plain data: the report's content before anyone prints it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/geometry.h"
#include "meter/colour_reading.h"
#include "meter/dial_reading.h"
#include "meter/eye_sight.h"
#include "meter/face/face_reading.h"
#include "meter/surroundings.h"

namespace understudy {

enum class Receptor { kFlat, kDome };
enum class Facing { kCamera, kKey, kSurface };

struct LightReading {
    std::string light;
    double exposure_lxs = 0.0;
    double standard_error_lxs = 0.0;
    double f_number = 0.0;
};

struct Reading {
    std::string point;  // "face", "forehead", …
    Receptor receptor = Receptor::kFlat;
    Facing facing = Facing::kCamera;
    Double3 position_m{0.0};
    Double3 normal{0.0, 0.0, 1.0};
    double exposure_lxs = 0.0;  // lights and ambient together
    double standard_error_lxs = 0.0;
    double f_number = 0.0;
    // What of it touched the backdrop on its way, and what came from the room: by its walls, floor or ceiling, or as
    // its ambient light. Light that did both is in both.
    double by_backdrop_lxs = 0.0;
    double by_backdrop_error_lxs = 0.0;  // standard errors
    double by_room_lxs = 0.0;
    double by_room_error_lxs = 0.0;
    double stops_from_camera = 0.0;      // over the camera's aperture; −infinity in the dark
    std::vector<LightReading> by_light;  // the scene's lights in order, then "ambient" when there is any
};

// Key and fill as the trade counts them. Two places, because both are in use: the two cheeks as they are lit, and the
// face point with the dome toward the camera, key alone against all that is not the key.
struct Ratio {
    double key_to_fill = 0.0;       // the brighter cheek over the darker, all lights on: (K + F) : F as it shows
    double stops = 0.0;             // the same in stops, log2
    std::string lit_cheek;          // "camera-left" or "camera-right"
    double face_key_to_fill = 0.0;  // K : F
    double face_key_and_fill_to_fill = 0.0;  // (K + F) : F
};

struct Catchlight {
    std::string eye;    // "camera-left", "camera-right"
    std::string light;  // or the panel's name
    bool is_panel = false;
    double clock_deg = 0.0;      // clockwise from 12 as seen in the picture
    Vec2 offset_in_iris{0.0F};   // from the iris centre, in iris radii, right and up as seen
    Vec2 pixel{0.0F};            // from the picture's top left corner
    double width_in_iris = 0.0;  // of the whole mirror image, in iris radii
    double height_in_iris = 0.0;
    double visible = 0.0;          // share of the mirror image that is on the cornea and neither hidden nor blocked
    std::string hidden_by;         // what takes the largest share away; "" when nothing does
    std::vector<Taken> hidden;     // all that takes some of it, the largest first
    double stops_over_iris = 0.0;  // its luminance over the iris's; −infinity when nothing of it shows
};

enum class EyeVerdict { kDark, kDim, kLit };

// Less of a light's front than this seen from an eye, and no light of it reaches there; less of its mirror image than
// this, and the eye does not show it. Chosen.
inline constexpr double kLeastSeen = 0.05;
inline constexpr double kLeastShown = 0.05;

// What of one light becomes of one eye. The two faults have different remedies.
enum class EyeFault {
    kNone,
    kNoLight,       // it does not reach the eye
    kNoReflection,  // it does, and its mirror image is hidden
};

struct EyeLight {
    std::string light;
    EyeSight sight;
    double exposure_lxs = 0.0;      // on the iris, of this light alone
    double stops_from_cheek = 0.0;  // against the same light's exposure on the brighter cheek; −infinity without any
    EyeFault fault = EyeFault::kNone;
};

struct EyeReading {
    std::string eye;
    double exposure_lxs = 0.0;
    double standard_error_lxs = 0.0;
    double stops_from_cheek = 0.0;
    EyeVerdict verdict = EyeVerdict::kDark;
    std::vector<EyeLight> lights;  // the scene's lights in order
    Double3 cornea_centre_m{0.0};
    Double3 iris_centre_m{0.0};
    Double3 axis{0.0, 0.0, 1.0};
};

enum class EfficacyFrom { kUsual, kTold, kReading };

struct LightPower {
    std::string light;
    double lumens = 0.0;  // continuous: lm; flash: lm·s
    bool flash = true;
    double energy_j = 0.0;            // flash: what the pack is set to, by the kit's efficacy
    double f_number = 0.0;            // its own reading at the face, square to it, nothing of the sitter in the way
    double efficacy_lms_per_j = 0.0;  // flash: of the tube
    EfficacyFrom efficacy_from = EfficacyFrom::kUsual;
    double modifier_efficiency = 1.0;         // light out of the modifier over light out of the tube
    double lux = 0.0;                         // continuous: at the face
    std::optional<DialReading> dial{};        // of a flash head that the scene describes
    std::optional<double> modelling_stops{};  // its modelling lamp's light against its flash, while the shutter is open
};

enum class PupilFrom { kUsual, kTold, kStandingLight };

struct PupilReading {
    double diameter_mm = 0.0;     // as seen through the cornea
    double illuminance_lx = 0.0;  // at the eyes, from what is on all the time
    PupilFrom from = PupilFrom::kUsual;
};

// The head against the backdrop, along its outline in the picture.
struct OutlinePlace {
    double clock_deg = 0.0;  // clockwise from 12, seen from the middle of the head
    Vec2 pixel{0.0F};
    double edge = 0.0;    // linear luminance just inside the outline: 1 = a matt white in the metered light
    double beyond = 0.0;  // and just outside
    double stops = 0.0;   // log2(edge / beyond): over 0 the edge is the brighter
};
struct Outline {
    std::vector<OutlinePlace> places;  // clockwise
    double median_stops = 0.0;
    OutlinePlace weakest;  // where edge and backdrop are nearest to each other
};

struct MeterReport {
    std::string title;
    Double3 camera_position_m{0.0};
    Double3 camera_aim_m{0.0};
    double aperture = 4.0;
    double shutter_s = 0.005;
    double iso = 200.0;
    double ev100 = 0.0;
    std::vector<LightPower> powers;
    std::vector<ColourReading> colours;
    std::vector<Reading> readings;
    std::optional<Ratio> ratio;  // none without cheeks, or without any fill
    double ambient_lxs = 0.0;
    double ambient_stops_from_camera = 0.0;
    std::optional<std::vector<Catchlight>> catchlights;  // none without eyes
    std::optional<std::vector<EyeReading>> eyes;
    std::optional<FaceReading> face;                     // none without eyes, nose and lips
    std::optional<PupilReading> pupil;                   // none without eyes
    std::optional<std::vector<BackdropPlace>> backdrop;  // none without one
    std::optional<Outline> outline;                      // none without a head, or where none of it is in the frame
    std::optional<Double3> room_size_m;                  // none without walls
    std::vector<Warning> warnings;                       // the most important first
};

}  // namespace understudy
