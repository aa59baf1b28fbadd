#include "sitter/head.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <glm/gtc/matrix_transform.hpp>
#include <utility>

#include "setup/head_file.h"
#include "sitter/caruncle.h"
#include "sitter/eye.h"
#include "sitter/eye_set.h"
#include "sitter/face_shapes.h"
#include "sitter/landmarks.h"
#include "sitter/lids.h"
#include "sitter/own_mesh.h"
#include "sitter/skeleton.h"
#include "sitter/skin_map.h"
#include "sitter/socket.h"
#include "sitter/tear_line.h"
#include "sitter/wardrobe/clothes.h"
#include "sitter/wardrobe/glasses.h"
#include "sitter/wardrobe/hat.h"

namespace understudy {

namespace {

constexpr int kSubdivisions = 2;
constexpr double kBallRadius = 0.1;
constexpr double kSquintCloses = 0.5;               // of the lids' opening, at its most. Common observation, no source.
constexpr Double3 kChestFromEyes{0.0, -0.30, 0.0};  // of a head whose chest is unknown
constexpr Double3 kCrownFromEyes{0.0, 0.114, 0.0};

}  // namespace

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

namespace {

// The package's eyeball is larger and flatter than a real one, and its lids were made for it. Ours stands a little
// before the front of that one, so that the lids lie round it and do not hang over it like a blind.
constexpr double kEyeForward = 0.0016;

Double3 eye_centre(const EyeMarks& marks, const std::vector<Double3>& positions) {
    Double3 low = positions[marks.eyeball.front()];
    Double3 high = low;
    for (const auto v : marks.eyeball) {
        low = glm::min(low, positions[v]);
        high = glm::max(high, positions[v]);
    }
    return {0.5 * (low.x + high.x), 0.5 * (low.y + high.y), high.z - kApexAhead + kEyeForward};
}

Double3 chest_of(const SkinnedMesh& mesh, const Double3& face) {
    // A hand's breadth under the neckline: the foremost cloth on the middle line.
    Double3 chest = kChestFromEyes;
    for (const Double3& p : mesh.positions) {
        const bool there = std::abs(p.x) < 0.02 && std::abs(p.y - face.y + 0.30) < 0.01;
        if (there && (p.z > chest.z || chest == kChestFromEyes)) chest = {0.0, p.y, p.z};
    }
    return chest;
}

Double3 crown_of(const SkinnedMesh& mesh) {
    Double3 crown = mesh.positions.front();
    for (const Double3& p : mesh.positions) crown = p.y > crown.y ? p : crown;
    return {0.0, crown.y, crown.z};
}

std::vector<Double3> arms_down(const HeadData& data, std::vector<Double3> positions) {
    const auto hanging = hanging_arms(bone_pivots(data, positions));
    for (std::size_t v = 0; v < data.weights.size(); ++v) positions[v] = moved(hanging, data.weights[v], positions[v]);
    return positions;
}

// The face with its expression, in the package's own axes; the file's own shapes come on top.
Expected<std::vector<Double3>> shaped_head(const HeadData& data, const HeadFile& file, const SitterSettings& sitter,
                                           const Library& library) {
    const FaceSettings face = face_over(sitter.face, file.face);
    ShapeAmounts shapes = file.shapes;
    for (const auto& [shape, amount] : face_shapes(face)) shapes[shape] += amount;
    for (const auto& [shape, amount] : expression_shapes(sitter.expression, *face.ancestry)) shapes[shape] += amount;
    const std::string said_in = std::get<LibraryHead>(sitter.head).path.string();
    auto positions = apply_shapes(data, library.head_mesh, shapes, said_in);
    if (!positions) return positions.problems();
    return with_eyes_set(data, std::move(*positions), face.of(FaceFeature::kEyeSet).value_or(0.0));
}

Problem no_fringe(const SitterSettings& sitter, const LibraryHead& choice) {
    const SourcePlace& place = sitter.head_said_at;
    return {Blame::kWrongInput,
            fmt::format("{}:{}:{}: {} has a fringe, and no hair that it could be cut of; expected fringe = false, or "
                        "another style than none, shaved and afro",
                        place.file, place.line, place.column, choice.name)};
}

Expected<HeadPointer> load_library_head(const SitterSettings& sitter, const Library& library) {
    const auto& choice = std::get<LibraryHead>(sitter.head);
    const auto file = read_head_file(choice.path);
    if (!file) return file.problems();
    const auto data = read_head_data(library.head_mesh);
    if (!data) return data.problems();
    const auto shaped = shaped_head(*data, *file, sitter, library);
    if (!shaped) return shaped.problems();

    auto head = std::make_shared<Head>();
    head->kind = Sitter::Kind::kHead;
    head->melanin = file->melanin;
    head->blood = file->blood;
    head->lids_open = file->lids;
    head->iris = file->iris;
    head->hair = HairLook{}.changed(file->hair);
    const HairLook look = head->hair.changed(sitter.hair);
    if (look.fringe && !takes_fringe(look.style)) return no_fringe(sitter, choice);
    head->pivots = bone_pivots(*data, *shaped);
    std::array<Double3, 2> eyes = {eye_centre(data->eyes[0], *shaped), eye_centre(data->eyes[1], *shaped)};
    RefinedHead refined = refine(*data, arms_down(*data, *shaped), kSubdivisions);

    const Double3 origin(0.0, 0.5 * (eyes[0].y + eyes[1].y), head->pivots[kSkull].z);
    for (Double3& p : refined.positions) p -= origin;
    for (Double3& p : head->pivots) p -= origin;
    for (Double3& p : eyes) p -= origin;
    head->eyes = eyes;
    head->lids = {lid_region(refined.positions, refined.quads, refined.margins[0], eyes[0]),
                  lid_region(refined.positions, refined.quads, refined.margins[1], eyes[1])};
    set_sockets_apart(refined);
    for (std::size_t e = 0; e < 2; ++e) {
        head->caruncles.at(e) = add_caruncle(refined, refined.margins.at(e).inner, e == 0);
        head->tear_lines.emplace_back(refined, refined.margins.at(e), e == 0);
    }
    head->mesh = skin_mesh(refined);
    put_on_clothes(head->mesh, refined, head->pivots, sitter.clothes);
    head->face = 0.5 * (eyes[0] + eyes[1]);
    head->places = find_places(head->mesh, eyes);
    if (!head->places) {
        return Problem{Blame::kWrongInput, fmt::format("{}: these shapes make no face", choice.path.string())};
    }
    head->casts = cast_skin(head->mesh, head->places, head->eyes, face_over(sitter.face, file->face).sex.value_or(0.0));
    head->chest = chest_of(head->mesh, head->face);
    head->crown = crown_of(head->mesh);
    // Worn above the collar: the places to measure at and to aim at have been found without it.
    if (sitter.glasses) head->lenses = put_on_glasses(head->mesh, eyes, *sitter.glasses);
    if (sitter.hat) head->hat = put_on_hat(head->mesh, eyes, *sitter.hat);
    return HeadPointer(std::move(head));
}

Expected<HeadPointer> load_own_head(const OwnMesh& choice) {
    auto own = read_own_head(choice);
    if (!own) return own.problems();
    auto head = std::make_shared<Head>();
    head->kind = Sitter::Kind::kHead;
    head->mesh = std::move(own->mesh);
    const Double3 shift(0.0, 0.0, own->pivot_behind_eyes);
    for (Double3& p : head->mesh.positions) p += shift;
    if (own->eye_centres) head->eyes = {own->eye_centres->at(0) + shift, own->eye_centres->at(1) + shift};
    head->face = shift;
    // As far under and behind the eyes as in the library's heads, so that chin and lean turn about a neck.
    head->pivots.fill({0.0, -0.09, 0.0});
    head->casts = cast_skin(head->mesh, std::nullopt, std::nullopt, 0.0);
    head->chest = head->face + kChestFromEyes;
    head->crown = crown_of(head->mesh);
    return HeadPointer(std::move(head));
}

Double3 in_studio(const Double3& place, double eye_height_m) { return place + Double3(0.0, eye_height_m, 0.0); }

// The head's own axes begin on the turning axis at the height of the eyes.
Double3 place_of(const SitterSettings& settings) { return settings.step_m + Double3(0.0, settings.eye_height_m, 0.0); }

double from_straight_ahead_deg(const Double3& axis) { return degrees(std::acos(std::clamp(axis.z, -1.0, 1.0))); }

// As far toward the axis as eyes turn.
Double3 within_reach(const Double3& axis) {
    if (from_straight_ahead_deg(axis) <= kFarthestGazeDeg) return axis;
    const double aside = std::hypot(axis.x, axis.y);
    const double farthest = radians(kFarthestGazeDeg);
    const Double3 toward = aside > 0.0 ? Double3(axis.x, axis.y, 0.0) / aside : Double3(1.0, 0.0, 0.0);
    return std::sin(farthest) * toward + Double3(0.0, 0.0, std::cos(farthest));
}

// The eyes of the straight head, looking where they will look once it is posed.
std::array<Eye, 2> looking(const Head& head, const SitterSettings& settings, const std::optional<Double3>& target,
                           const glm::dmat4& skull) {
    std::array<Eye, 2> eyes;
    const auto* angles = std::get_if<GazeAngles>(&settings.gaze);
    const glm::dmat4 back = glm::inverse(skull);
    for (std::size_t e = 0; e < 2; ++e) {
        eyes.at(e).centre = head.eyes->at(e);
        eyes.at(e).axis = gaze_direction(angles ? *angles : GazeAngles{});
        if (!target) continue;
        const Double3 there(back * glm::dvec4(*target - place_of(settings), 1.0));
        if (glm::distance(there, eyes.at(e).centre) > kEyeballRadius) {
            eyes.at(e).axis = glm::normalize(there - eyes.at(e).centre);
        }
    }
    return eyes;
}

SitterMesh posed_mesh(const Head& head, const std::vector<Double3>& straight, const BoneMatrices& bones,
                      const Double3& place) {
    std::vector<Double3> positions(straight.size());
    for (std::size_t v = 0; v < straight.size(); ++v) {
        positions[v] = place + moved(bones, head.mesh.weights[v], straight[v]);
    }
    SitterMesh mesh;
    for (const Double3& n : smooth_normals(positions, head.mesh.triangles)) mesh.normals.emplace_back(n);
    for (const Double3& p : positions) mesh.positions.emplace_back(p);
    for (const Double3& p : head.mesh.positions) mesh.straight.emplace_back(p);
    mesh.triangles = head.mesh.triangles;
    mesh.zones = head.mesh.zones;
    return mesh;
}

}  // namespace

Expected<HeadPointer> load_head(const SitterSettings& sitter, const Library& library) {
    if (std::holds_alternative<LibraryHead>(sitter.head)) return load_library_head(sitter, library);
    if (const auto* own = std::get_if<OwnMesh>(&sitter.head)) return load_own_head(*own);
    auto head = std::make_shared<Head>();
    if (std::holds_alternative<MattBall>(sitter.head)) {
        head->kind = Sitter::Kind::kBall;
        head->crown = {0.0, kBallRadius, 0.0};
    }
    return HeadPointer(std::move(head));
}

Double3 stepped_face(const Head& head, const SitterSettings& settings) { return place_of(settings) + head.face; }
Double3 face_point(const Head& head, double eye_height_m) { return in_studio(head.face, eye_height_m); }
Double3 chest_point(const Head& head, double eye_height_m) { return in_studio(head.chest, eye_height_m); }
Double3 crown_point(const Head& head, double eye_height_m) { return in_studio(head.crown, eye_height_m); }

Sitter pose_head(const Head& head, const SitterSettings& settings, const std::optional<Double3>& gaze_target) {
    Sitter sitter;
    sitter.kind = head.kind;
    sitter.melanin = settings.skin.melanin.value_or(head.melanin);
    sitter.blood = settings.skin.blood.value_or(head.blood);
    sitter.iris = settings.iris.value_or(head.iris);
    if (head.kind == Sitter::Kind::kBall) sitter.ball_radius_m = kBallRadius;
    if (head.kind != Sitter::Kind::kHead) return sitter;

    const auto bones = bent(head.pivots, settings);
    std::vector<Double3> straight = head.mesh.positions;
    if (head.eyes) {
        auto eyes = looking(head, settings, gaze_target, bones[kSkull]);
        for (Eye& eye : eyes) {
            sitter.gaze_asked_deg = std::max(sitter.gaze_asked_deg, from_straight_ahead_deg(eye.axis));
            eye.axis = within_reach(eye.axis);
        }
        if (head.lids) {
            const double opening =
                settings.lids.value_or(head.lids_open) * (1.0 - kSquintCloses * settings.expression.squint);
            for (std::size_t e = 0; e < 2; ++e) {
                lay_lids(head.lids->at(e), eyes.at(e), opening, straight);
                place_caruncle(head.caruncles.at(e), eyes.at(e), straight);
                head.tear_lines.at(e).place(eyes.at(e), straight);
            }
        }
        for (Eye& eye : eyes) {
            eye.centre = place_of(settings) + Double3(bones[kSkull] * glm::dvec4(eye.centre, 1.0));
            eye.axis = glm::normalize(Double3(bones[kSkull] * glm::dvec4(eye.axis, 0.0)));
            eye.up = Double3(bones[kSkull] * glm::dvec4(eye.up, 0.0));
        }
        sitter.eyes = eyes;
    }
    for (SpectacleLens lens : head.lenses) {
        lens.centre = Double3(bones[kSkull] * glm::dvec4(lens.centre, 1.0)) + place_of(settings);
        for (Double3* way : {&lens.axis, &lens.right, &lens.up}) *way = Double3(bones[kSkull] * glm::dvec4(*way, 0.0));
        sitter.lenses.push_back(lens);
    }
    sitter.straight_neck = head.pivots[kNeck1];
    sitter.clothes = settings.clothes;
    sitter.glasses = settings.glasses;
    sitter.hat = settings.hat;
    sitter.mesh = posed_mesh(head, straight, bones, place_of(settings));
    for (std::size_t v = 0; v < head.casts.size(); ++v) {
        const SkinCast& cast = head.casts[v];
        sitter.mesh.skin.push_back({spot_of(cast, sitter.melanin, sitter.blood, settings.skin.shine), cast.pores,
                                    cast.lip});
    }
    sitter.mesh.skin.resize(sitter.mesh.positions.size());  // what is worn has none
    if (head.lids) {
        const glm::dmat4 placed = glm::translate(glm::dmat4(1.0), place_of(settings));
        Growth& growth = sitter.growth.emplace();
        growth.to_studio = placed * bones[kSkull];
        growth.lash_lines = {head.lids->at(0).outer, head.lids->at(1).outer};
        growth.look = head.hair.changed(settings.hair);
        if (head.hat) growth.hat_band = {head.hat->middle, head.hat->up};
    }
    if (head.places) sitter.landmarks = landmarks_at(*head.places, sitter.mesh);
    return sitter;
}

}  // namespace understudy
