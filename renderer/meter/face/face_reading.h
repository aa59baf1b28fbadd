// What the lights do on the face, in the trade's words: the key's pattern, the nose's shadow and its edge, the
// triangle, the forehead's highlight, the fill's own shadow, and how light falls off. Plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace understudy {

enum class LightPattern {
    kFlat,       // no shadow of the nose to speak of
    kButterfly,  // it falls straight down
    kLoop,       // it falls to the side, and skin beyond it is lit
    kRembrandt,  // it closes with the cheek's shadow and leaves part of the far cheek lit above
    kSplit,      // the far cheek is dark
    kRim,        // the near cheek is dark as well: the light comes from behind
};

// Of the nose, on skin that is not the nose's.
struct NoseShadow {
    double area_m2 = 0.0;        // as the camera sees it
    double length_m = 0.0;       // from the nose's tip to the place farthest from the light, across the face's front
    double from_down_deg = 0.0;  // of its middle from the tip: 0 straight down, positive to the face's own right
    double to_lip = 0.0;  // how far its lowest place is on the way from the nose's base (0) to the upper lip's red (1)
    bool closed = false;  // it meets the cheek's shadow: no lit skin beyond it
};

// What is left lit on the far cheek where the shadows close.
struct CheekTriangle {
    double area_m2 = 0.0;
    double width_m = 0.0;
    double length_m = 0.0;
    double of_eye_width = 0.0;    // the classical one is no wider than the eye: 1
    double of_nose_length = 0.0;  // and no longer than the nose
};

enum class LitSide { kFaceOn, kBroad, kShort };

struct PatternReading {
    LightPattern pattern = LightPattern::kFlat;
    double across_deg = 0.0;  // of the light's middle, from the face's own front, positive camera right
    double up_deg = 0.0;
    LitSide side = LitSide::kFaceOn;  // broad: the side of the face that the camera sees more of is lit
    double near_cheek_lit = 0.0;      // shares of the cheeks that the light reaches, near and far as the light has them
    double far_cheek_lit = 0.0;
    std::optional<NoseShadow> nose;         // none where there is none
    std::optional<CheekTriangle> triangle;  // only where the shadows close
};

// Where the pattern changes when the key alone is moved, its distance kept.
struct NextPattern {
    LightPattern pattern = LightPattern::kFlat;
    double swing_deg = 0.0;  // round the sitter, positive toward camera right; 0 when it is raised or lowered
    double raise_m = 0.0;    // of the front's middle; 0 when it is swung
};

// The sheen on the forehead, of the key alone.
struct ForeheadHighlight {
    double peak_stops = 0.0;  // skin and sheen together over the skin alone, where the sheen is strongest
    double area_m2 = 0.0;     // as the camera sees it, of what has at least half of the strongest sheen
};

// A second light's own shadow of the nose.
struct FillShadow {
    std::string light;
    double stops = 0.0;  // how much lighter it would be there without the nose in this light's way
    bool visible = false;
};

struct KeyFallOff {
    double width_over_distance = 0.0;  // of the front as the face sees it
    double height_over_distance = 0.0;
    double across_face_stops = 0.0;  // lost over 14 cm on from the face, away from the light
    double to_chest_stops = 0.0;     // from the face to the chest, each facing the light
    double nearer_m = 0.0;           // how far the sitter may move toward the light, and away, within a third of a stop
    double farther_m = 0.0;
};

struct FaceReading {
    std::optional<PatternReading> pattern;  // none where the camera sees too little of a cheek
    std::vector<NextPattern> next;          // the nearest first
    std::string
        clamshell_with;  // under a key from the front, what shows a second catchlight below; "" when nothing does
    std::optional<double> nose_edge_m;  // how wide the edge of the nose's shadow is
    std::optional<ForeheadHighlight> highlight;
    std::vector<FillShadow> fill_shadows;  // of the lights but the key that throw one
    KeyFallOff fall_off;
};

}  // namespace understudy
