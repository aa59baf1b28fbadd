// What a ray costs that has to look for hair: from among the hairs and from the skin under them, over the same ray's
// question to the head's mesh.

#include <random>

#include <fmt/format.h>

#include "bench.h"
#include "setup/read_setup.h"
#include "sitter/hair/kept_strands.h"
#include "sitter/head.h"
#include "stage/mesh_tree.h"
#include "stage/strand_grid.h"

namespace understudy {

namespace {

constexpr std::size_t kRays = 200'000;
constexpr float kOffSkin = 1e-4F;

using Random = std::minstd_rand;

Vec3 any_direction(Random& random) {
    std::normal_distribution<float> spread;
    return glm::normalize(Vec3(spread(random), spread(random), spread(random)));
}

std::vector<Ray> from_hairs(const Strands& strands, Random& random) {
    std::uniform_int_distribution<std::size_t> any(0, strands.points.size() - 1);
    std::vector<Ray> rays;
    while (rays.size() < kRays) {
        const StrandPoint& point = strands.points[any(random)];
        const Vec3 way = any_direction(random);
        rays.push_back({point.place + 2.0F * point.radius * way, way});
    }
    return rays;
}

std::vector<Ray> from_scalp(const SitterMesh& mesh, Random& random) {
    std::vector<std::uint32_t> scalp;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] == Zone::kScalp) scalp.push_back(mesh.triangles[t][0]);
    }
    std::uniform_int_distribution<std::size_t> any(0, scalp.size() - 1);
    std::vector<Ray> rays;
    while (rays.size() < kRays) {
        const auto v = scalp[any(random)];
        const Vec3 way = any_direction(random);
        if (glm::dot(way, mesh.normals[v]) > 0.0F) rays.push_back({mesh.positions[v] + kOffSkin * way, way});
    }
    return rays;
}

void bench_rays_from(const std::string& what, const std::vector<Ray>& rays, const StrandGrid& hair,
                     const MeshTree& mesh) {
    std::size_t hairs = 0;
    std::size_t skins = 0;
    const double through_hair = shortest_time(3, [&] {
        for (const Ray& ray : rays) hairs += hair.meet(ray).distance < kInfinity ? 1 : 0;
    });
    const double to_mesh = shortest_time(3, [&] {
        for (const Ray& ray : rays) skins += mesh.distance(ray) < kInfinity ? 1 : 0;
    });
    const auto share = [](std::size_t met) { return static_cast<double>(met) / (3.0 * static_cast<double>(kRays)); };
    fmt::print(
        "hair-rays: {:26} {:.2f} us among the hairs ({:.0f} % meet one), {:.2f} us to the mesh ({:.0f} %): {:.1f} "
        "times\n",
        what, through_hair / kRays * 1e6, 100.0 * share(hairs), to_mesh / kRays * 1e6, 100.0 * share(skins),
        through_hair / to_mesh);
}

}  // namespace

void bench_hair_rays() {
    const Library library = own_library();
    const auto setup = read_setup(std::filesystem::path(UNDERSTUDY_SCENES_DIR) / "three-to-one.toml", library);
    if (!setup) fail_bench(setup.problems());
    SitterSettings settings = setup->sitter;
    for (const auto& [name, style] : {std::pair("long", HairStyle::kLong), std::pair("afro", HairStyle::kAfro)}) {
        settings.hair.style = style;
        const auto head = load_head(settings, library);
        if (!head) fail_bench(head.problems());
        const Sitter sitter = pose_head(**head, settings, std::nullopt);
        const Strands strands = kept_strands(sitter, {kWidenedHair}, library.kept());
        const StrandGrid hair(strands);
        const MeshTree mesh(sitter.mesh);
        Random random(1);
        bench_rays_from(fmt::format("{} hair, from the hairs", name), from_hairs(strands, random), hair, mesh);
        bench_rays_from(fmt::format("{} hair, from the scalp", name), from_scalp(sitter.mesh, random), hair, mesh);
    }
}

}  // namespace understudy
