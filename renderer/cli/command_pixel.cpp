// understudy pixel SCENE X Y: one pixel taken apart, for whoever wonders why it looks as it does.

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/own_library.h"
#include "stage/camera.h"
#include "transport/camera_path.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

struct PixelWish {
    SceneWish scene;
    int x = 0;
    int y = 0;
    int sample = -1;  // all of the scene's
};

std::string in_words(const Vec3& v) { return fmt::format("({:.4f}, {:.4f}, {:.4f})", v.x, v.y, v.z); }

void print_middle(const Rehearsal& rehearsal, const PixelWish& wish) {
    const Camera camera(rehearsal.studio);
    const Ray ray = camera.ray({static_cast<float>(wish.x) + 0.5F, static_cast<float>(wish.y) + 0.5F}, {0.5F, 0.5F});
    const auto hit = rehearsal.stage->intersect(ray);
    if (!hit) {
        fmt::print("through its middle: nothing\n");
        return;
    }
    fmt::print("through its middle: {} at {}, {:.4f} m from the lens\n", rehearsal.stage->blocker(ray).value_or("?"),
               in_words(hit->position), hit->distance);
    fmt::print("  normal of the triangle or shape {}, smooth normal {}\n", in_words(hit->geometric),
               in_words(hit->shading));
}

int run_pixel(const PixelWish& wish) {
    auto rehearsal = open_rehearsal(wish.scene);
    if (!rehearsal) return complain(rehearsal.problems());
    const Setup& setup = rehearsal->studio.setup;
    if (wish.x >= setup.picture.width || wish.y >= setup.picture.height) {
        return complain(
            {{Blame::kWrongInput, fmt::format("the pixel {}, {} is outside the picture; expected 0, 0 to {}, {}",
                                              wish.x, wish.y, setup.picture.width - 1, setup.picture.height - 1)}});
    }
    if (const auto lit = light_rehearsal(*rehearsal); !lit) return complain(lit.problems());
    print_middle(*rehearsal, wish);
    const Camera camera(rehearsal->studio);
    const PathTracer tracer(*rehearsal->stage);
    const int first = wish.sample < 0 ? 0 : wish.sample;
    const int last = wish.sample < 0 ? setup.picture.samples : wish.sample + 1;
    for (int sample = first; sample < last; ++sample) {
        const PixelSample wanted{wish.x, wish.y, sample};
        std::vector<Path> paths = camera_paths(camera, setup.picture.seed, setup.picture.width, std::span(&wanted, 1));
        tracer.look(paths);
        const Path& path = paths.front();
        const PathLight& light = path.light;
        fmt::print("sample {:5}, {} rays, at {:.0f} {:.0f} {:.0f} {:.0f} nm:", sample, light.rays, path.waves.nm[0],
                   path.waves.nm[1], path.waves.nm[2], path.waves.nm[3]);
        for (std::size_t l = 0; l < rehearsal->stage->layer_count(); ++l) {
            const Light4& value = light.layers[l];
            const std::string name = l < setup.lights.size() ? setup.lights[l].name : "ambient";
            fmt::print("  {} {:.4g} {:.4g} {:.4g} {:.4g}", name, value.x, value.y, value.z, value.w);
        }
        fmt::print("\n");
    }
    return kDone;
}

}  // namespace

void add_pixel(CLI::App& program, int& status) {
    const auto wish = std::make_shared<PixelWish>();
    CLI::App* command =
        program.add_subcommand("pixel", "Take one pixel apart: what it sees, and what each of its paths brings");
    take_scene(*command, wish->scene);
    command->add_option("X", wish->x, "From the left, from 0")->required()->check(CLI::NonNegativeNumber);
    command->add_option("Y", wish->y, "From the top, from 0")->required()->check(CLI::NonNegativeNumber);
    command->add_option("--sample", wish->sample, "This path only (default: all)")->check(CLI::NonNegativeNumber);
    command->callback([wish, &status] { status = run_pixel(*wish); });
}

}  // namespace understudy
