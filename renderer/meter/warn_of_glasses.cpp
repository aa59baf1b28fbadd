// Lights and panels that the lenses of glasses mirror over an eye, as the camera sees it: solved by reflection.
#include <algorithm>
#include <cmath>
#include <map>

#include "film/exposure.h"
#include "meter/eyes.h"
#include "meter/warnings.h"
#include "stage/camera.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

constexpr double kPercent = 100.0;
// The eye between its lids, with room to spare, and how finely it is looked at; metres.
constexpr double kHalfWidth = 0.016;
constexpr double kHalfHeight = 0.010;
constexpr double kStep = 0.0008;
// A veil that lifts the black pupil to a tone that shows: an eighth of mid-grey. Common practice, no source.
constexpr double kFaintestVeil = kMidGrey / 8.0;
// What is tried to be rid of it.
constexpr int kMostTip = 15;        // degrees
constexpr int kMostRise = 20;       // steps of a hand's breadth
constexpr double kRiseStep = 0.05;  // metres

// Where the camera sees an eye through a lens.
struct SeenThrough {
    Ray sight;         // from the camera
    std::size_t lens;  // through which
};

std::vector<SeenThrough> sights_of(const Stage& stage, const Vec3& camera, std::size_t eye) {
    const Vec3 centre(stage.eyes()[eye].centre);
    const Frame across = Frame::around(glm::normalize(camera - centre));
    std::vector<SeenThrough> sights;
    const auto half = static_cast<float>(std::max(kHalfWidth, kHalfHeight));
    const auto step = static_cast<float>(kStep);
    for (float x = -half; x <= half; x += step) {
        for (float y = -half; y <= half; y += step) {
            const Vec3 aimed = centre + x * across.tangent + y * across.bitangent;
            Ray sight{camera, glm::normalize(aimed - camera)};
            const auto hit = stage.intersect(sight);
            const bool is_eye = hit && (hit->thing == Thing::kCornea || hit->thing == Thing::kEyeWhite);
            if (!is_eye || hit->index != eye) continue;
            sight.far = hit->distance;
            for (std::size_t l = 0; l < stage.lenses().size(); ++l) {
                if (stage.lenses()[l].intersect(sight)) sights.push_back({sight, l});
            }
        }
    }
    return sights;
}

struct Mirrored {
    Ray way;           // on from the lens
    double share = 0;  // of the light that the lens mirrors
};

std::optional<Mirrored> mirrored_by(const Lens& lens, const Ray& sight) {
    constexpr float kOff = 1e-5F;
    const auto met = lens.intersect(sight);
    if (!met) return std::nullopt;
    const Vec3 normal = glm::dot(met->normal, sight.direction) > 0.0F ? -met->normal : met->normal;
    const float cosine = std::min(1.0F, -glm::dot(normal, sight.direction));
    const Vec3 direction = sight.direction + 2.0F * cosine * normal;
    return Mirrored{{sight.at(met->distance) + kOff * normal, direction}, static_cast<double>(lens.mirrors(cosine))};
}

// Luminous exposure per solid angle along a ray, lx·s/sr: one way, at four wavelengths.
double luminance(const PathTracer& tracer, const Ray& ray, const std::vector<Bands>& weights, std::uint32_t number) {
    const Sampler sampler(0x676c6172, number, 0);
    const Waves waves = sample_waves(sampler.group(1).x);
    PathLight light;
    tracer.look(ray, waves, sampler, light);
    double sum = 0.0;
    for (std::size_t l = 0; l < weights.size(); ++l) {
        for (std::size_t w = 0; w < kWaveCount; ++w) {
            sum += static_cast<double>(light.layers[l][static_cast<glm::length_t>(w)] * weights[l][waves.band[w]]);
        }
    }
    return sum * kBandCount / kWaveCount;
}

struct Glare {
    bool is_panel = false;
    std::size_t index = 0;
    int places = 0;
    double veil = 0.0;  // lx·s/sr, summed over the places
};

