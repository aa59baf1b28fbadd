#include "claims/skin_tones.h"

#include <algorithm>

#include "meter/picture_tone.h"
#include "meter/ratio.h"
#include "stage/camera.h"

namespace understudy {

namespace {

constexpr double kRelative = 0.02;
constexpr int kPatch = 2;             // places on either side of the middle one
constexpr double kPatchStep = 0.002;  // metres between them
// The forehead is looked at over this much of it, more coarsely.
constexpr int kForehead = 4;
constexpr double kForeheadStep = 0.008;

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

}  // namespace understudy
