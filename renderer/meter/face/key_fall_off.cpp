#include "meter/face/key_fall_off.h"

#include <cmath>

#include "meter/integrate.h"

namespace understudy {

namespace {

constexpr double kFaceWidth = 0.14;  // cheek to cheek, bizygomatic (Farkas 1994: about 137 mm in men)
constexpr double kThird = 1.0 / 3.0;
constexpr int kOutline = 64;
constexpr int kBisections = 12;

class KeyReader {
  public:
    KeyReader(const Studio& studio, const Stage& nobody, const LitStudio& lit)
        : nobody_(nobody), key_(studio.lights.front().centre), weights_(exposure_weights(lit.layers)) {
        for (std::size_t i = 1; i < weights_.size(); ++i) weights_[i] = Bands{};
    }

    double at(const Double3& place) const {
        constexpr double kRelative = 0.002;
        const Gathering gathering{Vec3(place), Vec3(glm::normalize(key_ - place))};
        return gather_light(nobody_, gathering, weights_, {kRelative, 0.0}).total.mean;
    }

  private:
    const Stage& nobody_;
    Double3 key_;
    std::vector<Bands> weights_;
};

// How far along a way, up to `farthest`, until the reading has changed by this many stops either way.
double until_changed(const KeyReader& reader, const Double3& from, const Double3& way, double farthest) {
    const double here = reader.at(from);
    const auto changed = [&](double along) {
        return std::abs(std::log2(reader.at(from + along * way) / here)) > kThird;
    };
    double same = 0.0;
    double other = farthest;
    if (!changed(farthest)) return farthest;
    for (int i = 0; i < kBisections; ++i) {
        const double middle = 0.5 * (same + other);
        (changed(middle) ? other : same) = middle;
    }
    return 0.5 * (same + other);
}

}  // namespace

KeyFallOff key_fall_off(const Studio& studio, const Stage& nobody, const LitStudio& lit) {
    const KeyReader reader(studio, nobody, lit);
    const PlacedFront& key = studio.lights.front();
    const Double3 face = studio.face;
    const double distance = glm::distance(key.centre, face);
    const Double3 away = (face - key.centre) / distance;
    KeyFallOff fall_off;
    for (const Vec3& point : nobody.emitters().front().outline(Vec3(face), kOutline)) {
        const Double3 aside = Double3(point) - key.centre;
        const double across = 2.0 * std::abs(glm::dot(aside, key.right)) / distance;
        const double up = 2.0 * std::abs(glm::dot(aside, key.up)) / distance;
        fall_off.width_over_distance = std::max(fall_off.width_over_distance, across);
        fall_off.height_over_distance = std::max(fall_off.height_over_distance, up);
    }
    const double at_face = reader.at(face);
    fall_off.across_face_stops = std::log2(at_face / reader.at(face + kFaceWidth * away));
    const Double3 chest = studio.points.chest + (studio.face - studio.points.face);
    fall_off.to_chest_stops = std::log2(at_face / reader.at(chest));
    fall_off.nearer_m = until_changed(reader, face, -away, 0.5 * distance);
    fall_off.farther_m = until_changed(reader, face, away, distance);
    return fall_off;
}

}  // namespace understudy
