#include "meter/backdrop_readings.h"

#include <algorithm>
#include <cmath>

#include "meter/picture_tone.h"
#include "meter/ratio.h"
#include "meter/read_point.h"
#include "stage/camera.h"

namespace understudy {

namespace {

constexpr double kRelative = 0.005;  // that a tone is wanted to

struct Spot {
    const char* name;
    Vec2 pixel;
};

std::vector<Spot> spots(const PictureSettings& picture) {
    const auto right = static_cast<float>(picture.width) - 0.5F;
    const auto bottom = static_cast<float>(picture.height) - 0.5F;
    return {{"centre", 0.5F * Vec2(picture.width, picture.height)},
            {"top-left", {0.5F, 0.5F}},
            {"top-right", {right, 0.5F}},
            {"bottom-left", {0.5F, bottom}},
            {"bottom-right", {right, bottom}}};
}

class BackdropReader {
  public:
    BackdropReader(const Studio& studio, const Stage& stage, const LitStudio& lit, const std::vector<Reading>& readings)
        : setup_(studio.setup), stage_(stage), lit_(lit), tone_(setup_, lit, readings) {
        const Reading* face = find_reading(readings, "face", Receptor::kFlat, Facing::kKey);
        face_lxs_ = face->exposure_lxs;
    }

    BackdropTone tone_at(const Hit& hit, const Vec3& from_camera) const {
        const ExposureSettings& exposure = setup_.camera.exposure;
        const MeterPoint point{
            "backdrop", Receptor::kFlat, Facing::kSurface, Double3(hit.leave_from), Double3(hit.geometric), false};
        const Reading reading = read_point(point, stage_, lit_.layers, exposure);
        BackdropTone tone;
        tone.position_m = Double3(hit.position);
        tone.exposure_lxs = reading.exposure_lxs;
        tone.standard_error_lxs = reading.standard_error_lxs;
        tone.f_number = reading.f_number;
        tone.stops_from_face = std::log2(reading.exposure_lxs / face_lxs_);

        const Ray ray{hit.position - kBefore * from_camera, from_camera};
        const Vec3 pixel = tone_.along(stage_, ray, kRelative);
        tone.linear = luminance_of(pixel);
        tone.stops_from_grey = std::log2(tone.linear / kMidGrey);
        tone.clipped = std::max({pixel.x, pixel.y, pixel.z}) > 1.0F;
        return tone;
    }

  private:
    // The look at the paper starts this near to it, in front of whatever hides it from the camera.
    static constexpr float kBefore = 1e-3F;

    const Setup& setup_;
    const Stage& stage_;
    const LitStudio& lit_;
    PictureTone tone_;
    double face_lxs_ = 0.0;
};

}  // namespace

std::vector<BackdropPlace> read_backdrop(const Studio& studio, const Stage& stage, const Stage& nobody,
                                         const LitStudio& lit, const std::vector<Reading>& readings) {
    const Camera camera(studio);
    const BackdropReader reader(studio, stage, lit, readings);
    std::vector<BackdropPlace> places;
    for (const Spot& spot : spots(studio.setup.picture)) {
        BackdropPlace place;
        place.place = spot.name;
        place.pixel = spot.pixel;
        const Ray ray = camera.ray(spot.pixel, kLensMiddle);
        place.meets = nobody.blocker(ray).value_or("");
        const auto hit = nobody.intersect(ray);
        if (hit && hit->thing == Thing::kBackdrop) {
            Ray way = ray;
            way.far = hit->distance * (1.0F - 1e-4F);
            place.hidden_by = stage.blocker(way).value_or("");
            place.tone = reader.tone_at(*hit, ray.direction);
        }
        places.push_back(place);
    }
    return places;
}

}  // namespace understudy
