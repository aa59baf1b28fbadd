// A head as its file and the wardrobe make it, before it is posed: what load_head fills and pose_head reads.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sitter/caruncle.h"
#include "sitter/head.h"
#include "sitter/landmarks.h"
#include "sitter/lids.h"
#include "sitter/skeleton.h"
#include "sitter/skin_map.h"
#include "sitter/skinned_mesh.h"
#include "sitter/tear_line.h"
#include "sitter/wardrobe/hat.h"

namespace understudy {

inline constexpr double kBallRadius = 0.1;
inline constexpr Double3 kChestFromEyes{0.0, -0.30, 0.0};  // of a head whose chest is unknown
inline constexpr Double3 kCrownFromEyes{0.0, 0.114, 0.0};

// Straight, in metres; the origin lies on the turning axis at the height of the eyes.
class Head {
  public:
    Sitter::Kind kind = Sitter::Kind::kNobody;
    SkinnedMesh mesh;
    BonePivots pivots{};
    std::optional<std::array<Double3, 2>> eyes;
    std::optional<std::array<LidRegion, 2>> lids;
    std::array<Caruncle, 2> caruncles;  // when there are lids
    std::vector<TearLine> tear_lines;   // two, when there are lids
    double lids_open = 1.0;             // of what is natural
    IrisColour iris = IrisColour::kBrown;
    std::optional<SkinPlaces> places;
    std::vector<SkinCast> casts;        // one a position
    std::vector<SpectacleLens> lenses;  // of glasses
    std::optional<HatBand> hat;
    Double3 face{0.0};  // between the eyes
    Double3 chest = kChestFromEyes;
    Double3 crown = kCrownFromEyes;
    double melanin = 0.02;
    double blood = 0.02;
    HairLook hair;
};

}  // namespace understudy
