#include "meter/outline.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <tbb/parallel_for.h>

#include "meter/picture_tone.h"
#include "stage/camera.h"

namespace understudy {

namespace {

constexpr double kMiddleOverEyes = 0.02;  // metres: seen from here, hair and jaw lie about as far off
constexpr double kFarthest = 0.32;        // from there, beyond any hair
constexpr double kStep = 0.0015;
constexpr int kSolid = 3;  // steps in a row that meet the sitter: past the last stray hair
constexpr int kPlaces = 25;
constexpr double kReach = 120.0;                               // degrees to either side of 12 o'clock
constexpr std::array<double, 3> kInside{0.002, 0.005, 0.008};  // metres from the outline
constexpr std::array<double, 2> kOutside{0.015, 0.022};
// Of each sight: the mean of three inside and that of two outside are then known to 0.07, a tenth of a stop. Hair is
// noisy, and half of this error is four times the wait.
constexpr double kOfInside = 0.12;
constexpr double kOfOutside = 0.10;

bool of_the_sitter(Thing thing) {
    return thing == Thing::kSitter || thing == Thing::kStrand || thing == Thing::kEyeWhite || thing == Thing::kCornea ||
           thing == Thing::kLens;
}

class OutlineReader {
  public:
    OutlineReader(const Studio& studio, const Stage& stage, const PictureTone& tone)
        : stage_(stage), tone_(tone), picture_(studio.setup.picture), camera_(studio) {
        middle_ = studio.points.face + Double3(0.0, kMiddleOverEyes, 0.0);
    }

    std::optional<OutlinePlace> place_at(double clock_deg) const {
        const double turn = radians(clock_deg);
        const Double3 way = std::sin(turn) * camera_.right() + std::cos(turn) * camera_.up();
        const auto at = [&](double out) { return camera_.ray(camera_.pixel_of(middle_ + out * way), kLensMiddle); };
        const auto edge = outline_along(at);
        if (!edge) return std::nullopt;
        OutlinePlace place;
        place.clock_deg = clock_deg < 0.0 ? clock_deg + 360.0 : clock_deg;
        place.pixel = camera_.pixel_of(middle_ + *edge * way);
        if (!in_frame(place.pixel)) return std::nullopt;
        for (const double in : kInside) place.edge += brightness(at(*edge - in), kOfInside) / kInside.size();
        for (const double out : kOutside) place.beyond += brightness(at(*edge + out), kOfOutside) / kOutside.size();
        place.stops = std::log2(place.edge / place.beyond);
        return place;
    }

  private:
    template <class RayAt>
    std::optional<double> outline_along(const RayAt& at) const {
        int solid = 0;
        for (double out = kFarthest; out > 0.0; out -= kStep) {
            const auto hit = stage_.intersect(at(out));
            solid = hit && of_the_sitter(hit->thing) ? solid + 1 : 0;
            if (solid == kSolid) return out + (kSolid - 1) * kStep;
        }
        return std::nullopt;
    }
    bool in_frame(const Vec2& pixel) const {
        return pixel.x >= 0.0F && pixel.y >= 0.0F && pixel.x <= static_cast<float>(picture_.width) &&
               pixel.y <= static_cast<float>(picture_.height);
    }
    double brightness(const Ray& ray, double relative) const {
        return luminance_of(tone_.along(stage_, ray, relative));
    }

    const Stage& stage_;
    const PictureTone& tone_;
    const PictureSettings& picture_;
    Camera camera_;
    Double3 middle_{0.0};
};

}  // namespace

std::optional<Outline> read_outline(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                    const std::vector<Reading>& readings) {
    if (studio.sitter.kind != Sitter::Kind::kHead) return std::nullopt;
    const PictureTone tone(studio.setup, lit, readings);
    const OutlineReader reader(studio, stage, tone);
    Outline outline;
    std::array<std::optional<OutlinePlace>, kPlaces> found;
    tbb::parallel_for(0, kPlaces, [&](int i) {
        found.at(static_cast<std::size_t>(i)) = reader.place_at(kReach * (2.0 * i / (kPlaces - 1) - 1.0));
    });
    for (const auto& place : found) {
        if (place && std::isfinite(place->stops)) outline.places.push_back(*place);
    }
    if (outline.places.empty()) return std::nullopt;
    std::vector<double> stops;
    for (const OutlinePlace& place : outline.places) stops.push_back(place.stops);
    const auto middle = stops.begin() + static_cast<std::ptrdiff_t>(stops.size() / 2);
    std::nth_element(stops.begin(), middle, stops.end());
    outline.median_stops = *middle;
    outline.weakest = *std::min_element(
        outline.places.begin(), outline.places.end(),
        [](const OutlinePlace& a, const OutlinePlace& b) { return std::abs(a.stops) < std::abs(b.stops); });
    return outline;
}

}  // namespace understudy
