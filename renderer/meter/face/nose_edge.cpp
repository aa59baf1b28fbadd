#include "meter/face/nose_edge.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "meter/face/light_pattern.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr std::size_t kPlaces = 11;   // along the edge
constexpr std::size_t kFarPart = 3;   // of the edge, the third that lies farthest from what throws it
constexpr int kAround = 3;            // points of the view on either side that tell which way the edge runs
constexpr int kOutline = 48;          // points round the front
constexpr int kInner = 4;             // and a grid of so many squared inside
constexpr int kSteps = 50;            // over the width that geometry foretells
constexpr float kLift = 0.012F;       // skin is looked for from here above the edge's place
constexpr double kLeastChange = 0.4;  // of the share seen, from which a whole edge's width may be told
constexpr double kTurnedBack = 0.05;  // of that share
constexpr double kFarthest = 0.05;    // metres from there: beyond lies another part of the face

struct EdgePlace {
    Vec3 position{0.0F};
    Vec3 normal{0.0F};
    Vec3 to_light{0.0F};    // unit, along the skin: from the dark to the lit side
    double foretold = 0.0;  // width, by similar triangles
};

// Points of the front as seen from the face.
std::vector<Vec3> front_points(const Emitter& light, const Vec3& from) {
    std::vector<Vec3> points = light.outline(from, kOutline);
    for (int i = 0; i < kInner * kInner; ++i) {
        const int row = i / kInner;
        const Vec2 square((static_cast<float>(i % kInner) + 0.5F) / kInner, (static_cast<float>(row) + 0.5F) / kInner);
        points.push_back(light.point_at(square, from).position);
    }
    return points;
}

double largest_across(const std::vector<Vec3>& points, const Vec3& centre) {
    float largest = 0.0F;
    for (const Vec3& point : points) largest = std::max(largest, glm::distance(point, centre));
    return 2.0 * static_cast<double>(largest);
}

class EdgeReader {
  public:
    EdgeReader(const Stage& stage, const FaceView& view, const std::vector<Shade>& shades, const Emitter& light)
        : stage_(stage),
          view_(view),
          shades_(shades),
          centre_(light.centre()),
          front_(front_points(light, Vec3(view.face().frame.origin))),
          across_(largest_across(front_, centre_)) {}

    std::optional<double> read() const {
        std::vector<EdgePlace> places = edge_places();
        if (places.empty()) return std::nullopt;
        std::stable_sort(places.begin(), places.end(),
                         [](const EdgePlace& a, const EdgePlace& b) { return a.foretold > b.foretold; });
        places.resize(std::max<std::size_t>(1, places.size() / kFarPart));
        std::vector<double> widths;
        const std::size_t count = std::min(kPlaces, places.size());
        for (std::size_t i = 0; i < count; ++i) {
            const auto width = width_at(places[i * places.size() / count]);
            if (width) widths.push_back(*width);
        }
        if (widths.empty()) return std::nullopt;
        const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
        std::nth_element(widths.begin(), middle, widths.end());
        return *middle;
    }

  private:
    std::vector<EdgePlace> edge_places() const {
        std::vector<EdgePlace> places;
        for (const std::size_t i : nose_shadow_points(view_, shades_)) {
            const FacePoint& point = view_.points()[i];
            const auto way = way_to_light(point);
            if (!way) continue;
            const auto blocking = stage_.intersect(shadow_ray(point.leave_from, centre_));
            if (!blocking) continue;
            const auto far = static_cast<double>(glm::distance(centre_, point.position) - blocking->distance);
            places.push_back(
                {point.position, point.normal, *way, static_cast<double>(blocking->distance) * across_ / far});
        }
        return places;
    }

