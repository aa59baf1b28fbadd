#include "sitter/refine.h"

#include <opensubdiv/far/primvarRefiner.h>
#include <opensubdiv/far/topologyDescriptor.h>

#include <memory>

namespace understudy {
namespace {

namespace Far = OpenSubdiv::Far;
namespace Sdc = OpenSubdiv::Sdc;

// What is interpolated, in the form that the library asks for.
struct Point {
    Double3 position{0.0};
    BoneWeights weights{};

    void Clear() { *this = Point{}; }                      // NOLINT(readability-identifier-naming): the library's name
    void AddWithWeight(const Point& from, float weight) {  // NOLINT(readability-identifier-naming): the same
        position += static_cast<double>(weight) * from.position;
        for (std::size_t b = 0; b < kBoneCount; ++b) weights.at(b) += weight * from.weights.at(b);
    }
};

std::unique_ptr<Far::TopologyRefiner> make_refiner(const HeadData& data, int levels) {
    std::vector<int> corners;
    for (const auto& quad : data.quads) {
        for (const auto corner : quad) corners.push_back(static_cast<int>(corner));
    }
    const std::vector<int> counts(data.quads.size(), 4);
    Far::TopologyDescriptor descriptor;
    descriptor.numVertices = static_cast<int>(data.weights.size());
    descriptor.numFaces = static_cast<int>(data.quads.size());
    descriptor.numVertsPerFace = counts.data();
    descriptor.vertIndicesPerFace = corners.data();
    Sdc::Options options;
    options.SetVtxBoundaryInterpolation(Sdc::Options::VTX_BOUNDARY_EDGE_AND_CORNER);
    using Factory = Far::TopologyRefinerFactory<Far::TopologyDescriptor>;
    std::unique_ptr<Far::TopologyRefiner> refiner(
        Factory::Create(descriptor, Factory::Options(Sdc::SCHEME_CATMARK, options)));
    Far::TopologyRefiner::UniformOptions uniform(levels);
    uniform.fullTopologyInLastLevel = true;
    refiner->RefineUniform(uniform);
    return refiner;
}

// The vertices of the next level that lie on the same line: the line's vertices and the middles of its edges.
std::vector<std::uint32_t> next_line(const Far::TopologyLevel& level, const std::vector<std::uint32_t>& line) {
    std::vector<std::uint32_t> next;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const auto from = static_cast<int>(line[i]);
        const auto to = static_cast<int>(line[(i + 1) % line.size()]);
        next.push_back(static_cast<std::uint32_t>(level.GetVertexChildVertex(from)));
        const int edge = level.FindEdge(from, to);
        if (edge >= 0) next.push_back(static_cast<std::uint32_t>(level.GetEdgeChildVertex(edge)));
    }
    return next;
}

Zone zone_of_face(const Far::TopologyRefiner& refiner, const HeadData& data, int levels, int face) {
    for (int level = levels; level > 0; --level) face = refiner.GetLevel(level).GetFaceParentFace(face);
    return data.zones[static_cast<std::size_t>(face)];
}

std::vector<Point> limit_points(const Far::TopologyRefiner& refiner, const HeadData& data,
                                const std::vector<Double3>& positions, int levels) {
    const Far::PrimvarRefiner interpolate(refiner);
    std::vector<Point> points(data.weights.size());
    for (std::size_t i = 0; i < points.size(); ++i) points[i] = {positions[i], data.weights[i]};
    for (int level = 1; level <= levels; ++level) {
        std::vector<Point> next(static_cast<std::size_t>(refiner.GetLevel(level).GetNumVertices()));
        interpolate.Interpolate(level, points, next);
        points = std::move(next);
    }
    std::vector<Point> limit(points.size());
    interpolate.Limit(points, limit);
    return limit;
}

}  // namespace

RefinedHead refine(const HeadData& data, const std::vector<Double3>& positions, int levels) {
    const auto refiner = make_refiner(data, levels);
    RefinedHead head;
    for (const Point& point : limit_points(*refiner, data, positions, levels)) {
        head.positions.push_back(point.position);
        head.weights.push_back(point.weights);
    }
    for (std::size_t e = 0; e < 2; ++e) {
        auto& margins = head.margins.at(e);
        margins = {data.eyes.at(e).inner_margin, data.eyes.at(e).outer_margin};
        for (int level = 0; level < levels; ++level) {
            margins.inner = next_line(refiner->GetLevel(level), margins.inner);
            margins.outer = next_line(refiner->GetLevel(level), margins.outer);
        }
    }
    head.lips_meet = data.lips_meet;
    for (int level = 0; level < levels; ++level) {
        head.lips_meet = next_line(refiner->GetLevel(level), head.lips_meet);
    }
    const auto& last = refiner->GetLevel(levels);
    for (int face = 0; face < last.GetNumFaces(); ++face) {
        const auto corners = last.GetFaceVertices(face);
        Quad quad{};
        for (int k = 0; k < 4; ++k) quad.at(static_cast<std::size_t>(k)) = static_cast<std::uint32_t>(corners[k]);
        head.quads.push_back(quad);
        head.zones.push_back(zone_of_face(*refiner, data, levels, face));
    }
    return head;
}

}  // namespace understudy
