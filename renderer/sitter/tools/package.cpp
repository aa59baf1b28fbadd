#include "sitter/tools/package.h"

#include <fmt/format.h>

#include <exception>
#include <fstream>
#include <nlohmann/json.hpp>

namespace understudy {
namespace {

using Json = nlohmann::json;  // keeps its keys sorted: the order of the shapes in the binary file

constexpr double kDecimetre = 0.1;
constexpr std::size_t kNumbersPerFace = 10;  // flag, 4 vertices, material, 4 texture coordinates
constexpr int kQuadFlag = 11;

Problem cannot(const std::filesystem::path& path, const std::string& why) {
    return {Blame::kFailed, fmt::format("{}: {}", path.string(), why)};
}

void read_mesh(const Json& mesh, Package& package) {
    const auto flat = mesh.at("vertices").get<std::vector<double>>();
    for (std::size_t i = 0; i + 2 < flat.size(); i += 3) {
        package.positions.push_back(kDecimetre * Double3(flat[i], flat[i + 1], flat[i + 2]));
    }
    std::vector<std::string> materials;
    for (const Json& material : mesh.at("materials")) materials.push_back(material.at("DbgName").get<std::string>());
    std::vector<std::array<std::uint32_t, 4>> tongue;
    const auto faces = mesh.at("faces").get<std::vector<int>>();
    for (std::size_t i = 0; i + kNumbersPerFace <= faces.size(); i += kNumbersPerFace) {
        if (faces[i] != kQuadFlag) throw std::runtime_error("a face that is no quad");
        const std::string& material = materials.at(static_cast<std::size_t>(faces[i + 5]));
        if (material != "body" && material != "helper-tongue") continue;
        std::array<std::uint32_t, 4> corners{};
        for (std::size_t k = 0; k < 4; ++k) {
            corners.at(k) = static_cast<std::uint32_t>(faces[i + 1 + k]);
            if (corners.at(k) >= package.positions.size()) throw std::runtime_error("a vertex number out of range");
        }
        (material == "body" ? package.faces : tongue).push_back(corners);
    }
    package.body_faces = package.faces.size();
    package.faces.insert(package.faces.end(), tongue.begin(), tongue.end());
}

void read_rig(const Json& mesh, Package& package) {
    for (const Json& bone : mesh.at("bones")) {
        package.bones.push_back({bone.at("name").get<std::string>(), bone.at("parent").get<int>()});
    }
    const auto indices = mesh.at("skinIndices").get<std::vector<int>>();
    const auto shares = mesh.at("skinWeights").get<std::vector<double>>();
    if (indices.size() != 4 * package.positions.size() || shares.size() != indices.size()) {
        throw std::runtime_error("skin weights that do not match the vertices");
    }
    package.weights.resize(package.positions.size());
    for (std::size_t i = 0; i < indices.size(); ++i) package.weights[i / 4].at(i % 4) = {indices[i], shares[i]};
}

void read_shapes(const std::filesystem::path& list_path, const std::filesystem::path& data_path, Package& package) {
    std::ifstream list_file(list_path);
    const Json list = Json::parse(list_file);
    const std::string head = "data/targets/";
    const std::string tail = ".target";
    for (const auto& entry : list.at("targets").items()) {
        const std::string& name = entry.key();
        if (name.size() <= head.size() + tail.size()) throw std::runtime_error("a shape without a name");
        package.shape_names.push_back(name.substr(head.size(), name.size() - head.size() - tail.size()));
    }
    const std::size_t count = package.shape_names.size() * package.positions.size() * 3;
    if (std::filesystem::file_size(data_path) != count * sizeof(std::int16_t)) {
        throw std::runtime_error("shape data of another size than its list says");
    }
    package.shape_deltas.resize(count);
    std::ifstream data(data_path, std::ios::binary);
    data.read(reinterpret_cast<char*>(package.shape_deltas.data()),
              static_cast<std::streamsize>(count * sizeof(std::int16_t)));
    if (!data) throw std::runtime_error("shape data that cannot be read");
}

}  // namespace

std::uint32_t mirrored(const Package& package, std::uint32_t vertex) {
    Double3 p = package.positions[vertex];
    p.x = -p.x;
    std::uint32_t best = 0;
    for (std::uint32_t i = 0; i < package.positions.size(); ++i) {
        if (glm::distance(package.positions[i], p) < glm::distance(package.positions[best], p)) best = i;
    }
    return best;
}

Expected<Package> read_package(const std::filesystem::path& folder) {
    const auto mesh_path = folder / "public/data/models/human_full_size.json";
    const auto list_path = folder / "src/json/targets/target-list.json";
    const auto data_path = folder / "public/data/targets/targets.bin";
    for (const auto& path : {mesh_path, list_path, data_path}) {
        if (!std::filesystem::is_regular_file(path)) return cannot(path, "missing; run assets/fetch_head.sh first");
    }
    try {
        Package package;
        std::ifstream mesh_file(mesh_path);
        const Json mesh = Json::parse(mesh_file);
        read_mesh(mesh, package);
        read_rig(mesh, package);
        read_shapes(list_path, data_path, package);
        return package;
    } catch (const std::exception& error) {
        return cannot(folder, fmt::format("not the head package that was expected: {}", error.what()));
    }
}

}  // namespace understudy
