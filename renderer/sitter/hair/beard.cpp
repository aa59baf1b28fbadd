#include "sitter/hair/beard.h"

#include <algorithm>

#include "sitter/hair/chance.h"
#include "sitter/hair/scalp.h"
#include "sitter/hair/shades.h"

namespace understudy {

namespace {

// Beard hairs are fewer and thicker than the head's: 40 to 80 a square centimetre and about 0.1 mm. Common figures, no
// source.
struct BeardMake {
    double a_square_metre;
    float longest;
    float radius;
    int points;
    float stand;   // of the first direction, how much is away from the skin
    float settle;  // how far hairs lie down toward the tip
};

BeardMake make_of(BeardStyle style) {
    switch (style) {
        case BeardStyle::kStubble:
            return {0.75e6, 0.0014F, 0.000042F, 3, 0.55F, 0.0F};
        case BeardStyle::kShort:
            return {0.75e6, 0.0080F, 0.000045F, 6, 0.55F, 0.5F};
        case BeardStyle::kFull:
        case BeardStyle::kNone:
            break;
    }
    return {0.75e6, 0.0300F, 0.000048F, 10, 0.50F, 0.35F};
}

float lip_share(const Vec3& usual_place) {
    return smooth(-0.062F, -0.056F, usual_place.y) * (1.0F - smooth(0.028F, 0.034F, std::abs(usual_place.x)));
}

// Down over cheek and chin, outward over the lip, and on the neck a little back.
Vec3 beard_way(const Vec3& usual_place) {
    const float side = usual_place.x < 0.0F ? -1.0F : 1.0F;
    const float lip = lip_share(usual_place);
    const Vec3 down(0.08F * side, -1.0F, 0.10F);
    const Vec3 over_lip(side * (0.35F + 18.0F * std::abs(usual_place.x)), -0.75F, 0.0F);
    return glm::normalize(glm::mix(down, over_lip, lip));
}

void add_hair(Strands& strands, const GrowingHead& head, const BeardMake& make, const Root& root, float wider) {
    const Vec3 usual = root.place / head.size;
    const float varied = 0.75F + 0.5F * chance(root.key, 51);
    const float short_at = (1.0F - 0.55F * lip_share(usual)) * (0.35F + 0.65F * smooth(0.0F, 0.012F, root.inside));
    // A full beard is cut short on the cheeks and left on the chin.
    const float cheek = smooth(0.030F, 0.060F, std::abs(usual.x)) * smooth(0.008F, 0.020F, make.longest);
    const float length = make.longest * varied * short_at * (1.0F - 0.55F * cheek);
    const float step = length / static_cast<float>(make.points - 1);
    const Vec3 lie = beard_way(usual) + 0.25F * swing3(root.key, 52);
    const Vec3 flat = glm::normalize(lie - glm::dot(lie, root.normal) * root.normal);
    Vec3 way = glm::normalize(make.stand * root.normal + (1.0F - make.stand) * flat);
    Vec3 place = root.place - 0.0002F * root.normal;
    strands.strands.push_back({static_cast<std::uint32_t>(strands.points.size()),
                               static_cast<std::uint16_t>(make.points), shade_of(root.key, root.key, head.look.grey),
                               StrandKind::kBeard});
    const float radius = make.radius * wider * (0.8F + 0.4F * chance(root.key, 55));
    for (int k = 0; k < make.points; ++k) {
        const float share = static_cast<float>(k) / static_cast<float>(make.points - 1);
        strands.points.push_back({place, radius * (1.0F - 0.6F * share * share)});
        // Never back into the skin: it keeps a tenth of its stand.
        const Vec3 wanted = glm::normalize(beard_way(usual) + 0.25F * root.normal + 0.30F * swing3(root.key, 56));
        way = glm::normalize(glm::mix(way, wanted, make.settle * std::min(1.0F, 3.0F * share)));
        const float into = std::min(0.0F, glm::dot(way, root.normal) - 0.08F);
        way = glm::normalize(way - into * root.normal);
        place += step * way;
    }
}

}  // namespace

Strands grow_beard(const GrowingHead& head, const StrandDetail& detail) {
    Strands strands;
    if (head.look.beard == BeardStyle::kNone) return strands;
    const BeardMake make = make_of(head.look.beard);
    // Redder than the hair of the head: common observation.
    const HairPigment& hair = head.look.colour;
    strands.shades = shades_of({hair.eumelanin, hair.pheomelanin + 0.25});
    // So few that they may be drawn thinner than the hair of the head: wide ones look like quills.
    constexpr double kOfLeastWidth = 0.45;
    const double wider = std::max(1.0, kOfLeastWidth * detail.least_width_m / (2.0 * static_cast<double>(make.radius)));
    for (const Root& root :
         spread_roots(head, make.a_square_metre / wider, 0.012F, 900001U, inside_beard, may_be_beard)) {
        add_hair(strands, head, make, root, static_cast<float>(wider));
    }
    return strands;
}

}  // namespace understudy
