// What grows on the sitter's head, as a scene file or a head's own file says it.
#pragma once

#include <optional>

#include "scatter/hair_fibre.h"

namespace understudy {

enum class HairStyle { kNone, kShaved, kCropped, kSidePart, kBob, kLong, kTiedBack, kCurly, kAfro };
enum class BeardStyle { kNone, kStubble, kShort, kFull };
enum class BrowStyle { kNone, kThin, kMedium, kFull };

// What is said; the rest is left as it was.
struct HairSettings {
    std::optional<HairStyle> style;
    std::optional<bool> fringe;
    std::optional<HairPigment> colour;
    std::optional<double> grey;  // share of hairs without pigment, 0 … 1
    std::optional<BeardStyle> beard;
    std::optional<BrowStyle> brows;
};

// Whether the style has hair over the brow that a fringe could be cut of.
inline bool takes_fringe(HairStyle style) {
    return style != HairStyle::kNone && style != HairStyle::kShaved && style != HairStyle::kAfro;
}

// What grows there.
struct HairLook {
    HairStyle style = HairStyle::kNone;
    bool fringe = false;
    HairPigment colour;
    double grey = 0.0;
    BeardStyle beard = BeardStyle::kNone;
    BrowStyle brows = BrowStyle::kMedium;

    // A fringe that is not spoken of goes with the hair that it was cut of.
    HairLook changed(const HairSettings& by) const {
        const HairStyle now = by.style.value_or(style);
        return {now,
                by.fringe.value_or(fringe && takes_fringe(now)),
                by.colour.value_or(colour),
                by.grey.value_or(grey),
                by.beard.value_or(beard),
                by.brows.value_or(brows)};
    }
};

}  // namespace understudy
