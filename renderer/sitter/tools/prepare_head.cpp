// prepare_head PACKAGE_DIR OUT_DIR: cuts the head package down to what a portrait shows and writes it whole or not at
// all.
#include <fmt/format.h>

#include <unistd.h>
#include <algorithm>
#include <cstring>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "sitter/head_data.h"
#include "sitter/tools/arches.h"
#include "sitter/tools/loops.h"
#include "sitter/tools/package.h"
#include "sitter/tools/zoning.h"

namespace understudy {
namespace {

constexpr double kWaist = 0.165;  // metres in the package's axes; its eyes are at 0.728

// Vertex numbers of the package's own mesh.
constexpr std::uint32_t kLeftEyeballFirst = 14598;
constexpr std::uint32_t kLeftEyeballLast = 14669;
constexpr std::array<std::uint32_t, 2> kLeftInnerMarginEdge = {7773, 7774};
constexpr std::array<std::uint32_t, 2> kLeftOuterMarginEdge = {7747, 7748};

// The bone of ours that carries each bone of the package.
Bone carrier(const Package& package, int bone) {
    static const std::map<std::string, Bone> kCarriers = {{"neck01", kNeck1},         {"neck02", kNeck2},
                                                          {"neck03", kNeck3},         {"head", kSkull},
                                                          {"upperarm01.L", kLeftArm}, {"upperarm01.R", kRightArm}};
    for (int b = bone; b >= 0; b = package.bones.at(static_cast<std::size_t>(b)).parent) {
        std::string name = package.bones.at(static_cast<std::size_t>(b)).name;
        name = name.substr(0, name.find("____"));
        const auto found = kCarriers.find(name);
        if (found != kCarriers.end()) return found->second;
    }
    return kTrunk;
}

bool of_the_hand(const std::string& bone) {
    return bone.starts_with("wrist") || bone.starts_with("finger") || bone.starts_with("metacarpal");
}

double hand_share(const Package& package, std::uint32_t vertex) {
    double share = 0.0;
    for (const auto& [bone, weight] : package.weights[vertex]) {
        if (of_the_hand(package.bones.at(static_cast<std::size_t>(bone)).name)) share += weight;
    }
    return share;
}

constexpr double kThroat = 0.112;  // metres in the package's axes, forward; the lips are at 0.151

// Nobody sees the tongue from below, nor its root.
bool hidden_in_the_mouth(const Package& package, std::size_t face) {
    if (face < package.body_faces) return false;
    const auto& c = package.faces[face];
    const auto& p = package.positions;
    return glm::cross(p[c[2]] - p[c[0]], p[c[3]] - p[c[1]]).y < 0.0 || p[c[0]].z < kThroat;
}

std::vector<std::size_t> kept_faces(const Package& package) {
    std::vector<std::size_t> kept;
    for (std::size_t f = 0; f < package.faces.size(); ++f) {
        const auto& corners = package.faces[f];
        const bool keep = std::all_of(corners.begin(), corners.end(), [&](std::uint32_t v) {
            return package.positions[v].y > kWaist && hand_share(package, v) < 0.5;
        });
        if (keep && !hidden_in_the_mouth(package, f)) kept.push_back(f);
    }
    return kept;
}

// ---- lid margins ----------------------------------------------------------------------------------------------------

std::array<EyeMarks, 2> find_eyes(const Package& package) {
    const QuadNet net(package.faces);
    EyeMarks left;
    for (auto v = kLeftEyeballFirst; v <= kLeftEyeballLast; ++v) left.eyeball.push_back(v);
    left.inner_margin = net.loop_from(kLeftInnerMarginEdge);
    left.outer_margin = net.loop_from(kLeftOuterMarginEdge);
    EyeMarks right = left;
    for (auto* list : {&right.eyeball, &right.inner_margin, &right.outer_margin}) {
        for (auto& v : *list) v = mirrored(package, v);
    }
    return {right, left};
}

// Bones turn about the means of these vertices: small cubes that the package keeps in the joints.
std::array<std::vector<std::uint32_t>, kBoneCount> find_pivots(const nlohmann::json& joints) {
    std::array<std::vector<std::uint32_t>, kBoneCount> pivots;
    const std::array<const char*, kBoneCount> names = {"spine01", "neck01",       "neck02",      "neck03",
                                                       "head",    "upperarm01.L", "upperarm01.R"};
    for (std::size_t b = 0; b < kBoneCount; ++b) {
        pivots.at(b) = joints.at(std::string(names.at(b)) + "____head").get<std::vector<std::uint32_t>>();
    }
    return pivots;
}

// ---- the kept part and its files ------------------------------------------------------------------------------------

struct Kept {
    std::vector<std::size_t> faces;
    std::vector<std::uint32_t> vertices;  // of the package, skin first, marks after
    std::size_t skin = 0;
    std::map<std::uint32_t, std::uint32_t> renumbered;
};

void keep(Kept& kept, std::uint32_t vertex) {
    const auto number = static_cast<std::uint32_t>(kept.vertices.size());
    if (kept.renumbered.emplace(vertex, number).second) kept.vertices.push_back(vertex);
}

std::string obj_text(const Package& package, const Kept& kept, const std::vector<Zone>& zones) {
    std::string text = "# Prepared from the head package; see assets/README.md\n";
    for (const auto v : kept.vertices) {
        const Double3& p = package.positions[v];
        text += fmt::format("v {:.6f} {:.6f} {:.6f}\n", p.x, p.y, p.z);
    }
    for (std::size_t z = 0; z < static_cast<std::size_t>(Zone::kCount); ++z) {
        std::string name(zone_name(static_cast<Zone>(z)));
        std::replace(name.begin(), name.end(), ' ', '_');
        text += fmt::format("g {}\n", name);
        for (std::size_t f = 0; f < kept.faces.size(); ++f) {
            if (zones[f] != static_cast<Zone>(z)) continue;
            text += "f";
            for (const auto v : package.faces[kept.faces[f]]) text += fmt::format(" {}", kept.renumbered.at(v) + 1);
            text += "\n";
        }
    }
    return text;
}

std::vector<std::uint32_t> renumber(const Kept& kept, const std::vector<std::uint32_t>& vertices) {
    std::vector<std::uint32_t> out;
    out.reserve(vertices.size());
    for (const auto v : vertices) out.push_back(kept.renumbered.at(v));
    return out;
}

std::string rig_text(const Package& package, const Kept& kept, const std::array<EyeMarks, 2>& eyes,
                     const std::array<std::vector<std::uint32_t>, kBoneCount>& pivots) {
    nlohmann::json rig;
    for (const ArchMarks& arch : find_arches(package)) {
        rig["arches"].push_back({{"root", renumber(kept, arch.root)}, {"edge", renumber(kept, arch.edge)}});
    }
    for (std::size_t b = 0; b < kBoneCount; ++b) rig["pivots"][kBoneNames.at(b)] = renumber(kept, pivots.at(b));
    for (const EyeMarks& eye : eyes) {
        rig["eyes"].push_back({{"eyeball", renumber(kept, eye.eyeball)},
                               {"inner_margin", renumber(kept, eye.inner_margin)},
                               {"outer_margin", renumber(kept, eye.outer_margin)}});
    }
    rig["lips_meet"] = renumber(kept, line_between_lips(package));
    for (std::size_t i = 0; i < kept.skin; ++i) {
        std::array<double, kBoneCount> shares{};
        double sum = 0.0;
        for (const auto& [bone, weight] : package.weights[kept.vertices[i]]) {
            shares.at(carrier(package, bone)) += weight;
            sum += weight;
        }
        for (double& share : shares) share = std::round(1e4 * share / sum) / 1e4;
        rig["weights"].push_back(shares);
    }
    return rig.dump() + "\n";
}

template <class T>
void append(std::string& bytes, const T& thing) {
    bytes.append(reinterpret_cast<const char*>(&thing), sizeof thing);
}

std::string shapes_bytes(const Package& package, const Kept& kept) {
    std::string entries;
    std::string deltas;
    ShapesHeader header;
    header.vertices = static_cast<std::uint32_t>(kept.vertices.size());
    for (std::size_t s = 0; s < package.shape_names.size(); ++s) {
        ShapesEntry entry;
        const std::string& name = package.shape_names[s];
        if (name.size() >= entry.name.size()) continue;
        std::copy(name.begin(), name.end(), entry.name.begin());
        entry.first = deltas.size() / sizeof(ShapesDelta);
        for (std::size_t i = 0; i < kept.vertices.size(); ++i) {
            const std::int16_t* d = &package.shape_deltas[(s * package.positions.size() + kept.vertices[i]) * 3];
            if (d[0] == 0 && d[1] == 0 && d[2] == 0) continue;
            append(deltas, ShapesDelta{static_cast<std::uint16_t>(i), {d[0], d[1], d[2]}});
            ++entry.count;
        }
        append(entries, entry);
        ++header.shapes;
    }
    std::string bytes;
    append(bytes, header);
    return bytes + entries + deltas;
}

bool write_file(const std::filesystem::path& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    return static_cast<bool>(file);
}

Double3 middle_of(const Package& package, const std::vector<std::uint32_t>& vertices) {
    Double3 sum(0.0);
    for (const auto v : vertices) sum += package.positions[v];
    return sum / static_cast<double>(vertices.size());
}

Expected<Done> write_all(const std::filesystem::path& out, const std::map<std::string, std::string>& files) {
    std::error_code error;
    const std::filesystem::path part = out.string() + fmt::format(".part-{}", getpid());
    std::filesystem::create_directories(part, error);
    if (error) return Problem{Blame::kFailed, fmt::format("{}: {}", part.string(), error.message())};
    for (const auto& [name, bytes] : files) {
        if (write_file(part / name, bytes)) continue;
        std::filesystem::remove_all(part, error);
        return Problem{Blame::kFailed, fmt::format("{}: cannot be written", (part / name).string())};
    }
    std::filesystem::remove_all(out, error);
    std::filesystem::rename(part, out, error);
    if (error) return Problem{Blame::kFailed, fmt::format("{}: {}", out.string(), error.message())};
    return Done{};
}

Expected<Done> prepare(const std::filesystem::path& package_folder, const std::filesystem::path& out) {
    auto read = read_package(package_folder);
    if (!read) return read.problems();
    let_tongue_follow(*read);
    const Package& package = *read;
    const auto eyes = find_eyes(package);
    if (eyes[1].inner_margin.empty() || eyes[1].inner_margin.size() != eyes[1].outer_margin.size()) {
        return Problem{Blame::kFailed, fmt::format("{}: no lid margins found", package_folder.string())};
    }
    if (line_between_lips(package).empty()) {
        return Problem{Blame::kFailed, fmt::format("{}: no line between the lips found", package_folder.string())};
    }
    if (package.body_faces == package.faces.size()) {
        return Problem{Blame::kFailed, fmt::format("{}: no tongue found", package_folder.string())};
    }
    std::ifstream mesh_file(package_folder / "public/data/models/human_full_size.json");
    const auto mesh = nlohmann::json::parse(mesh_file);
    const auto pivots = find_pivots(mesh.at("metadata").at("joint_pos_idxs"));
    Kept kept;
    kept.faces = kept_faces(package);
    for (const auto f : kept.faces) {
        for (const auto v : package.faces[f]) keep(kept, v);
    }
    kept.skin = kept.vertices.size();
    for (const auto& eye : eyes) {
        for (const auto v : eye.eyeball) keep(kept, v);
    }
    for (const auto& pivot : pivots) {
        for (const auto v : pivot) keep(kept, v);
    }
    for (const ArchMarks& arch : find_arches(package)) {
        for (const auto v : arch.root) keep(kept, v);
        for (const auto v : arch.edge) keep(kept, v);
    }
    const auto zones =
        zones_of(package, kept.faces, {middle_of(package, eyes[0].eyeball), middle_of(package, eyes[1].eyeball)});
    fmt::print("head: {} quads, {} vertices\n", kept.faces.size(), kept.skin);
    return write_all(out, {{"head.obj", obj_text(package, kept, zones)},
                           {"head.rig.json", rig_text(package, kept, eyes, pivots)},
                           {"head.shapes", shapes_bytes(package, kept)}});
}

}  // namespace
}  // namespace understudy

int main(int count, char** words) {
    if (count != 3) {
        fmt::print(stderr, "usage: prepare_head PACKAGE_DIR OUT_DIR\n");
        return 2;
    }
    try {
        const auto done = understudy::prepare(words[1], words[2]);
        if (done) return 0;
        for (const auto& problem : done.problems()) fmt::print(stderr, "{}\n", problem.text);
    } catch (const std::exception& error) {
        fmt::print(stderr, "{}: {}\n", words[1], error.what());
    }
    return 1;
}
