#include "meter/face/light_pattern.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace understudy {

namespace {

// A cheek reaches from a little under the eye down to the mouth, outside the nose; metres.
constexpr double kUnderEye = 0.012;
constexpr double kBesideNose = 0.003;
// On a smaller part of a cheek than this, seen from the camera, nothing is said.
constexpr double kLeastCheekM2 = 150e-6;
// Rows without lit skin beyond the nose's shadow that make it closed.
constexpr double kClosed = 0.004;
// Under the mouth the cheek's shadow runs into the chin's.
constexpr double kUnderMouth = 0.004;

// A place's neighbours, by column and row.
constexpr std::array<std::array<int, 2>, 4> kBeside{{{-1, 0}, {1, 0}, {0, -1}, {0, 1}}};

struct Share {
    int lit = 0;
    int all = 0;
    double of_all() const { return all > 0 ? static_cast<double>(lit) / all : 0.0; }
};

class PatternReader {
  public:
    PatternReader(const FaceView& view, const std::vector<Shade>& shades, const Vec3& light)
        : view_(view), face_(view.face()), shades_(shades), light_(face_.frame.place(Double3(light))) {
        far_ = light_.x > 0.0 ? -1.0 : 1.0;
    }

    std::optional<PatternReading> read() const {
        PatternReading reading;
        reading.across_deg = degrees(std::atan2(light_.x, light_.z));
        reading.up_deg = degrees(std::atan2(light_.y, std::hypot(light_.x, light_.z)));
        const Share near = cheek(-far_);
        const Share far = cheek(far_);
        const double point = view_.point_area_m2();
        if (near.all * point < kLeastCheekM2 || far.all * point < kLeastCheekM2) return std::nullopt;
        reading.near_cheek_lit = near.of_all();
        reading.far_cheek_lit = far.of_all();
        reading.side = lit_side();
        reading.nose = nose_shadow();
        reading.pattern = name(reading);
        if (reading.pattern == LightPattern::kRembrandt) reading.triangle = triangle();
        return reading;
    }

  private:
    LightPattern name(const PatternReading& reading) const {
        if (reading.near_cheek_lit < kLitNearCheek) return LightPattern::kRim;
        if (reading.far_cheek_lit < kDarkCheek) return LightPattern::kSplit;
        if (!reading.nose || reading.nose->area_m2 < kLeastNoseShadowM2) return LightPattern::kFlat;
        if (std::abs(reading.nose->from_down_deg) <= kStraightDownDeg) return LightPattern::kButterfly;
        return reading.nose->closed ? LightPattern::kRembrandt : LightPattern::kLoop;
    }

    bool beside_nose(const FacePoint& point, double side) const {
        return side * point.in_face.x > face_.nose_half_width + kBesideNose;
    }

    bool on_cheek(const FacePoint& point, double side) const {
        return beside_nose(point, side) && point.in_face.y < -kUnderEye && point.in_face.y > face_.mouth &&
               point.zone != Zone::kLips;
    }

    Share cheek(double side) const {
        Share share;
        for (std::size_t i = 0; i < shades_.size(); ++i) {
            if (!on_cheek(view_.points()[i], side)) continue;
            ++share.all;
            share.lit += shades_[i] == Shade::kLit ? 1 : 0;
        }
        return share;
    }

    LitSide lit_side() const {
        const FacePoint& any = view_.points().front();
        const Double3 camera = face_.frame.within(Double3(any.toward_camera));
        const double turned = degrees(std::atan2(camera.x, camera.z));
        if (std::abs(turned) < kFaceOnDeg) return LitSide::kFaceOn;
        return turned * light_.x > 0.0 ? LitSide::kBroad : LitSide::kShort;
    }

    std::optional<NoseShadow> nose_shadow() const {
        NoseShadow shadow;
        const glm::dvec2 away = -glm::dvec2(light_) / std::max(1e-9, glm::length(glm::dvec2(light_)));
        const glm::dvec2 tip(0.0, face_.nose_tip);
        glm::dvec2 middle(0.0);
        double lowest = 0.0;
        double farthest = -HUGE_VAL;
        int count = 0;
        for (const std::size_t i : nose_shadow_points(view_, shades_)) {
            const glm::dvec2 place(view_.points()[i].in_face);
            ++count;
            lowest = std::min(lowest, place.y);
            const glm::dvec2 way = place - tip;
            middle += way;
            if (glm::dot(way, away) <= farthest) continue;
            farthest = glm::dot(way, away);
            shadow.length_m = glm::length(way);
        }
        if (count == 0) return std::nullopt;
        shadow.area_m2 = count * view_.point_area_m2();
        shadow.from_down_deg = degrees(std::atan2(middle.x, -middle.y));
        shadow.to_lip = (face_.nose_base - lowest) / (face_.nose_base - face_.lip_top);
        shadow.closed = closing_row().has_value();
        return shadow;
    }

