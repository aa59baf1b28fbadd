#include "sitter/teeth.h"

#define GLM_ENABLE_EXPERIMENTAL  // splines
#include <algorithm>
#include <cmath>
#include <glm/gtx/spline.hpp>

#include "sitter/crowns.h"

namespace understudy {
namespace {

constexpr std::size_t kShown = 6;                 // teeth a side; those behind are never seen
constexpr std::size_t kColumns = 9;               // of vertices, a tooth; the outer ones are its edges
constexpr std::size_t kFinePerSpan = 16;          // points of the smooth line between two marks
constexpr std::array kGumRows = {0.0, 0.6, 0.9};  // from the jaw to the margin
constexpr std::size_t kFaceRows = 7;              // of the crown, under the margin
constexpr std::size_t kEdgeRows = 3;              // round the biting edge
constexpr double kDeepest = 0.0050;               // behind the face; farther in, columns would meet where the row bends
constexpr double kEdgeInGap = 0.0015;             // thickness where one tooth's edge goes over into the next one's
constexpr double kGapFilled = 0.0009;             // how deep the gum lies in the gaps, at most

// Measured from the marks, whose edges meet within a millimetre: the lower teeth stand some 2 mm behind the upper ones,
// which reach 3 mm over them. Two to three of each is common practice, no source.
constexpr double kLowerBehind = 0.0022;
constexpr double kUpperLonger = 0.0038;

// Through each mark, `t` past the one that the span begins with.
Double3 through(const std::vector<Double3>& marks, std::size_t span, double t) {
    const Double3& before = marks[span == 0 ? 0 : span - 1];
    const Double3& after = marks[std::min(span + 2, marks.size() - 1)];
    return glm::catmullRom(before, marks[span], marks[span + 1], after, t);
}

// Where a row of teeth stands: the line of its biting edges with the jaw above or below.
class Arch {
  public:
    Arch(const ArchMarks& marks, const std::vector<Double3>& placed, bool upper) : upper_(upper) {
        std::vector<Double3> roots;
        std::vector<Double3> edges;
        for (const auto v : marks.root) roots.push_back(placed[v]);
        for (const auto v : marks.edge) edges.push_back(placed[v]);
        for (std::size_t i = 0; i <= (edges.size() - 1) * kFinePerSpan; ++i) {
            const std::size_t span = std::min(i / kFinePerSpan, edges.size() - 2);
            const double t = static_cast<double>(i - span * kFinePerSpan) / static_cast<double>(kFinePerSpan);
            roots_.push_back(through(roots, span, t));
            edges_.push_back(through(edges, span, t));
            const double step = i == 0 ? 0.0 : glm::distance(edges_[i], edges_[i - 1]);
            run_.push_back(i == 0 ? 0.0 : run_.back() + step);
        }
    }

    double half_length() const { return 0.5 * run_.back(); }

    struct Station {
        Double3 edge, root;
        Double3 out;  // unit, toward the lips
    };
    // `run` in metres from the row's middle, toward the sitter's left.
    Station at(double run) const {
        constexpr double kReach = 0.007;  // so that a mark's bend does not turn one column from the next
        const Double3 along = place(edges_, run + kReach) - place(edges_, run - kReach);
        const Double3 edge = place(edges_, run);
        const Double3 root = place(roots_, run);
        const Double3 out = glm::normalize(glm::cross(along, root - edge));
        return {edge, root, upper_ ? out : -out};
    }

  private:
    Double3 place(const std::vector<Double3>& line, double run) const {
        const double wanted = std::clamp(run + half_length(), 0.0, run_.back());
        const auto next = std::lower_bound(run_.begin() + 1, run_.end() - 1, wanted);
        const auto i = static_cast<std::size_t>(next - run_.begin());
        return glm::mix(line[i - 1], line[i], (wanted - run_[i - 1]) / (run_[i] - run_[i - 1]));
    }

    bool upper_;
    std::vector<Double3> roots_, edges_;
    std::vector<double> run_;  // along the edges, from the sitter's right
};

// A column of vertices in its own plane: over the biting edge, and outward from the row's face.
struct Spot {
    double height, out;
};
struct Column {
    std::vector<Spot> spots;  // from the jaw down the face, round the edge, and up behind
    std::size_t crown_from = 0, crown_to = 0;
};

Column column_of(const Crown& crown, double across, double jaw) {
    Column column;
    const double margin = gum_margin(crown, across);
    const double at_margin = std::max(crown_face(crown, across, margin), gum_face(across, 0.9) - kGapFilled);
    for (const double along : kGumRows) {
        column.spots.push_back({std::lerp(jaw, margin, along), std::max(at_margin, gum_face(across, along))});
    }
    column.crown_from = column.spots.size();
    column.spots.push_back({margin, at_margin});
    const double radius = 0.5 * std::lerp(crown.edge, kEdgeInGap, std::pow(across, 4.0));
    const double low = edge_lift(crown, across) + radius;
    for (std::size_t row = 1; row <= kFaceRows; ++row) {
        const double height = std::lerp(margin, low, static_cast<double>(row) / kFaceRows);
        column.spots.push_back({height, crown_face(crown, across, height)});
    }
    const double face = column.spots.back().out;
    for (std::size_t row = 1; row <= kEdgeRows; ++row) {
        const double turn = kPiDouble * static_cast<double>(row) / kEdgeRows;
        column.spots.push_back({low - radius * std::sin(turn), face - radius * (1.0 - std::cos(turn))});
    }
    const double back = -std::min(crown.thickness, kDeepest);
    column.spots.push_back({0.7 * margin, back});
    column.crown_to = column.spots.size() - 1;
    column.spots.push_back({jaw, back});
    return column;
}

// Between two teeth.
Column mean_of(Column column, const Column& other) {
    for (std::size_t i = 0; i < column.spots.size(); ++i) {
        column.spots[i].height = 0.5 * (column.spots[i].height + other.spots[i].height);
        column.spots[i].out = 0.5 * (column.spots[i].out + other.spots[i].out);
    }
    return column;
}

class ArchBuilder {
  public:
    ArchBuilder(SkinnedMesh& mesh, const ArchMarks& marks, const std::vector<Double3>& placed, bool upper)
        : mesh_(mesh), arch_(marks, placed, upper), upper_(upper), crowns_(upper ? kUpperCrowns : kLowerCrowns) {
        double whole = 0.0;
        for (const Crown& crown : crowns_) whole += crown.width;
        size_ = arch_.half_length() / whole;
    }