// Turned about its own middle, the upper edge forward for plus.
Lens tipped(const Lens& lens, double by_deg) {
    SpectacleLens place = lens.place();
    const Double3 middle = place.centre + place.radius_m * place.axis;
    const double cosine = std::cos(radians(by_deg));
    const double sine = std::sin(radians(by_deg));
    const Double3 axis = cosine * place.axis - sine * place.up;
    place.up = cosine * place.up + sine * place.axis;
    place.axis = axis;
    place.centre = middle - place.radius_m * axis;
    return {place, LensCoating::kPlain};
}

class Clearing {
  public:
    Clearing(const Stage& stage, const std::vector<SeenThrough>& sights, const Glare& glare)
        : stage_(stage), sights_(sights), glare_(glare) {}

    // The smallest tip of the glasses that keeps the thing out of the eye, in degrees; plus brings the upper edge
    // forward.
    std::optional<double> by_tipping() const {
        for (int by = 1; by <= kMostTip; ++by) {
            for (const int sense : {1, -1}) {
                if (clear(sense * by, 0.0)) return sense * by;
            }
        }
        return std::nullopt;
    }

    // The least that the thing has to be raised, not turned, in metres.
    std::optional<double> by_raising() const {
        for (int by = 1; by <= kMostRise; ++by) {
            if (clear(0.0, kRiseStep * by)) return kRiseStep * by;
        }
        return std::nullopt;
    }

  private:
    bool clear(double tip_deg, double raised_m) const {
        std::vector<Lens> lenses;
        for (const Lens& lens : stage_.lenses()) lenses.push_back(tipped(lens, tip_deg));
        return std::none_of(sights_.begin(), sights_.end(), [&](const SeenThrough& sight) {
            const auto mirrored = mirrored_by(lenses[sight.lens], sight.sight);
            if (!mirrored) return false;
            Ray way = mirrored->way;
            way.origin.y -= static_cast<float>(raised_m);
            if (glare_.is_panel) return stage_.panels()[glare_.index].blocks(way);
            const auto met = stage_.emitters()[glare_.index].intersect(way);
            return met && met->luminous;
        });
    }

    const Stage& stage_;
    const std::vector<SeenThrough>& sights_;
    const Glare& glare_;
};

std::map<std::string, Glare> glares_over(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                         const std::vector<SeenThrough>& sights) {
    const PathTracer tracer(stage);
    const std::vector<Bands> weights = exposure_weights(lit.layers);
    std::map<std::string, Glare> glares;
    std::uint32_t number = 0;
    for (const SeenThrough& sight : sights) {
        const auto mirrored = mirrored_by(stage.lenses()[sight.lens], sight.sight);
        if (!mirrored) continue;
        const auto hit = stage.intersect(mirrored->way);
        const bool light = hit && hit->thing == Thing::kEmitter && hit->luminous;
        const bool panel = hit && hit->thing == Thing::kPanel;
        if (!light && !panel) continue;
        const Setup& setup = studio.setup;
        Glare& glare = glares[light ? setup.lights[hit->index].name : setup.panels[hit->index].name];
        glare.is_panel = panel;
        glare.index = hit->index;
        ++glare.places;
        glare.veil += mirrored->share * luminance(tracer, mirrored->way, weights, ++number);
    }
    return glares;
}

}  // namespace

std::vector<Warning> warn_of_glasses(const Studio& studio, const Stage& stage, const LitStudio& lit) {
    if (stage.lenses().empty()) return {};
    const ExposureSettings& exposure = studio.setup.camera.exposure;
    const Vec3 camera(Camera(studio).position());
    std::vector<Warning> warnings;
    for (std::size_t e = 0; e < stage.eyes().size(); ++e) {
        const auto sights = sights_of(stage, camera, e);
        for (const auto& [name, glare] : glares_over(studio, stage, lit, sights)) {
            const double veil = glare.veil / glare.places * linear_per_exposure(exposure.aperture, exposure.iso);
            if (veil < kFaintestVeil) continue;
            const Clearing clearing(stage, sights, glare);
            Warning warning{
                WarningKind::kGlassesGlare, name, kPercent * glare.places / static_cast<double>(sights.size()),
                std::log2(veil / kMidGrey), {},   eye_name(e)};
            warning.tip_deg = clearing.by_tipping();
            warning.raise_m = clearing.by_raising();
            warnings.push_back(warning);
        }
    }
    return warnings;
}

}  // namespace understudy
