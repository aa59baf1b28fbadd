#include "sitter/head.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "setup/head_file.h"
#include "sitter/eye.h"
#include "sitter/eye_set.h"
#include "sitter/face_shapes.h"
#include "sitter/lips.h"
#include "sitter/loaded_head.h"
#include "sitter/own_mesh.h"
#include "sitter/socket.h"
#include "sitter/teeth.h"
#include "sitter/wardrobe/glasses.h"
#include "sitter/wardrobe/kept_clothes.h"

namespace understudy {

namespace {

constexpr int kSubdivisions = 2;

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
    close_lips(refined);

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
    put_on_kept_clothes(head->mesh, refined, head->pivots, sitter.clothes, library.kept());
    head->face = 0.5 * (eyes[0] + eyes[1]);
    head->places = find_places(head->mesh, eyes);
    if (!head->places) {
        return Problem{Blame::kWrongInput, fmt::format("{}: these shapes make no face", choice.path.string())};
    }
    head->casts = cast_skin(head->mesh, head->places, head->eyes, face_over(sitter.face, file->face).sex.value_or(0.0));
    head->chest = chest_of(head->mesh, head->face);
    head->crown = crown_of(head->mesh);
    set_teeth(head->mesh, data->arches, *shaped, origin);
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

}  // namespace

bool has_eyes(const Head& head) { return head.eyes.has_value(); }

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

}  // namespace understudy
