#include "denoise/a_trous.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <tbb/parallel_for.h>

#include "denoise/padded_plane.h"

namespace understudy {

namespace {

constexpr int kLevels = 5;
constexpr int kReach = 2 << (kLevels - 1);
// B-spline of the third degree.
constexpr std::array<float, 5> kKernel{1.0F / 16.0F, 1.0F / 4.0F, 3.0F / 8.0F, 1.0F / 4.0F, 1.0F / 16.0F};
// How unlike two pixels may be. By eye, no source.
constexpr float kNormalPower = 32.0F;
constexpr float kDepthShare = 0.01F;  // of the distance, a pixel's step
constexpr float kAlbedoApart = 0.1F;
constexpr float kLightApart = 1.5F;  // of the noise to be expected
constexpr float kDimmest = 0.02F;    // of a white card: darker places are taken for as noisy as this

constexpr float kDarkest = 1e-3F;  // of albedo: what is black gives no light to divide

// What there is at a pixel: pixels of different kinds do not mix.
constexpr float kNothing = 0.0F;
constexpr float kSomething = 1.0F;
constexpr float kUnknown = -1.0F;  // no number, or beyond the edge

Four absolute(const Four& v) { return v < 0.0F ? -v : v; }

struct ThreePlanes {
    ThreePlanes(int width, int height) : x(width, height, kReach), y(x), z(x) {}
    void set(int column, int row, const Vec3& v) {
        x.at(column, row) = v.x;
        y.at(column, row) = v.y;
        z.at(column, row) = v.z;
    }
    Vec3 at(int column, int row) const { return {x.at(column, row), y.at(column, row), z.at(column, row)}; }
    PaddedPlane x, y, z;
};

struct Threes {
    Threes(const ThreePlanes& from, int column, int row)
        : x(from.x.four(column, row)), y(from.y.four(column, row)), z(from.z.four(column, row)) {}
    Four x, y, z;
};

Four dot(const Threes& a, const Threes& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

Four squared_apart(const Threes& a, const Threes& b) {
    const Four x = a.x - b.x;
    const Four y = a.y - b.y;
    const Four z = a.z - b.z;
    return x * x + y * y + z * z;
}

class Filter {
  public:
    Filter(const Picture& picture, const Features& features, int samples)
        : picture_(picture),
          features_(features),
          // Relative spread of one path's light at a pixel, about 1 under an area light; it shrinks by the root of
          // their number and is coded by the light's own root, so that dark places are not smeared.
          apart_(kLightApart / std::sqrt(static_cast<float>(std::max(samples, 1)))),
          what_(picture.width, picture.height, kReach, kUnknown),
          depth_(picture.width, picture.height, kReach),
          normal_(picture.width, picture.height),
          albedo_(picture.width, picture.height),
          light_(picture.width, picture.height),
          smoother_(light_),
          shine_(depth_),
          root_(depth_) {
        tbb::parallel_for(0, picture.height, [&](int y) {
            for (int x = 0; x < picture.width; ++x) take(x, y);
        });
    }

    void pass(int level) {
        const int step = 1 << level;
        look_round();
        tbb::parallel_for(0, picture_.height, [&](int y) {
            for (int x = 0; x < picture_.width; x += 4) smooth(x, y, step);
        });
        std::swap(light_, smoother_);
    }

    Picture picture() const {
        Picture result = picture_;
        for (int y = 0; y < picture_.height; ++y) {
            for (int x = 0; x < picture_.width; ++x) {
                if (what_.at(x, y) != kUnknown) result.pixels[index(x, y)] = light_.at(x, y) * divisor(index(x, y));
            }
        }
        return result;
    }

  private:
    std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(picture_.width) + static_cast<std::size_t>(x);
    }

    Vec3 divisor(std::size_t i) const {
        return features_.depth_m[i] > 0.0F ? glm::max(features_.albedo.pixels[i], Vec3(kDarkest)) : Vec3(1.0F);
    }

    void take(int x, int y) {
        const std::size_t i = index(x, y);
        if (!is_number(picture_.pixels[i])) return;
        const bool something = features_.depth_m[i] > 0.0F;
        what_.at(x, y) = something ? kSomething : kNothing;
        depth_.at(x, y) = features_.depth_m[i];
        normal_.set(x, y, something ? features_.normals[i] : Vec3(0.0F, 0.0F, 1.0F));
        albedo_.set(x, y, features_.albedo.pixels[i]);
        light_.set(x, y, picture_.pixels[i] / divisor(i));
    }

    // The root of how bright each place is, by itself and its neighbours: one pixel's noise would keep it apart from
    // all others.
    void look_round() {
        tbb::parallel_for(0, picture_.height, [&](int y) {
            for (int x = 0; x < picture_.width; ++x) shine_.at(x, y) = std::max(0.0F, brightness(light_.at(x, y)));
        });
        tbb::parallel_for(0, picture_.height, [&](int y) {
            for (int x = 0; x < picture_.width; x += 4) root_.set_four(x, y, root_round(x, y));
        });
    }

    Four root_round(int x, int y) const {
        Four sum = all_four(0.0F);
        Four count = all_four(0.0F);
        for (int v = -1; v <= 1; ++v) {
            for (int u = -1; u <= 1; ++u) {
                sum += shine_.four(x + u, y + v);  // 0 where it is unknown
                count += what_.four(x + u, y + v) != kUnknown ? all_four(1.0F) : all_four(0.0F);
            }
        }
        const Four mean = sum / (count > 0.0F ? count : all_four(1.0F));
        return Four{std::sqrt(mean[0]), std::sqrt(mean[1]), std::sqrt(mean[2]), std::sqrt(mean[3])};
    }

    // Four pixels.
    struct Place {
        Four what, depth, root, noise;
        Threes normal, albedo;
    };
    Place place(int x, int y) const {
        const Four root = root_.four(x, y);
        const Four dimmest = all_four(std::sqrt(kDimmest));
        return {what_.four(x, y), depth_.four(x, y), root, root > dimmest ? root : dimmest,
                {normal_, x, y},  {albedo_, x, y}};
    }

    void smooth(int x, int y, int step) {
        const Place here = place(x, y);
        const Four least = all_four(1e-3F);
        const Four deep = 1.0F / (kDepthShare * static_cast<float>(step) * (here.depth > least ? here.depth : least));
        const float apart = apart_ / static_cast<float>(step);
        Four weights = all_four(0.0F);
        Four red = weights, green = weights, blue = weights;
        for (std::size_t v = 0; v < kKernel.size(); ++v) {
            for (std::size_t u = 0; u < kKernel.size(); ++u) {
                const int column = x + (static_cast<int>(u) - 2) * step;
                const int row = y + (static_cast<int>(v) - 2) * step;
                const float in_kernel = kKernel.at(u) * kKernel.at(v);
                const Four weight = column == x && row == y ? all_four(in_kernel)
                                                            : in_kernel * alike(here, place(column, row), deep, apart);
                red += weight * light_.x.four(column, row);
                green += weight * light_.y.four(column, row);
                blue += weight * light_.z.four(column, row);
                weights += weight;
            }
        }
        smoother_.x.set_four(x, y, red / weights);
        smoother_.y.set_four(x, y, green / weights);
        smoother_.z.set_four(x, y, blue / weights);
    }

    // deep: over the depth that here may lie apart.
    static Four alike(const Place& here, const Place& there, const Four& deep, float apart) {
        const Four turned = kNormalPower * (1.0F - dot(here.normal, there.normal));
        const Four dyed = squared_apart(here.albedo, there.albedo) / (kAlbedoApart * kAlbedoApart);
        const Four light = here.root - there.root;
        // As far apart as noise may bring two places that are as bright as these are between them.
        const Four noise = apart * apart * here.noise * there.noise;
        const Four unlike = turned + absolute(here.depth - there.depth) * deep + dyed + light * light / noise;
        return here.what == there.what ? exponential(-unlike) : all_four(0.0F);
    }

    const Picture& picture_;
    const Features& features_;
    float apart_;
    PaddedPlane what_;
    PaddedPlane depth_;
    ThreePlanes normal_;
    ThreePlanes albedo_;
    ThreePlanes light_;  // over albedo; 0 where it is unknown
    ThreePlanes smoother_;
    PaddedPlane shine_;  // of the light
    PaddedPlane root_;   // of its brightness, with the neighbours'
};

}  // namespace

Picture denoise_a_trous(const Picture& picture, const Features& features, int samples) {
    Filter filter(picture, features, samples);
    for (int level = 0; level < kLevels; ++level) filter.pass(level);
    return filter.picture();
}

}  // namespace understudy
