// A loaded head put on its mark: turned, looking somewhere, its lids drawn.
#include <algorithm>
#include <cmath>
#include <glm/gtc/matrix_transform.hpp>

#include "sitter/eye.h"
#include "sitter/loaded_head.h"

namespace understudy {

namespace {

constexpr double kSquintCloses = 0.5;  // of the lids' opening, at its most. Common observation, no source.

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
    for (const SkinCast& cast : head.casts) {
        sitter.mesh.skin.push_back(
            {spot_of(cast, sitter.melanin, sitter.blood, settings.skin.shine), cast.pores, cast.lip});
    }
    sitter.mesh.skin.resize(sitter.mesh.positions.size());  // what is worn has none, nor have teeth
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
