#include "meter/catchlights.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "meter/corneal_mirror.h"
#include "meter/eyes.h"
#include "meter/iris_luminance.h"
#include "scatter/fresnel.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

// Something bright whose mirror image an eye may show.
struct Mirrored {
    std::string name;
    bool is_panel = false;
    Double3 centre{0.0};
    std::function<EmitterPoint(const Vec2&)> point_at;
    std::vector<Vec3> outline;
    // What a point counts for: the light it sends toward the eye. A bar or a plate in the light counts nothing.
    std::function<double(const EmitterPoint&)> weight;
    double luminance = 0.0;  // of its brightest part toward the eye, lx·s/sr
};

constexpr int kOutlinePoints = 64;

// A lattice whose rows and columns all lie at different heights: a lid that cuts off a tenth cuts off a tenth of the
// places, whatever way it lies. By the golden section, as in Fibonacci lattices.
Vec2 lattice_place(int index, int count) {
    constexpr double kGolden = 0.6180339887498949;
    const double turns = (static_cast<double>(index) + 0.5) * kGolden;
    return {static_cast<float>((static_cast<double>(index) + 0.5) / count),
            static_cast<float>(turns - std::floor(turns))};
}

class EyeMirror {
  public:
    EyeMirror(const Camera& camera, const Stage& stage, const Eye& eye, std::optional<double> iris_luminance,
              int places)
        : camera_(camera),
          stage_(stage),
          eye_(eye),
          cornea_(cornea_centre(eye)),
          iris_luminance_(iris_luminance),
          places_(places) {}

    Catchlight image_of(const Mirrored& thing, const char* eye_called) const {
        Catchlight image;
        image.eye = eye_called;
        image.light = thing.name;
        image.is_panel = thing.is_panel;
        const MirrorPoint at = mirror(thing.centre);
        const Double3 middle = at.point;
        image.offset_in_iris = Vec2(in_iris(middle));
        const double clock = degrees(
            std::atan2(static_cast<double>(image.offset_in_iris.x), static_cast<double>(image.offset_in_iris.y)));
        image.clock_deg = clock < 0.0 ? clock + 360.0 : clock;
        image.pixel = camera_.pixel_of(middle);
        measure_size(thing, image);
        measure_visible(thing, image);
        if (!iris_luminance_) return image;
        const auto cosine = static_cast<float>(glm::dot(at.normal, glm::normalize(camera_.position() - at.point)));
        const auto mirrored =
            static_cast<double>(dielectric_fresnel(std::max(0.0F, cosine), static_cast<float>(kCorneaIndex)));
        image.stops_over_iris =
            image.visible > 0.0 ? std::log2(mirrored * thing.luminance / *iris_luminance_) : -HUGE_VAL;
        return image;
    }

  private:
    MirrorPoint mirror(const Double3& point) const {
        return mirror_point(cornea_, kCorneaRadius, point, camera_.position());
    }

    // From the iris's centre, across the line of sight, in iris radii as seen in the picture.
    glm::dvec2 in_iris(const Double3& point) const {
        const Double3 iris = iris_centre(eye_);
        const Double3 sight = glm::normalize(iris - camera_.position());
        const Double3 right = glm::normalize(glm::cross(sight, camera_.up()));
        const Double3 up = glm::cross(right, sight);
        const Double3 away = point - iris;
        return glm::dvec2(glm::dot(away, right), glm::dot(away, up)) / kIrisRadius;
    }

    void measure_size(const Mirrored& thing, Catchlight& image) const {
        glm::dvec2 low(1e9);
        glm::dvec2 high(-1e9);
        for (const Vec3& point : thing.outline) {
            const glm::dvec2 place = in_iris(mirror(Double3(point)).point);
            low = glm::min(low, place);
            high = glm::max(high, place);
        }
        image.width_in_iris = high.x - low.x;
        image.height_in_iris = high.y - low.y;
    }

    // "" where the point's mirror image shows, otherwise what takes it away.
    std::string hidden_by(const EmitterPoint& source) const {
        constexpr float kOff = 1e-5F;
        const MirrorPoint at = mirror(Double3(source.position));
        if (glm::dot(at.point - eye_.centre, eye_.axis) < kLimbusAhead) return "off the cornea";
        const Vec3 from(at.point + static_cast<double>(kOff) * at.normal);
        if (glm::dot(Vec3(at.normal), source.position - from) <= 0.0F) return "off the cornea";
        if (glm::dot(source.normal, from - source.position) <= 0.0F) return "its own back";
        if (const auto name = stage_.blocker(shadow_ray(from, Vec3(camera_.position())))) return *name;
        if (const auto name = stage_.blocker(shadow_ray(from, source.position))) return *name;
        return "";
    }

    void measure_visible(const Mirrored& thing, Catchlight& image) const {
        std::map<std::string, double> shares;
        double all = 0.0;
        for (int i = 0; i < places_; ++i) {
            const Vec2 square = lattice_place(i, places_);
            const EmitterPoint point = thing.point_at(square);
            const double weight = thing.weight(point);
            all += weight;
            if (weight > 0.0) shares[hidden_by(point)] += weight;
        }
        image.visible = all > 0.0 ? shares[""] / all : 0.0;
        shares.erase("");
        for (const auto& [name, share] : shares) {
            image.hidden.push_back({name == thing.name ? "itself" : name, share / all});
        }
        image.hidden = by_size(image.hidden);
        if (!image.hidden.empty()) image.hidden_by = image.hidden.front().by;
    }

    const Camera& camera_;
    const Stage& stage_;
    const Eye& eye_;
    Double3 cornea_;
    std::optional<double> iris_luminance_;  // lx·s/sr
    int places_;                            // of a light, for the visible share
};

