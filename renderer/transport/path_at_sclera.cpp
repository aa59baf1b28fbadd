// How a path goes on where it meets the white of an eye: the tears' gloss where it came, and the white under it a
// little aside, for light wanders in the sclera before it comes out.
#include <algorithm>
#include <cmath>

#include "stage/eye_frame.h"
#include "stage/sclera_pattern.h"
#include "transport/dimensions.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

// Mean free path in the sclera; of the order that its scattering of some tens per centimetre gives (A. N. Bashkatov and
// others, "Optical Properties of Human Sclera in Spectral Range 370–2500 nm", Opt. Spectrosc. 109, 2010; from memory).
constexpr float kFreePath = 0.00028F;
constexpr float kAlbedo = 0.66F;

// How far along the surface light that comes out here went in. P. H. Christensen and B. Burley, "Approximate
// Reflectance Profiles for Efficient Subsurface Scattering", Pixar technical memo 15-04, 2015, for a perpendicular
// search light: a quarter falls off with d, the rest with 3 d, d = free path / (1.9 − A + 3.5 (A − 0.8)²).
float distance_within(float choice, float u) {
    constexpr float kD = kFreePath / (1.9F - kAlbedo + 3.5F * (kAlbedo - 0.8F) * (kAlbedo - 0.8F));
    return -(choice < 0.25F ? kD : 3.0F * kD) * std::log(1.0F - u);
}

// The eyeball's normal, turned into the cornea's where they meet: between them lies a groove and no edge.
Vec3 evened_normal(const EyeFrame& frame, const Vec3& normal) {
    constexpr float kGroove = 0.0011F;
    constexpr auto kCorneaSine = static_cast<float>(kIrisRadius / kCorneaRadius);
    const Vec3 local = frame.to_local(normal);
    const float sine = std::hypot(local.x, local.y);
    const float limbus = std::asin(static_cast<float>(kIrisRadius / kEyeballRadius));
    const float out = static_cast<float>(kEyeballRadius) * (std::atan2(sine, local.z) - limbus);
    if (out >= kGroove || !(sine > 0.0F)) return normal;
    const auto share = static_cast<float>(1.0 - smooth_step(static_cast<double>(out / kGroove)));
    const Vec3 cornea(kCorneaSine * local.x / sine, kCorneaSine * local.y / sine,
                      std::sqrt(1.0F - kCorneaSine * kCorneaSine));
    return frame.to_world(glm::normalize(glm::mix(local, cornea, share)));
}

}  // namespace

bool PathTracer::white_covers(const Path& path, const Walk& walk, const Hit& hit) const {
    const Eye& eye = stage_.eyes()[hit.index];
    const Double3 away = Double3(hit.position) - eye.centre;
    const double off_axis = glm::length(away - glm::dot(away, eye.axis) * eye.axis);
    const float share = ScleraPattern::covers_cornea(static_cast<float>(off_axis));
    return share > 0.0F && path.sampler.group(dimension_of_scatter(walk.vertex + kInwardBranch)).w < share;
}

void PathTracer::meet_white(Group& group, std::uint32_t index, const Hit& met) const {
    const Walk walk = group.walks[index];
    Path& path = group.path_of(walk);
    const Eye& eye = stage_.eyes()[met.index];
    const EyeFrame frame(eye);
    const ScleraPattern& sclera = stage_.sclera();
    const Vec3 wo = -walk.ray.direction;
    const bool on_cornea = met.thing == Thing::kCornea;
    const Light4 colour = on_cornea ? sclera.limbus_colour(path.waves)
                                    : sclera.colour(frame.to_local(met.geometric), met.index, path.waves);
    Hit hit = met;
    hit.surface = &stage_.eye_white_surface();
    if (!on_cornea) {
        const Vec3 evened = evened_normal(frame, hit.geometric);
        if (glm::dot(evened, wo) > 0.05F) hit.shading = evened;
    }
    if (walk.sees) path.sight = {colour, hit.shading, walk.before + hit.distance};
    group.walks[index].sees = false;
    if (!walk.may_split || on_cornea) {
        group.vertices.push_back(vertex_at(hit, index, wo, path.waves));
        group.vertices.back().from.colour = colour;
        return;
    }
    hit.surface = &stage_.tear_gloss();
    group.vertices.push_back(vertex_at(hit, index, wo, path.waves));
    const float reflected = group.vertices.back().from.reflected;
    group.walks[index].began_with = reflected;
    const auto under = place_within(eye, met, path.sampler.group(dimension_of_scatter(walk.vertex + kInwardBranch)));
    if (!under) return;
    Walk soft = walk;
    soft.sees = false;
    soft.may_split = false;
    soft.vertex += kMirrorBranch;
    // What the tears let out; that they let as much in, on the mean over all directions, is in the colour.
    soft.throughput *= 1.0F - reflected;
    group.vertices.push_back(
        vertex_at(*under, static_cast<std::uint32_t>(group.walks.size()), under->geometric, path.waves));
    group.vertices.back().from.colour = colour;
    group.walks.push_back(soft);
}

// None: it would come in through the cornea, and is lost.
std::optional<Hit> PathTracer::place_within(const Eye& eye, const Hit& met, const Vec4& numbers) const {
    const float turn = distance_within(numbers.x, numbers.y) / static_cast<float>(kEyeballRadius);
    const float round = 2.0F * kPi * numbers.z;
    const Frame around = Frame::around(met.geometric);
    const Vec3 aside = std::cos(round) * around.tangent + std::sin(round) * around.bitangent;
    const Vec3 normal = std::cos(turn) * met.geometric + std::sin(turn) * aside;
    if (static_cast<double>(glm::dot(normal, Vec3(eye.axis))) * kEyeballRadius > kLimbusAhead) return std::nullopt;
    Hit hit = met;
    hit.position = Vec3(eye.centre + kEyeballRadius * Double3(normal));
    hit.geometric = normal;
    hit.shading = normal;
    hit.leave_from = hit.position + kLeaveOff * normal;
    hit.surface = &stage_.eye_white_base();
    return hit;
}

}  // namespace understudy