    // From the sitter's right to left.
    void build() {
        for (std::size_t k = kShown; k > 0; --k) {
            add_far_edge(k - 1, -1.0);
            add_tooth(k - 1, -1.0);
        }
        add_column(0.0, [&](double jaw) { return column_of(crowns_.front(), -1.0, jaw); });
        for (std::size_t k = 0; k < kShown; ++k) {
            add_tooth(k, 1.0);
            add_far_edge(k, 1.0);
        }
    }

  private:
    double begins(std::size_t number) const {
        double before = 0.0;
        for (std::size_t k = 0; k < number; ++k) before += crowns_.at(k).width;
        return before;
    }

    void add_tooth(std::size_t number, double side) {
        const Crown& crown = crowns_.at(number);
        for (std::size_t c = 1; c + 1 < kColumns; ++c) {
            // Closer to each other toward the gaps, where the face falls away.
            const double toward_left =
                std::sin(0.5 * kPiDouble * (2.0 * static_cast<double>(c) / (kColumns - 1) - 1.0));
            const double across = side * toward_left;
            const double run = side * (begins(number) + 0.5 * crown.width * (1.0 + across));
            add_column(run, [&](double jaw) { return column_of(crown, across, jaw); });
        }
    }

    // Which is the next tooth's near edge.
    void add_far_edge(std::size_t number, double side) {
        add_column(side * begins(number + 1), [&](double jaw) {
            return mean_of(column_of(crowns_.at(number), 1.0, jaw), column_of(crowns_.at(number + 1), -1.0, jaw));
        });
    }

    // run: from the middle toward the sitter's left, and all that `make` gives, in the table's size.
    template <class Make>
    void add_column(double run, const Make& make) {
        const Arch::Station station = arch_.at(size_ * run);
        const Double3 toward_jaw = glm::normalize(station.root - station.edge);
        const Double3 foot = station.edge - (upper_ ? kUpperLonger * toward_jaw : kLowerBehind * station.out);
        const Column column = make(glm::dot(station.root - foot, toward_jaw) / size_);
        const auto first = static_cast<std::uint32_t>(mesh_.positions.size());
        BoneWeights skull{};
        skull[kSkull] = 1.0F;
        for (const Spot& spot : column.spots) {
            mesh_.positions.push_back(foot + size_ * (spot.height * toward_jaw + spot.out * station.out));
            mesh_.weights.push_back(skull);
        }
        if (begun_) join(column, first);
        begun_ = true;
    }

    void join(const Column& column, std::uint32_t first) {
        const auto spots = static_cast<std::uint32_t>(column.spots.size());
        for (std::uint32_t i = 0; i + 1 < spots; ++i) {
            const bool crown = i >= column.crown_from && i < column.crown_to;
            const std::uint32_t before = first - spots + i;
            const std::uint32_t here = first + i;
            add({before, before + 1, here}, crown);
            add({here, before + 1, here + 1}, crown);
        }
    }

    void add(std::array<std::uint32_t, 3> triangle, bool crown) {
        if (!upper_) std::swap(triangle[1], triangle[2]);
        mesh_.triangles.push_back(triangle);
        mesh_.zones.push_back(crown ? Zone::kTeeth : Zone::kMouth);
    }

    SkinnedMesh& mesh_;
    Arch arch_;
    bool upper_;
    const std::array<Crown, kTeethASide>& crowns_;
    double size_ = 1.0;  // of this sitter's teeth over the table's
    bool begun_ = false;
};

}  // namespace

void set_teeth(SkinnedMesh& mesh, const std::array<ArchMarks, 2>& arches, const std::vector<Double3>& placed,
               const Double3& origin) {
    std::vector<Double3> at = placed;
    for (Double3& p : at) p -= origin;
    for (std::size_t a = 0; a < arches.size(); ++a) ArchBuilder(mesh, arches.at(a), at, a == 0).build();
}

}  // namespace understudy
