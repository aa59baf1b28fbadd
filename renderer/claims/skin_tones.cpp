#include "claims/skin_tones.h"

#include <algorithm>
#include <array>
#include <functional>
#include <limits>
#include <numeric>

#include "meter/picture_tone.h"
#include "meter/ratio.h"
#include "stage/camera.h"

namespace understudy {

namespace {

constexpr double kRelative = 0.05;    // of one look; a patch is known better
constexpr int kPatch = 1;             // places on either side of the middle one
constexpr double kPatchStep = 0.003;  // metres between them
// The forehead is looked at over this much of it, more coarsely.
constexpr int kForehead = 2;
constexpr double kForeheadStep = 0.012;

// How far inside the outline the bright line of a rim is looked for; metres. Sheen is strongest in the last
// millimetres.
constexpr std::array<double, 4> kInside{0.0008, 0.002, 0.0035, 0.005};
constexpr double kMiddleOverEyes = 0.02;
constexpr std::size_t kBrightest = 3;

class ToneReader {
  public:
    ToneReader(const Studio& studio, const Stage& stage, const LitStudio& lit, const std::vector<Reading>& readings)
        : stage_(stage), tone_(studio.setup, lit, readings), camera_(studio) {}

    double at(const Double3& place) const {
        const Vec3 from(camera_.position());
        return luminance_of(tone_.along(stage_, {from, glm::normalize(Vec3(place) - from)}, kRelative));
    }
    // Of a patch, so that no single slope of the skin decides.
    double mean_about(const Double3& place) const {
        double sum = 0.0;
        for (int x = -kPatch; x <= kPatch; ++x) {
            for (int y = -kPatch; y <= kPatch; ++y) sum += at(place + moved(x, y, kPatchStep));
        }
        return sum / ((2 * kPatch + 1) * (2 * kPatch + 1));
    }
    // Between a place of the outline and the middle of the head.
    double brightest_inside(const OutlinePlace& place, const Double3& middle) const {
        const Vec2 centre = camera_.pixel_of(middle);
        constexpr double kTenCentimetres = 0.1;
        const auto pixels_a_metre = static_cast<float>(
            static_cast<double>(glm::distance(camera_.pixel_of(middle + kTenCentimetres * camera_.right()), centre)) /
            kTenCentimetres);
        const Vec2 inward = glm::normalize(centre - place.pixel);
        double brightest = 0.0;
        for (const double in : kInside) {
            const Vec2 pixel = place.pixel + static_cast<float>(in) * pixels_a_metre * inward;
            const Ray ray = camera_.ray(pixel, kLensMiddle);
            brightest = std::max(brightest, luminance_of(tone_.along(stage_, ray, kRelative)));
        }
        return brightest;
    }
    double brightest_about(const Double3& place) const {
        double brightest = 0.0;
        for (int x = -kForehead; x <= kForehead; ++x) {
            for (int y = -kForehead; y <= kForehead; ++y) {
                brightest = std::max(brightest, at(place + moved(x, y, kForeheadStep)));
            }
        }
        return brightest;
    }

  private:
    Double3 moved(double x, double y, double step) const { return step * (x * camera_.right() + y * camera_.up()); }

    const Stage& stage_;
    PictureTone tone_;
    Camera camera_;
};

}  // namespace

std::optional<SkinTones> skin_tones(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                    const std::vector<Reading>& readings) {
    const Reading* lit_cheek = brighter_cheek(readings);
    if (!studio.sitter.landmarks || lit_cheek == nullptr) return std::nullopt;
    const Landmarks& marks = *studio.sitter.landmarks;
    const ToneReader reader(studio, stage, lit, readings);
    const bool left = lit_cheek->point == "cheek-camera-left";
    SkinTones tones;
    tones.lit_cheek = reader.mean_about((left ? marks.cheek_camera_left : marks.cheek_camera_right).position);
    tones.shadow_cheek = reader.mean_about((left ? marks.cheek_camera_right : marks.cheek_camera_left).position);
    tones.forehead = reader.brightest_about(marks.forehead.position);
    return tones;
}

double rim_line(const Studio& studio, const Stage& stage, const LitStudio& lit, const std::vector<Reading>& readings,
                const Outline& outline) {
    const ToneReader reader(studio, stage, lit, readings);
    const Double3 middle = studio.points.face + Double3(0.0, kMiddleOverEyes, 0.0);
    std::vector<double> lines;
    for (const OutlinePlace& place : outline.places) {
        if (place.clock_deg < 180.0) lines.push_back(reader.brightest_inside(place, middle));
    }
    if (lines.size() < kBrightest) return std::numeric_limits<double>::quiet_NaN();
    std::partial_sort(lines.begin(), lines.begin() + kBrightest, lines.end(), std::greater<>());
    return std::accumulate(lines.begin(), lines.begin() + kBrightest, 0.0) / kBrightest;
}

}  // namespace understudy
