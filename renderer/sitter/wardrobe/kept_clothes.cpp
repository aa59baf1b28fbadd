#include "sitter/wardrobe/kept_clothes.h"

#include "sitter/kept.h"

namespace understudy {

namespace {

void take(Fingerprint& print, const SkinnedMesh& mesh) {
    print.take_all(mesh.positions);
    print.take_all(mesh.weights);
    print.take_all(mesh.triangles);
    print.take_all(mesh.zones);
}

// All that the shape of clothes depends on. Their colours do not change it; a fabric may.
Fingerprint fingerprint_of(const SkinnedMesh& mesh, const RefinedHead& body, const BonePivots& pivots,
                           const ClothesSettings& clothes) {
    Fingerprint print("clothes");
    take(print, mesh);
    print.take_all(body.positions);
    print.take_all(body.weights);
    print.take_all(body.quads);
    print.take_all(body.zones);
    for (const Double3& pivot : pivots) {
        for (glm::length_t a = 0; a < 3; ++a) print.take(pivot[a]);
    }
    print.take(clothes.outfit);
    print.take(fabric_of(clothes));
    return print;
}

}  // namespace

void put_on_kept_clothes(SkinnedMesh& mesh, const RefinedHead& body, const BonePivots& pivots,
                         const ClothesSettings& clothes, const std::filesystem::path& folder) {
    if (folder.empty()) return put_on_clothes(mesh, body, pivots, clothes);
    const Fingerprint print = fingerprint_of(mesh, body, pivots, clothes);
    if (const auto kept = read_kept(folder, print)) {
        std::string_view bytes = *kept;
        SkinnedMesh dressed;
        const bool whole = take_all(bytes, dressed.positions) && take_all(bytes, dressed.weights) &&
                           take_all(bytes, dressed.triangles) && take_all(bytes, dressed.zones) && bytes.empty();
        if (whole) {
            mesh = std::move(dressed);
            return;
        }
    }
    put_on_clothes(mesh, body, pivots, clothes);
    std::string bytes;
    put_all(bytes, mesh.positions);
    put_all(bytes, mesh.weights);
    put_all(bytes, mesh.triangles);
    put_all(bytes, mesh.zones);
    write_kept(folder, print, bytes);
}

}  // namespace understudy