    // Only at the edge to lit skin.
    std::optional<Vec3> way_to_light(const FacePoint& point) const {
        if (!lit_beside(point)) return std::nullopt;
        Vec3 lit(0.0F), dark(0.0F);
        float lit_count = 0.0F, dark_count = 0.0F;
        for (int row = point.row - kAround; row <= point.row + kAround; ++row) {
            for (int column = point.column - kAround; column <= point.column + kAround; ++column) {
                const FacePoint* other = view_.at(column, row);
                if (other == nullptr || view_.face().is_nose(other->in_face)) continue;
                const bool is_lit = shade_of(*other) == Shade::kLit;
                (is_lit ? lit : dark) += other->position;
                (is_lit ? lit_count : dark_count) += 1.0F;
            }
        }
        const Vec3 way = lit / lit_count - dark / dark_count;
        const Vec3 along = way - glm::dot(way, point.normal) * point.normal;
        const float length = glm::length(along);
        return length > 0.0F ? std::optional(along / length) : std::nullopt;
    }

    bool lit_beside(const FacePoint& point) const {
        constexpr std::array<std::array<int, 2>, 4> kBeside{{{-1, 0}, {1, 0}, {0, -1}, {0, 1}}};
        return std::any_of(kBeside.begin(), kBeside.end(), [&](const auto& step) {
            const FacePoint* other = view_.at(point.column + step[0], point.row + step[1]);
            return other != nullptr && shade_of(*other) == Shade::kLit && !view_.face().is_nose(other->in_face);
        });
    }

    Shade shade_of(const FacePoint& point) const { return shades_[view_.index_of(point)]; }

    // Share that is seen, from the skin beside the edge, of those of the front's points that this skin faces: where it
    // turns away from the light by itself is no edge of a shadow. None where there is no such skin.
    std::optional<double> seen_at(const EdgePlace& place, double along) const {
        const Vec3 above = place.position + static_cast<float>(along) * place.to_light + kLift * place.normal;
        const auto hit = stage_.intersect({above, -place.normal});
        if (!hit || hit->thing != Thing::kSitter) return std::nullopt;
        std::size_t faced = 0;
        std::size_t seen = 0;
        for (const Vec3& point : front_) {
            const Ray way = shadow_ray(hit->leave_from, point);
            if (glm::dot(way.direction, hit->shading) <= 0.0F) continue;
            ++faced;
            seen += stage_.blocks(way) ? 0 : 1;
        }
        if (2 * faced < front_.size()) return std::nullopt;
        return static_cast<double>(seen) / static_cast<double>(faced);
    }

    // From the edge outward until all is seen, and inward until nothing is. Where the nose is too small for that, what
    // the part that was walked would make if it went on alike.
    std::optional<double> width_at(const EdgePlace& place) const {
        const double step = std::max(1e-4, place.foretold / kSteps);
        const auto here = seen_at(place, 0.0);
        if (!here) return std::nullopt;
        const Walked outer = walk(place, *here, step);
        const Walked inner = walk(place, *here, -step);
        const double change = outer.share - inner.share;
        if (change < kLeastChange) return std::nullopt;
        return (outer.along - inner.along) / change;
    }

    // The farthest on, and the share there; until it turns back, as it does past a shadow's middle and in another.
    struct Walked {
        double along = 0.0;
        double share = 0.0;
    };
    Walked walk(const EdgePlace& place, double here, double step) const {
        Walked farthest{0.0, here};
        const double sense = step > 0.0 ? 1.0 : -1.0;
        const double until = step > 0.0 ? 1.0 : 0.0;
        for (double along = step; std::abs(along) < kFarthest; along += step) {
            const auto seen = seen_at(place, along);
            if (!seen || sense * (*seen - farthest.share) < -kTurnedBack) break;
            if (*seen == until) return {along - 0.5 * step, until};
            if (sense * (*seen - farthest.share) > 0.0) farthest = {along, *seen};
        }
        return farthest;
    }

    const Stage& stage_;
    const FaceView& view_;
    const std::vector<Shade>& shades_;
    Vec3 centre_;
    std::vector<Vec3> front_;
    double across_;
};

}  // namespace

std::optional<double> nose_edge(const Stage& stage, const FaceView& view, const std::vector<Shade>& shades,
                                const Emitter& light) {
    return EdgeReader(stage, view, shades, light).read();
}

}  // namespace understudy
