#include "sitter/hair/style.h"

#include <algorithm>

#include "sitter/hair/chance.h"

namespace understudy {

namespace {

constexpr Vec3 kWhorl{0.012F, 0.108F, -0.125F};  // natural hair lies away from it
constexpr Vec3 kTie{0.0F, -0.004F, -0.176F};     // of hair that is tied back
constexpr float kTieReach = 0.020F;
constexpr float kTailRadius = 0.016F;
constexpr Vec3 kRoundMiddle{0.0F, 0.040F, -0.082F};  // of an afro's outline
constexpr Vec3 kRoundSize{0.150F, 0.160F, 0.158F};

constexpr float kFringeCut = 0.0195F;  // just over the lids: on the brows
constexpr float kBobCut = -0.088F;     // between lips and chin
constexpr float kLongCut = -0.300F;

float side_of(float x) { return x < 0.0F ? -1.0F : 1.0F; }

// Away from the whorl: forward over the top, down the sides and the back.
Vec3 natural_way(const Vec3& place) {
    const Vec3 away = place - kWhorl;
    const Vec3 swirl = 0.25F * glm::cross(Vec3(0.0F, 1.0F, 0.0F), away);
    return glm::normalize(away + swirl + Vec3(0.0F, -0.03F, 0.0F));
}

// Over the top to the side, then straight down. Hair at the brow and the temples is brushed off the face.
Vec3 parted(const Vec3& place, float part, const Vec3& to_the_side, float down_from) {
    const float side = side_of(place.x - part);
    const float low = 1.0F - smooth(down_from - 0.045F, down_from, place.y);
    const float before = smooth(-0.055F, -0.010F, place.z);
    const Vec3 top(side * to_the_side.x, to_the_side.y, to_the_side.z);
    const Vec3 down(0.15F * side * before, -1.0F, -0.12F - 0.45F * before);
    return glm::normalize(glm::mix(top, down, low));
}

// A short side part, swept over from the sitter's left.
Vec3 side_parted(const Vec3& place, float part) {
    if (place.z < -0.115F) return natural_way(place);
    const Vec3 swept = place.x > part ? Vec3(0.8F, -0.4F, -0.35F) : Vec3(0.85F, -0.10F, -0.40F);
    return parted(place, part, swept, 0.095F);
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

HairMake make_of(HairStyle style) {
    HairMake make;
    switch (style) {
        case HairStyle::kNone:
            break;
        case HairStyle::kShaved:
            return {0.0F, 0.75F, 0.02F, 0.0F, 0.0, 0.0F, 0.0F, 0.03F, 0.0F, 0.0F, 3, 0};
        case HairStyle::kCropped:
            return {0.006F, 0.62F, 0.022F, 0.0F, 60000.0, 0.25F, 0.0F, 0.03F, 0.0005F, 0.03F, 7, 0};
        case HairStyle::kSidePart:
            return {0.012F, 0.62F, 0.013F, 0.5F, 40000.0, 0.45F, 0.0F, 0.03F, 0.0010F, 0.02F, 16, 0};
        case HairStyle::kBob:
            return {0.010F, 0.36F, 0.013F, 1.8F, 26000.0, 0.45F, 0.0F, 0.03F, 0.0020F, 0.025F, 26, 0};
        case HairStyle::kLong:
            return {0.010F, 0.36F, 0.013F, 1.8F, 18000.0, 0.55F, 0.0F, 0.03F, 0.0040F, 0.025F, 36, 0};
        case HairStyle::kTiedBack:
            return {0.004F, 0.22F, 0.012F, 0.0F, 36000.0, 0.30F, 0.0F, 0.03F, 0.0006F, 0.02F, 34, 0};
        case HairStyle::kCurly:
            return {0.030F, 0.85F, 0.040F, 0.9F, 15000.0, 0.75F, 0.0065F, 0.030F, 0.0060F, 0.03F, 16, 52};
        case HairStyle::kAfro:
            return {0.000F, 1.00F, 0.200F, 0.0F, 60000.0, 0.60F, 0.0021F, 0.0085F, 0.0030F, 0.05F, 8, 64};
    }
    return make;
}

bool in_fringe(const Vec3& root) { return root.z > -0.052F && root.y > 0.055F && std::abs(root.x) < 0.062F; }

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
        case HairStyle::kCropped:
            return edge * (fringe ? 0.036F : 0.0045F + 0.0135F * top);
        case HairStyle::kSidePart:
            return edge * (0.016F + 0.056F * top);
        case HairStyle::kBob:
            return 0.34F;
        case HairStyle::kLong:
            return 0.52F;
        case HairStyle::kTiedBack:
            return 0.24F + 0.24F * chance(root.key, 31) * chance(root.key, 31) +
                   0.17F * smooth(-0.16F, 0.0F, usual_root.z);
        case HairStyle::kCurly:
            return 0.11F + 0.05F * top;
        case HairStyle::kAfro:
            return 0.20F;
    }
    return 0.0F;
}

Vec3 combed(const HairLook& look, const Vec3& place, const Vec3& usual_root, bool fringe, float own) {
    if (fringe) return glm::normalize(Vec3(1.6F * usual_root.x, -0.5F, place.z < 0.012F ? 1.0F : 0.05F));
    // No part is quite straight, and hairs of both sides cross over it.
    const float strayed = 0.0045F * (2.0F * own - 1.0F);
    switch (look.style) {
        case HairStyle::kSidePart:
            return side_parted(place, 0.034F + strayed);
        case HairStyle::kBob:
            return parted(place, 0.012F + strayed, {1.0F, -0.25F, -0.25F}, 0.106F);
        case HairStyle::kLong:
            return parted(place, -0.006F + strayed, {1.0F, -0.25F, -0.32F}, 0.106F);
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
            const Vec3 up(side_of(usual_root.x) * 0.4F + 6.0F * usual_root.x, 0.45F, -0.55F);
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
        case HairStyle::kLong:
            return place.y < kLongCut + 0.030F * uneven;
        case HairStyle::kAfro: {
            const Vec3 out = (place - kRoundMiddle) / kRoundSize;
            return glm::dot(out, out) > 1.0F + 0.05F * uneven;
        }
        default:
            return false;
    }
}

}  // namespace understudy
