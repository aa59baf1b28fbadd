// What the meter found around the sitter, as plain data: the backdrop in the frame, and warnings, each with its number.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/geometry.h"

namespace understudy {

// Mid-grey in linear light.
inline constexpr double kMidGrey = 0.18;

struct BackdropTone {
    Double3 position_m{0.0};
    double exposure_lxs = 0.0;  // on the paper, flat receptor facing along its normal, the sitter in place
    double standard_error_lxs = 0.0;
    double f_number = 0.0;
    double stops_from_face = 0.0;  // from the face's flat reading toward the key
    double linear = 0.0;           // luminance in the developed picture: 1 = a matt white in the metered light
    double stops_from_grey = 0.0;  // log2(linear / 0.18)
    bool clipped = false;          // a channel of the picture over 1
};

struct BackdropPlace {
    std::string place;  // "centre", "top-left", …
    Vec2 pixel{0.0F};
    std::string meets;      // what is there with the sitter away: "backdrop", something's name, "" for nothing
    std::string hidden_by;  // what of the sitter stands before it; "" when nothing does
    std::optional<BackdropTone> tone;  // where it is the backdrop
};

// In the order of importance: what can fall, what cannot stand, what spoils the picture, what costs light.
enum class WarningKind {
    kOverhead,        // number: cm from the sitter's top to the lowest part over it
    kBelowFloor,      // number: cm under the floor
    kCeiling,         // number: cm left under the ceiling, negative
    kOutsideRoom,     // number: cm beyond a wall
    kBehindBackdrop,  // number: cm that it reaches behind the backdrop
    kLensBlocked,     // number: % of the face's disc that the lens cannot see
    kInPicture,       // number: % of the frame; with a pixel box
    kIntoLens,      // number: degrees from the front's axis to the lens; also: stops on the lens from the key's reading
    kGaze,          // number: degrees from straight ahead that the eyes would have to turn; they stop sooner
    kGlassesGlare,  // number: % of the visible eye under the mirror image; also: stops of the veil from mid-grey
    kKeyCut,        // number: % of the key's front that the face cannot see for this thing
    kLightCut,      // the same for another light, once it is half or more
    kShadow,        // number: % of its light that the sitter's shadow takes from the backdrop; with a pixel box
    kAmbient,       // number: stops from the camera's exposure; also: stops that it adds
};

struct PixelBox {
    double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;  // from the picture's top left corner, edges included
};

struct Warning {
    WarningKind kind = WarningKind::kOverhead;
    std::string thing;  // the light, the panel, "camera", "ambient"
    double number = 0.0;
    std::optional<double> also;   // a second number, where the kind has one
    std::optional<PixelBox> box;  // where in the picture
    std::string by;               // what does it to the thing, where the kind has one
    // What would take a mirror image off the eye; none: nothing that was tried.
    std::optional<double> tip_deg{};  // of the glasses, plus brings their upper edge forward
    std::optional<double> raise_m{};  // of the thing
};

}  // namespace understudy
