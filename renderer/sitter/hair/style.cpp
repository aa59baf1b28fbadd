#include "sitter/hair/style.h"

#include <algorithm>

#include "sitter/hair/chance.h"

namespace understudy {

namespace {

constexpr Vec3 kWhorl{0.012F, 0.108F, -0.125F};  // natural hair lies away from it
constexpr Vec3 kTie{0.0F, -0.004F, -0.176F};     // of hair that is tied back
constexpr float kTieReach = 0.020F;
constexpr float kTailRadius = 0.016F;
constexpr Vec3 kRoundMiddle{0.0F, 0.042F, -0.092F};  // of an afro's outline
constexpr Vec3 kRoundSize{0.122F, 0.130F, 0.128F};

constexpr float kFringeCut = 0.0195F;  // just over the lids: on the brows
constexpr float kBobCut = -0.088F;     // between lips and chin
constexpr float kLongCut = -0.300F;

constexpr float kTemple = 54.0F;  // degrees round the skull: hair that is worn off the face lies behind it

constexpr float kTempleSpread = 14.0F;
constexpr float kFringeTemple = 43.0F;  // a fringe runs on into hair before the temples

// Parts, to the sitter's left of the middle.
constexpr float kSidePart = 0.034F;
constexpr float kBobPart = 0.012F;
constexpr float kLongPart = -0.006F;

float side_of(float x) { return x < 0.0F ? -1.0F : 1.0F; }

// Away from the whorl: forward over the top, down the sides and the back.
Vec3 natural_way(const Vec3& place) {
    const Vec3 away = place - kWhorl;
    const Vec3 swirl = 0.25F * glm::cross(Vec3(0.0F, 1.0F, 0.0F), away);
    return glm::normalize(away + swirl + Vec3(0.0F, -0.03F, 0.0F));
}

// Near a part hair goes more back than aside: the skin of the part is hidden by what grows before it.
Vec3 off_the_part(float off, float reach, const Vec3& far) {
    return glm::mix(Vec3(0.0F, 0.10F, -1.0F), far, glm::mix(0.25F, 1.0F, smooth(0.0F, reach, std::abs(off))));
}

// Over the top to the side, then straight down, and off the face. Behind the crown there is no part.
Vec3 parted(const HairLook& look, const Vec3& place, float part, float side, const Vec3& to_the_side, float own) {
    constexpr float kDownFrom = 0.106F;
    const float low = 1.0F - smooth(kDownFrom - 0.045F, kDownFrom, place.y);
    const Vec3 top = off_the_part(place.x - part, 0.025F, {side * to_the_side.x, to_the_side.y, to_the_side.z});
    const Vec3 over = glm::mix(top, natural_way(place), smooth(0.10F, 0.14F, -place.z));
    const float before = smooth(-0.055F, -0.010F, place.z);
    // Below the ears it comes in toward the neck, and goes before the shoulders or behind them.
    const float beside = smooth(0.030F, 0.070F, std::abs(place.x)) * smooth(0.020F, 0.080F, -place.y);
    const float ahead = smooth(0.080F, 0.140F, -place.y) * (place.z > -0.075F ? 1.0F : -1.0F);
    const Vec3 down(side * (0.15F * before - 0.45F * beside), -1.0F, -0.12F - 0.45F * before + 1.4F * ahead);
    const Vec3 around(side * (place.z - kSkullMiddle.z), 0.0F, -std::abs(place.x));
    const Vec3 aside = glm::normalize(around) + Vec3(0.0F, -0.25F, 0.0F);
    return glm::normalize(glm::mix(glm::mix(over, down, low), aside, before_face(look, place, own)));
}

// A short side part, swept over from the sitter's left and off the brow; the sides lie down and back.
Vec3 side_parted(const Vec3& place, float side) {
    const Vec3 far = side > 0.0F ? Vec3(0.8F, -0.5F, -0.45F) : Vec3(-0.85F, 0.05F, -0.40F);
    const Vec3 swept = off_the_part(place.x - kSidePart, 0.040F, far);
    const Vec3 over = glm::mix(swept, natural_way(place), smooth(0.095F, 0.125F, -place.z));
    const Vec3 down(0.0F, -1.0F, -0.45F);
    const float high = std::max(smooth(0.068F, 0.100F, place.y), 1.0F - smooth(38.0F, 56.0F, turn_of(place)));
    return glm::normalize(glm::mix(down, over, high));
}

Vec3 toward_tie(const Vec3& place, float uneven) {
    const Vec3 gap = kTie - place;
    if (glm::dot(gap, gap) < kTieReach * kTieReach || (place.z < kTie.z + 0.004F && place.y < kTie.y + 0.01F)) {
        // The tail: together round a line that hangs from the tie.
        const Vec3 to_line(-place.x, 0.0F, kTie.z - 0.022F - place.z);
        const float off = glm::length(to_line);
        const float outside = std::max(0.0F, off - kTailRadius * (0.3F + 0.7F * uneven)) / std::max(off, 1e-6F);
        return glm::normalize(Vec3(0.0F, -1.0F, -0.05F) + 40.0F * outside * to_line);
    }
    return glm::normalize(gap);
}

}  // namespace

float before_face(const HairLook& look, const Vec3& place, float own) {
    const float height = smooth(-0.150F, -0.110F, place.y) * (1.0F - smooth(0.072F, 0.090F, place.y));
    const float temple = (look.fringe ? kFringeTemple : kTemple) + kTempleSpread * (own - 0.5F);
    return height * (1.0F - smooth(temple - 16.0F, temple, turn_of(place)));
}

float cling_of(const HairLook& look, const Vec3& place, bool fringe) {
    if (fringe) return 0.30F * smooth(0.025F, 0.040F, place.y);
    switch (look.style) {
        case HairStyle::kSidePart:
            return 0.45F;
        case HairStyle::kBob:
        case HairStyle::kLong:
            return 0.35F * std::max(smooth(0.040F, 0.090F, place.y), before_face(look, place, 0.5F));
        case HairStyle::kTiedBack:
            return 0.5F * smooth(1.5F * kTieReach, 3.0F * kTieReach, glm::distance(place, kTie)) *
                   smooth(-0.05F, -0.02F, place.y);
        default:
            return 0.0F;
    }
}

HairMake make_of(HairStyle style) {
    switch (style) {
        case HairStyle::kNone:
            break;
        case HairStyle::kShaved:
            return {.lift = 0.0F,
                    .stand = 0.75F,
                    .weight = 0.0F,
                    .locks = 0.0,
                    .hold = 0.0F,
                    .wave = 0.0F,
                    .stray = 0.0F,
                    .points = 3};
        case HairStyle::kCropped:
            return {.stand = 0.62F,
                    .bend = 0.022F,
                    .weight = 0.0F,
                    .locks = 60000.0,
                    .hold = 0.25F,
                    .wave = 0.0005F,
                    .points = 7};
        case HairStyle::kSidePart:
            return {.lift = 0.008F, .stand = 0.50F, .bend = 0.010F, .weight = 0.6F, .hold = 0.45F, .stray = 0.02F};
        case HairStyle::kBob:
            return {.lift = 0.010F,
                    .stand = 0.36F,
                    .bend = 0.013F,
                    .weight = 1.8F,
                    .locks = 26000.0,
                    .hold = 0.45F,
                    .wave = 0.0020F,
                    .stray = 0.025F,
                    .points = 26};
        case HairStyle::kLong:
            return {.lift = 0.010F,
                    .stand = 0.36F,
                    .bend = 0.013F,
                    .weight = 1.8F,
                    .locks = 18000.0,
                    .hold = 0.55F,
                    .wave = 0.0040F,
                    .stray = 0.025F,
                    .points = 36};
        case HairStyle::kTiedBack:
            return {.lift = 0.004F,
                    .stand = 0.22F,
                    .bend = 0.012F,
                    .weight = 0.0F,
                    .locks = 36000.0,
                    .hold = 0.30F,
                    .wave = 0.0006F,
                    .stray = 0.02F,
                    .points = 34};
        case HairStyle::kCurly:
            return {.lift = 0.020F,
                    .stand = 0.70F,
                    .bend = 0.024F,
                    .weight = 1.5F,
                    .locks = 15000.0,
                    .hold = 0.75F,
                    .curl = 0.0060F,
                    .wave = 0.0050F,
                    .fine = 52};
        case HairStyle::kAfro:
            return {.lift = 0.0F,
                    .stand = 1.0F,
                    .bend = 0.200F,
                    .weight = 0.0F,
                    .locks = 60000.0,
                    .hold = 0.60F,
                    .curl = 0.0021F,
                    .curl_length = 0.0085F,
                    .wave = 0.0030F,
                    .stray = 0.05F,
                    .points = 8,
                    .fine = 64};
    }
    return {};
}

bool in_fringe(const Vec3& root, float own) {
    const float back = -0.048F - 0.030F * own;
    return root.z > back && root.y > 0.055F && std::abs(root.x) < 0.056F + 0.012F * own;
}

float length_of(const HairLook& look, const Root& root, const Vec3& usual_root, bool fringe) {
    const float top = smooth(0.030F, 0.085F, usual_root.y);
    // Hair is young and short at its edge.
    const float edge = 0.4F + 0.6F * smooth(0.0F, 0.010F, root.inside);
    if (fringe && look.style != HairStyle::kCropped) return 0.16F;
    switch (look.style) {
        case HairStyle::kNone:
            return 0.0F;
        case HairStyle::kShaved:
            return 0.0018F;
        case HairStyle::kCropped: {
            const float crop = 0.0045F + 0.0135F * top;
            const float middle = 1.0F - smooth(0.030F, 0.062F, std::abs(usual_root.x));
            const float front = look.fringe ? middle * top * smooth(-0.130F, -0.060F, usual_root.z) : 0.0F;
            return edge * (fringe ? 0.036F : glm::mix(crop, 0.034F, front));
        }
        case HairStyle::kSidePart:
            return edge * (0.013F + 0.040F * smooth(0.066F, 0.108F, usual_root.y));
        case HairStyle::kBob:
            return 0.34F;
        case HairStyle::kLong:
            return 0.52F;
        case HairStyle::kTiedBack:
            return 0.24F + 0.24F * chance(root.key, 31) * chance(root.key, 31) +
                   0.17F * smooth(-0.16F, 0.0F, usual_root.z);
        case HairStyle::kCurly:
            return 0.070F + 0.035F * top;
        case HairStyle::kAfro:
            return 0.20F;
    }
    return 0.0F;
}

Vec3 combed(const HairLook& look, const Vec3& place, const Vec3& usual_root, bool fringe, float own) {
    if (fringe) return glm::normalize(Vec3(1.6F * usual_root.x, -0.6F, place.y > 0.075F ? 1.0F : 0.15F));
    // No part is quite straight, and hairs of both sides cross over it: else a strip of skin a centimetre wide shows,
    // for it takes that long until hairs that leave it lie close enough to hide what is under them.
    // In short hair longer still.
    const float strayed = (look.style == HairStyle::kSidePart ? 0.0160F : 0.0080F) * (2.0F * own - 1.0F);
    switch (look.style) {
        case HairStyle::kSidePart:
            return side_parted(place, side_of(usual_root.x - kSidePart - strayed));
        case HairStyle::kBob:
            return parted(look, place, kBobPart, side_of(usual_root.x - kBobPart - strayed), {1.0F, -0.25F, -0.25F},
                          own);
        case HairStyle::kLong:
            return parted(look, place, kLongPart, side_of(usual_root.x - kLongPart - strayed), {1.0F, -0.25F, -0.32F},
                          own);
        case HairStyle::kTiedBack:
            return toward_tie(place, own);
        case HairStyle::kAfro:
            return glm::normalize(place - kRoundMiddle);
        case HairStyle::kNone:
        case HairStyle::kShaved:
        case HairStyle::kCropped:
            break;
        case HairStyle::kCurly: {
            // Off the brow, up and to the sides.
            const float before = smooth(-0.075F, -0.02F, usual_root.z) * smooth(0.02F, 0.06F, usual_root.y);
            const Vec3 up(side_of(usual_root.x) * 0.4F + 6.0F * usual_root.x, 0.45F, -0.90F);
            return glm::normalize(glm::mix(natural_way(place), up, before));
        }
    }
    return natural_way(place);
}

bool cut_off(const HairLook& look, const Vec3& place, bool fringe, float uneven) {
    if (fringe) return place.y < kFringeCut + 0.0025F * uneven && place.z > -0.03F;
    switch (look.style) {
        case HairStyle::kBob:
            return place.y < kBobCut + 0.004F * uneven;
        case HairStyle::kLong: {
            // Hair lies before a shoulder or behind it; what would slide out over its top is left off.
            const bool over_shoulder = place.y < -0.105F && std::abs(place.x) > 0.092F + 0.010F * uneven;
            return over_shoulder || place.y < kLongCut + 0.030F * uneven;
        }
        case HairStyle::kAfro: {
            const Vec3 out = (place - kRoundMiddle) / kRoundSize;
            return glm::dot(out, out) > 1.0F + 0.05F * uneven;
        }
        default:
            return false;
    }
}

}  // namespace understudy
