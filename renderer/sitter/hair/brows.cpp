#include "sitter/hair/brows.h"

#include <algorithm>
#include <array>

#include "sitter/hair/chance.h"
#include "sitter/hair/front_relief.h"
#include "sitter/hair/shades.h"

namespace understudy {

namespace {

// A brow begins over the inner corner of the eye, is highest over the outer rim of the iris and ends past the outer
// corner, on a line from the nostril: drawing books and brow surgery agree; millimetres by eye. From the eye's middle,
// outward and up, with the brow's height there.
struct BrowKnot {
    float out, up, height;
};
constexpr std::array<BrowKnot, 7> kBrow{{{-0.0195F, 0.0206F, 0.0036F},
                                         {-0.0150F, 0.0214F, 0.0066F},
                                         {-0.0050F, 0.0230F, 0.0078F},
                                         {0.0060F, 0.0245F, 0.0074F},
                                         {0.0145F, 0.0250F, 0.0060F},
                                         {0.0210F, 0.0232F, 0.0040F},
                                         {0.0268F, 0.0202F, 0.0017F}}};
constexpr float kUsualRidge = 0.0190F;  // of the same face, where the skin looks straight forward
constexpr std::uint16_t kPoints = 6;

struct BrowMake {
    int count;
    float longest;
    float radius;
    float taller;
};

BrowMake make_of(BrowStyle style) {
    switch (style) {
        case BrowStyle::kThin:
            return {480, 0.0065F, 0.000034F, 0.70F};
        case BrowStyle::kFull:
            return {1200, 0.0100F, 0.000044F, 1.25F};
        case BrowStyle::kMedium:
        case BrowStyle::kNone:
            break;
    }
    return {900, 0.0080F, 0.000040F, 1.0F};
}

BrowKnot brow_at(float share) {
    const float place = share * static_cast<float>(kBrow.size() - 1);
    const auto i = std::min(static_cast<std::size_t>(place), kBrow.size() - 2);
    const float t = place - static_cast<float>(i);
    const BrowKnot& a = kBrow.at(i);
    const BrowKnot& b = kBrow.at(i + 1);
    return {a.out + t * (b.out - a.out), a.up + t * (b.up - a.up), a.height + t * (b.height - a.height)};
}

// Of the hairs in the middle, how many: as many as there is room for, and fewer at the nose, where a brow begins
// softly.
float density_at(float share) {
    constexpr float kFull = 0.0074F;  // metres high
    return std::min(1.0F, brow_at(share).height / kFull) * (0.3F + 0.7F * smooth(0.0F, 0.24F, share));
}

// How much higher or lower than usual this face's ridge is.
float ridge_shift(const FrontRelief& relief, const Vec3& eye, float outward) {
    float sum = 0.0F;
    int found = 0;
    for (const float out : {-0.008F, 0.0F, 0.008F, 0.014F}) {
        for (float up = 0.030F; up > 0.010F; up -= 0.0005F) {
            if (relief.normal(eye.x + outward * out, eye.y + up).y > -0.05F) continue;
            sum += up;
            ++found;
            break;
        }
    }
    return found == 0 ? 0.0F : std::clamp(sum / static_cast<float>(found) - kUsualRidge, -0.004F, 0.006F);
}

struct BrowGround {
    const FrontRelief& relief;
    Vec3 eye;
    float outward;
    float shift;
};

// off: from the brow's middle line, −1 … 1 of its half height.
void add_hair(Strands& strands, const BrowGround& ground, const BrowMake& make, float share, float off,
              std::uint32_t key, double grey) {
    const BrowKnot knot = brow_at(share);
    Vec2 place(ground.eye.x + ground.outward * knot.out,
               ground.eye.y + knot.up + ground.shift + 0.5F * make.taller * knot.height * off);
    // Upright at the nose, then outward; the upper edge's hairs lean down and the lower edge's up, and meet.
    const float upright = 1.25F - 1.35F * smooth(0.0F, 0.32F, share) - 0.55F * smooth(0.45F, 1.0F, share);
    const float angle = upright - 0.45F * off * smooth(0.05F, 0.3F, share) + 0.16F * swing(key, 5);
    Vec2 way(ground.outward * std::cos(angle), std::sin(angle));
    const float length = make.longest * (0.65F + 0.35F * chance(key, 6)) * (1.0F - 0.35F * smooth(0.7F, 1.0F, share)) *
                         (0.75F + 0.25F * smooth(0.0F, 0.2F, share));
    const float step = length / static_cast<float>(kPoints - 1);
    const float lift = 0.0002F + 0.0009F * chance(key, 7);
    const Vec3 root = ground.relief.at(place.x, place.y);
    if (!std::isfinite(root.z)) return;
    Strand strand{static_cast<std::uint32_t>(strands.points.size()), 0, shade_of(key, key, grey), StrandKind::kBrow};
    for (int k = 0; k < kPoints; ++k) {
        const float along = static_cast<float>(k) / static_cast<float>(kPoints - 1);
        const Vec3 skin = ground.relief.at(place.x, place.y);
        if (!std::isfinite(skin.z)) break;
        const Vec3 normal = ground.relief.normal(place.x, place.y);
        const float height = lift * 4.0F * along * (1.0F - 0.62F * along) - 0.0001F;
        const float radius = make.radius * (0.8F + 0.2F * chance(key, 8)) * (1.0F - 0.8F * along * along);
        strands.points.push_back({skin + height * normal, radius});
        ++strand.count;
        // Along the skin: a step that is as long on the slope.
        const float steep = std::max(0.35F, normal.z);
        place += step * steep * way;
        const float bend = -0.10F * ground.outward;
        way = glm::normalize(Vec2(way.x - bend * way.y, way.y + bend * way.x));
    }
    if (strand.count >= 2) {
        strands.strands.push_back(strand);
    } else {
        strands.points.resize(strand.first);
    }
}

}  // namespace

Strands grow_brows(const GrowingHead& head) {
    Strands strands;
    if (head.look.brows == BrowStyle::kNone) return strands;
    const HairPigment& hair = head.look.colour;
    // Darker than the hair, of fair people by much: common observation.
    strands.shades = shades_of({std::max(1.5, 1.6 * hair.eumelanin), 0.7 * hair.pheomelanin});
    const FrontRelief relief(head, {-0.075F, -0.005F}, {0.075F, 0.055F});
    const BrowMake make = make_of(head.look.brows);
    for (std::size_t e = 0; e < 2; ++e) {
        const Vec3& eye = head.eyes.at(e);
        const float outward = eye.x < 0.0F ? -1.0F : 1.0F;
        const BrowGround ground{relief, eye, outward, ridge_shift(relief, eye, outward)};
        for (int i = 0; i < make.count; ++i) {
            const std::uint32_t key =
                scrambled(static_cast<std::uint32_t>(i) + 400000U + 10000U * static_cast<std::uint32_t>(e));
            const float even = (static_cast<float>(i) + chance(key, 1)) / static_cast<float>(make.count);
            const float share = even + 0.06F * (1.0F - even) * (1.0F - even) * (2.0F * chance(key, 4) - 0.6F);
            if (share < 0.0F || chance(key, 9) > density_at(share)) continue;
            // Densest in the middle of its height.
            const float off = 0.62F * (swing(key, 2) + swing(key, 3));
            add_hair(strands, ground, make, share, off, key, 0.7 * head.look.grey);
        }
    }
    return strands;
}

}  // namespace understudy
