#include "sitter/head_data.h"

#include <fmt/format.h>
#include <tiny_obj_loader.h>

#include <algorithm>
#include <cstring>
#include <fstream>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <sstream>

namespace understudy {
namespace {

Problem not_prepared(const std::filesystem::path& path, const std::string& why) {
    return {Blame::kFailed, fmt::format("{}: {}; prepare the head mesh with assets/fetch_head.sh and prepare_head",
                                        path.string(), why)};
}

std::optional<Zone> zone_of_group(std::string group) {
    std::replace(group.begin(), group.end(), '_', ' ');
    for (std::size_t z = 0; z < static_cast<std::size_t>(Zone::kCount); ++z) {
        if (zone_name(static_cast<Zone>(z)) == group) return static_cast<Zone>(z);
    }
    return std::nullopt;
}

void read_mesh(const std::filesystem::path& path, HeadData& data) {
    tinyobj::ObjReaderConfig config;
    config.triangulate = false;
    tinyobj::ObjReader reader;
    if (!reader.ParseFromFile(path.string(), config)) throw std::runtime_error(reader.Error());
    const auto& flat = reader.GetAttrib().vertices;
    for (std::size_t i = 0; i + 2 < flat.size(); i += 3) {
        const auto number = [&](std::size_t k) { return static_cast<double>(flat[i + k]); };
        data.positions.emplace_back(number(0), number(1), number(2));
    }
    for (const auto& shape : reader.GetShapes()) {
        const auto zone = zone_of_group(shape.name);
        if (!zone || shape.mesh.indices.size() != 4 * shape.mesh.num_face_vertices.size()) {
            throw std::runtime_error("a group that is no zone of quads");
        }
        for (std::size_t i = 0; i < shape.mesh.indices.size(); i += 4) {
            Quad quad{};
            for (std::size_t k = 0; k < 4; ++k) {
                quad.at(k) = static_cast<std::uint32_t>(shape.mesh.indices[i + k].vertex_index);
            }
            data.quads.push_back(quad);
            data.zones.push_back(*zone);
        }
    }
}

std::vector<std::uint32_t> vertex_list(const nlohmann::json& list, std::size_t vertices) {
    auto numbers = list.get<std::vector<std::uint32_t>>();
    if (numbers.empty()) throw std::runtime_error("an empty list of vertices");
    for (const auto number : numbers) {
        if (number >= vertices) throw std::runtime_error("a vertex number out of range");
    }
    return numbers;
}

// A closed line of edges of the mesh: it has to stay one when the mesh is made finer.
std::vector<std::uint32_t> closed_line(const nlohmann::json& list, const HeadData& data) {
    auto line = vertex_list(list, data.weights.size());
    std::set<std::pair<std::uint32_t, std::uint32_t>> missing;
    for (std::size_t i = 0; i < line.size(); ++i) missing.insert(std::minmax(line[i], line[(i + 1) % line.size()]));
    if (line.size() < 3 || missing.size() < line.size()) throw std::runtime_error("a line that is not closed");
    for (const Quad& quad : data.quads) {
        for (std::size_t k = 0; k < 4; ++k) missing.erase(std::minmax(quad.at(k), quad.at((k + 1) % 4)));
    }
    if (!missing.empty()) throw std::runtime_error("a line that is not of the mesh");
    return line;
}

ArchMarks arch_marks(const nlohmann::json& marks, std::size_t vertices) {
    ArchMarks arch{vertex_list(marks.at("root"), vertices), vertex_list(marks.at("edge"), vertices)};
    if (arch.root.size() != arch.edge.size()) throw std::runtime_error("an arch whose root and edge do not match");
    if (std::set(arch.edge.begin(), arch.edge.end()).size() < std::max(std::size_t{4}, arch.edge.size())) {
        throw std::runtime_error("an arch of fewer than four different marks");
    }
    return arch;
}

void read_rig(const std::filesystem::path& path, HeadData& data) {
    std::ifstream file(path);
    const auto rig = nlohmann::json::parse(file);
    const std::size_t vertices = data.positions.size();
    data.weights = rig.at("weights").get<std::vector<BoneWeights>>();
    if (data.weights.size() > vertices) throw std::runtime_error("more skin weights than vertices");
    for (const auto& quad : data.quads) {
        for (const auto corner : quad) {
            if (corner >= data.weights.size()) throw std::runtime_error("a face that reaches past the skin weights");
        }
    }
    for (std::size_t b = 0; b < kBoneCount; ++b) {
        data.pivots.at(b) = vertex_list(rig.at("pivots").at(kBoneNames.at(b)), vertices);
    }
    for (std::size_t e = 0; e < 2; ++e) {
        const auto& eye = rig.at("eyes").at(e);
        data.eyes.at(e) = {vertex_list(eye.at("eyeball"), vertices), closed_line(eye.at("inner_margin"), data),
                           closed_line(eye.at("outer_margin"), data)};
    }
    for (std::size_t a = 0; a < 2; ++a) data.arches.at(a) = arch_marks(rig.at("arches").at(a), vertices);
    data.lips_meet = closed_line(rig.at("lips_meet"), data);
}

ShapesHeader read_header(std::ifstream& file) {
    ShapesHeader header;
    file.read(reinterpret_cast<char*>(&header), sizeof header);
    if (!file || header.magic != kShapesMagic) throw std::runtime_error("no file of shapes");
    return header;
}

std::map<std::string, ShapesEntry> read_entries(std::ifstream& file, const ShapesHeader& header) {
    std::vector<ShapesEntry> entries(header.shapes);
    file.read(reinterpret_cast<char*>(entries.data()),
              static_cast<std::streamsize>(entries.size() * sizeof(ShapesEntry)));
    if (!file) throw std::runtime_error("cut short");
    std::map<std::string, ShapesEntry> by_name;
    for (auto& entry : entries) {
        entry.name.back() = '\0';
        by_name.emplace(entry.name.data(), entry);
    }
    return by_name;
}

// The valid name that shares the longest run of letters from its start or its end.
std::string nearest_name(const std::map<std::string, ShapesEntry>& entries, const std::string& wanted) {
    std::string best;
    std::size_t most = 0;
    for (const auto& [name, entry] : entries) {
        const auto front = std::mismatch(name.begin(), name.end(), wanted.begin(), wanted.end()).first - name.begin();
        const auto back =
            std::mismatch(name.rbegin(), name.rend(), wanted.rbegin(), wanted.rend()).first - name.rbegin();
        const auto shared = static_cast<std::size_t>(front + back);
        if (shared > most) {
            most = shared;
            best = name;
        }
    }
    return best;
}

void add_shape(std::ifstream& file, std::size_t deltas_start, const ShapesEntry& entry, double amount,
               std::vector<Double3>& positions) {
    std::vector<ShapesDelta> deltas(entry.count);
    file.seekg(static_cast<std::streamoff>(deltas_start + entry.first * sizeof(ShapesDelta)));
    file.read(reinterpret_cast<char*>(deltas.data()),
              static_cast<std::streamsize>(deltas.size() * sizeof(ShapesDelta)));
    if (!file) throw std::runtime_error("cut short");
    for (const auto& delta : deltas) {
        positions.at(delta.vertex) += amount * kShapesUnit * Double3(delta.by[0], delta.by[1], delta.by[2]);
    }
}

}  // namespace

Expected<HeadData> read_head_data(const std::filesystem::path& folder) {
    for (const char* name : {"head.obj", "head.rig.json", "head.shapes"}) {
        if (!std::filesystem::is_regular_file(folder / name)) return not_prepared(folder / name, "missing");
    }
    std::filesystem::path read = folder / "head.obj";
    try {
        HeadData data;
        read_mesh(read, data);
        read = folder / "head.rig.json";
        read_rig(read, data);
        return data;
    } catch (const std::exception& error) {
        return not_prepared(read, error.what());
    }
}

Expected<std::vector<Double3>> apply_shapes(const HeadData& data, const std::filesystem::path& folder,
                                            const ShapeAmounts& amounts, const std::string& said_in) {
    const auto path = folder / "head.shapes";
    try {
        std::ifstream file(path, std::ios::binary);
        const auto header = read_header(file);
        if (header.vertices != data.positions.size()) throw std::runtime_error("shapes of another mesh");
        const auto entries = read_entries(file, header);
        const std::size_t start = sizeof(ShapesHeader) + header.shapes * sizeof(ShapesEntry);
        std::vector<Double3> positions = data.positions;
        Problems problems;
        for (const auto& [name, amount] : amounts) {
            const auto found = entries.find(name);
            if (found == entries.end()) {
                problems.push_back(
                    {Blame::kWrongInput, fmt::format(R"({}: no shape is called "{}"; the nearest is "{}")", said_in,
                                                     name, nearest_name(entries, name))});
                continue;
            }
            add_shape(file, start, found->second, amount, positions);
        }
        if (!problems.empty()) return problems;
        return positions;
    } catch (const std::exception& error) {
        return not_prepared(path, error.what());
    }
}

}  // namespace understudy