    // Whether a row of the view has skin beyond the nose on the far side, and whether some of it is lit.
    Share beyond_nose(int row) const {
        Share share;
        for (int column = 0; column < view_.columns(); ++column) {
            const FacePoint* point = view_.at(column, row);
            if (point == nullptr || !beside_nose(*point, far_) || point->zone == Zone::kLips) continue;
            const double height = point->in_face.y;
            if (height > face_.nose_base || height < face_.mouth - kUnderMouth) continue;
            ++share.all;
            share.lit += shades_[view_.index_of(*point)] == Shade::kLit ? 1 : 0;
        }
        return share;
    }

    // The first of some rows together, from the top, where the nose's shadow and the cheek's leave nothing lit between.
    std::optional<int> closing_row() const {
        const int needed = std::max(1, static_cast<int>(std::lround(kClosed / view_.step_m())));
        int together = 0;
        for (int row = 0; row < view_.rows(); ++row) {
            const Share share = beyond_nose(row);
            together = share.all > 0 && share.lit == 0 ? together + 1 : 0;
            if (together == needed) return row - needed + 1;
        }
        return std::nullopt;
    }

    CheekTriangle triangle() const {
        CheekTriangle patch;
        double left = HUGE_VAL, right = -HUGE_VAL, low = HUGE_VAL, high = -HUGE_VAL;
        for (std::size_t i = 0; i < shades_.size(); ++i) {
            const FacePoint& point = view_.points()[i];
            if (!on_cheek(point, far_) || shades_[i] != Shade::kLit) continue;
            patch.area_m2 += view_.point_area_m2();
            left = std::min(left, point.in_face.x);
            right = std::max(right, point.in_face.x);
            low = std::min(low, point.in_face.y);
            high = std::max(high, point.in_face.y);
        }
        patch.width_m = right - left;
        patch.length_m = high - low;
        patch.of_eye_width = patch.width_m / face_.eye_width;
        patch.of_nose_length = patch.length_m / face_.nose_length;
        return patch;
    }

    const FaceView& view_;
    const FaceMeasures& face_;
    const std::vector<Shade>& shades_;
    Double3 light_;  // in the face's axes
    double far_;     // the sign of the face's right on the side away from the light
};

}  // namespace

std::vector<std::size_t> nose_shadow_points(const FaceView& view, const std::vector<Shade>& shades) {
    const auto shadowed = [&](std::size_t i) {
        const Double3& place = view.points()[i].in_face;
        return shades[i] == Shade::kNose && place.y < -kUnderEye && !view.face().is_nose(place);
    };
    const auto beside_the_nose = [&](const FacePoint& point) {
        for (const auto& step : kBeside) {
            const FacePoint* other = view.at(point.column + step[0], point.row + step[1]);
            if (other != nullptr && view.face().is_nose(other->in_face)) return true;
        }
        return false;
    };
    std::vector<bool> taken(shades.size(), false);
    std::vector<std::size_t> points;
    const auto take = [&](std::size_t i) {
        if (taken[i] || !shadowed(i)) return;
        taken[i] = true;
        points.push_back(i);
    };
    for (std::size_t i = 0; i < shades.size(); ++i) {
        if (beside_the_nose(view.points()[i])) take(i);
    }
    // Those that are taken here are looked at as well.
    std::size_t looked_at = 0;
    while (looked_at < points.size()) {
        const FacePoint& point = view.points()[points[looked_at++]];
        for (const auto& step : kBeside) {
            const FacePoint* other = view.at(point.column + step[0], point.row + step[1]);
            if (other != nullptr) take(view.index_of(*other));
        }
    }
    return points;
}

std::optional<PatternReading> read_pattern(const FaceView& view, const std::vector<Shade>& shades, const Vec3& light) {
    if (view.points().empty()) return std::nullopt;
    return PatternReader(view, shades, light).read();
}

std::optional<PatternReading> read_pattern(const Stage& stage, const FaceView& view, const Vec3& light) {
    return read_pattern(view, face_shades(stage, view, light), light);
}

}  // namespace understudy