// Of its places, the brightest toward the eye.
double luminance_of(const Emitter& emitter, const Vec3& from, double power) {
    constexpr int kAcross = 8;
    float brightest = 0.0F;
    for (int i = 0; i < kAcross * kAcross; ++i) {
        const int row = i / kAcross;
        const Vec2 square((static_cast<float>(i % kAcross) + 0.5F) / kAcross,
                          (static_cast<float>(row) + 0.5F) / kAcross);
        const Vec3 place = emitter.point_at(square, from).position;
        brightest = std::max(brightest, emitter.radiance(place, glm::normalize(from - place)));
    }
    return power * static_cast<double>(brightest);
}

Mirrored mirrored_light(const Studio& studio, const Stage& stage, std::size_t index, const Eye& eye, double power) {
    const Emitter& emitter = stage.emitters()[index];
    const Vec3 from(cornea_centre(eye));
    return {studio.setup.lights[index].name,
            false,
            Double3(emitter.centre()),
            [&emitter, from](const Vec2& square) { return emitter.point_at(square, from); },
            emitter.outline(from, kOutlinePoints),
            [&emitter, from](const EmitterPoint& point) {
                const Vec3 away = from - point.position;
                const float distance = glm::length(away);
                const Vec3 toward = away / distance;
                const float cosine = std::max(0.0F, glm::dot(toward, point.normal));
                return static_cast<double>(emitter.radiance(point.position, toward) * point.area * cosine /
                                           (distance * distance));
            },
            luminance_of(emitter, from, power)};
}

Mirrored mirrored_panel(const Studio& studio, const Stage& stage, std::size_t index, const Eye& eye, double luminance) {
    const Board& panel = stage.panels()[index];
    const Vec3 from(cornea_centre(eye));
    const Vec3 normal = glm::dot(panel.axis(), from - panel.centre()) > 0.0F ? panel.axis() : -panel.axis();
    return {studio.setup.panels[index].name,
            true,
            Double3(panel.centre()),
            [&panel, normal](const Vec2& square) {
                return EmitterPoint{panel.point_at(square), normal, panel.area()};
            },
            panel.outline(kOutlinePoints),
            [](const EmitterPoint&) { return 1.0; },
            luminance};
}

// Mean luminance of a panel as an eye sees it, lx·s/sr: 256 ways to it.
double panel_luminance(const Stage& stage, std::size_t index, const Eye& eye, const std::vector<Bands>& weights) {
    constexpr std::uint32_t kWays = 256;
    const PathTracer tracer(stage);
    const Vec3 from(eye.centre + (kApexAhead + 1e-4) * eye.axis);
    double sum = 0.0;
    for (std::uint32_t i = 0; i < kWays; ++i) {
        const Sampler sampler(0x70616e65, static_cast<std::uint32_t>(index), i);
        const Vec4 numbers = sampler.group(kFilmAndLens);
        const Ray ray{from, glm::normalize(stage.panels()[index].point_at({numbers.x, numbers.y}) - from)};
        const auto hit = stage.intersect(ray);
        if (!hit || hit->thing != Thing::kPanel || hit->index != index) continue;
        const Waves waves = sample_waves(sampler.group(kWave).x);
        PathLight light;
        tracer.look(ray, waves, sampler, light);
        for (std::size_t l = 0; l < weights.size(); ++l) {
            for (std::size_t w = 0; w < kWaveCount; ++w) {
                sum += static_cast<double>(light.layers[l][static_cast<glm::length_t>(w)] * weights[l][waves.band[w]]) *
                       kBandCount / kWaveCount;
            }
        }
    }
    return sum / kWays;
}

// A cloth with a lamp behind it spreads the lamp's light over its own area, so it is fainter than the lamp by as much
// as it is larger, and yet it is the light that the eye shows.
constexpr double kFaintestScrim = 0.01;

bool is_scrim(const Stage& stage, std::size_t panel) {
    const auto& scrims = stage.scrims();
    return std::any_of(scrims.begin(), scrims.end(), [&](const Scrim& scrim) { return scrim.panel == panel; });
}

double brightest_light(const Stage& stage, const LitStudio& lit) {
    double brightest = 0.0;
    for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
        brightest = std::max(brightest,
                             lit.layers[i].exposure_power * static_cast<double>(stage.emitters()[i].even_radiance()));
    }
    return brightest;
}

}  // namespace

std::vector<Catchlight> find_catchlights(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                         const std::vector<EyeReading>& eyes, int places) {
    const Camera camera(studio);
    const std::vector<Bands> weights = exposure_weights(lit.layers);
    const double faintest = kFaintestPanel * brightest_light(stage, lit);
    std::vector<Catchlight> found;
    for (std::size_t e = 0; e < stage.eyes().size(); ++e) {
        const Eye& eye = stage.eyes()[e];
        const auto iris =
            eyes.empty() ? std::nullopt : std::optional(iris_luminance(stage, eye, weights, eyes[e].exposure_lxs));
        const EyeMirror mirror(camera, stage, eye, iris, places);
        for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
            const double power = lit.layers[i].exposure_power;
            found.push_back(mirror.image_of(mirrored_light(studio, stage, i, eye, power), eye_name(e)));
        }
        for (std::size_t i = 0; i < stage.panels().size(); ++i) {
            const double luminance = panel_luminance(stage, i, eye, weights);
            const Catchlight image = mirror.image_of(mirrored_panel(studio, stage, i, eye, luminance), eye_name(e));
            const double least = is_scrim(stage, i) ? kFaintestScrim * faintest : faintest;
            if (image.visible > 0.0 && luminance >= least) found.push_back(image);
        }
    }
    return found;
}

}  // namespace understudy
