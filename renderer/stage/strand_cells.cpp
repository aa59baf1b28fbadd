#include "stage/strand_cells.h"

#include <array>
#include <utility>

#include <tbb/parallel_for.h>

namespace understudy {

namespace {

constexpr float kStep = 0.0015F;       // the least
constexpr float kStepInRadii = 14.0F;  // of the usual hair
constexpr float kMostHalls = 64.0F;    // along each side: strands far apart lie in larger cells
constexpr std::uint32_t kCellsOfHall = 4096;
constexpr std::size_t kStrandsAtOnce = 512;

struct Boxes {
    Vec3 low;
    float step;
    glm::ivec3 count;
};

// The boxes that a piece's width reaches, by their numbers, x going first: slice by slice along the axis that it runs
// along most. around: in boxes, what is taken on top of its width.
template <class Visitor>
void visit_boxes(const StrandPoint& from, const StrandPoint& to, const Boxes& boxes, float around,
                 const Visitor& visit) {
    const float inverse = 1.0F / boxes.step;
    const Vec3 a = inverse * (from.place - boxes.low);
    const Vec3 b = inverse * (to.place - boxes.low);
    const float round = inverse * std::max(from.radius, to.radius) + around;
    const Vec3 span = glm::abs(b - a);
    const glm::length_t u = span.x > span.y ? (span.x > span.z ? 0 : 2) : (span.y > span.z ? 1 : 2);
    const glm::length_t v = (u + 1) % 3;
    const glm::length_t w = (u + 2) % 3;
    const glm::ivec3 strides(1, boxes.count.x, boxes.count.x * boxes.count.y);
    const float low = std::min(a[u], b[u]);
    const float high = std::max(a[u], b[u]);
    const float slope = span[u] > 1e-6F ? 1.0F / (b[u] - a[u]) : 0.0F;
    struct Side {
        float start, slope;
        int stride, most;
        float at(float along) const { return start + slope * along; }
    };
    const auto side = [&](glm::length_t axis) {
        return Side{a[axis], slope * (b[axis] - a[axis]), strides[axis], boxes.count[axis] - 1};
    };
    const Side second = side(v);
    const Side third = side(w);
    const auto first_box = [](float place) { return std::max(0, static_cast<int>(std::floor(place))); };
    const auto last_box = [](float place, int most) { return std::min(most, static_cast<int>(std::floor(place))); };
    const int last_i = last_box(high + round, boxes.count[u] - 1);
    for (int i = first_box(low - round); i <= last_i; ++i) {
        // The part of the piece whose width reaches this slice.
        const float begin = std::clamp(static_cast<float>(i) - round, low, high) - a[u];
        const float end = std::clamp(static_cast<float>(i + 1) + round, low, high) - a[u];
        const auto from_to = [&](const Side& s) {
            const float one = s.at(begin);
            const float other = s.at(end);
            return std::pair(first_box(std::min(one, other) - round), last_box(std::max(one, other) + round, s.most));
        };
        const auto [first_j, last_j] = from_to(second);
        const auto [first_k, last_k] = from_to(third);
        for (int j = first_j; j <= last_j; ++j) {
            for (int k = first_k; k <= last_k; ++k) {
                visit(static_cast<std::uint32_t>(i * strides[u] + j * second.stride + k * third.stride));
            }
        }
    }
}

}  // namespace

StrandCells::StrandCells(const Strands& strands) {
    lay_out(strands.points);
    const auto pieces = pieces_of_halls(strands);
    tbb::parallel_for(std::size_t{0}, halls_.size(), [&](std::size_t h) {
        if (pieces[h].empty()) return;
        const auto i = static_cast<int>(h);
        const glm::ivec3 at(i % halls_across_.x, i / halls_across_.x % halls_across_.y,
                            i / (halls_across_.x * halls_across_.y));
        fill(halls_[h], strands.points, low_ + static_cast<float>(kHall) * step_ * Vec3(at), pieces[h]);
    });
}

void StrandCells::lay_out(const std::vector<StrandPoint>& points) {
    Vec3 low(kInfinity);
    Vec3 high(-kInfinity);
    double radii = 0.0;
    for (const StrandPoint& point : points) {
        radii += static_cast<double>(point.radius);
        low = glm::min(low, point.place - point.radius);
        high = glm::max(high, point.place + point.radius);
    }
    const Vec3 size = high - low;
    // Wide hairs are fewer.
    const auto mean_radius = static_cast<float>(radii / static_cast<double>(points.size()));
    const float longest = std::max({size.x, size.y, size.z});
    step_ = std::max({kStep, kStepInRadii * mean_radius, longest / (static_cast<float>(kHall) * (kMostHalls - 1.0F))});
    low_ = low - 0.5F * step_;
    halls_across_ = glm::ivec3(size / (static_cast<float>(kHall) * step_) + 0.1F) + 1;
    const int halls = halls_across_.x * halls_across_.y * halls_across_.z;
    halls_.resize(static_cast<std::size_t>(halls));
}

// In the order of the strands.
std::vector<std::vector<std::uint32_t>> StrandCells::pieces_of_halls(const Strands& strands) const {
    struct Entry {
        std::uint32_t hall;
        std::uint32_t piece;
    };
    const Boxes halls{low_, static_cast<float>(kHall) * step_, halls_across_};
    std::vector<std::vector<Entry>> entries((strands.strands.size() + kStrandsAtOnce - 1) / kStrandsAtOnce);
    tbb::parallel_for(std::size_t{0}, entries.size(), [&](std::size_t k) {
        const std::size_t end = std::min((k + 1) * kStrandsAtOnce, strands.strands.size());
        for (std::size_t s = k * kStrandsAtOnce; s < end; ++s) {
            const Strand& strand = strands.strands[s];
            for (std::uint32_t piece = strand.first; piece + 1 < strand.first + strand.count; ++piece) {
                visit_boxes(strands.points[piece], strands.points[piece + 1], halls, 0.001F, [&](std::uint32_t hall) {
                    entries[k].push_back({hall, piece});
                });
            }
        }
    });
    std::vector<std::vector<std::uint32_t>> pieces(halls_.size());
    for (const auto& some : entries) {
        for (const Entry& entry : some) pieces[entry.hall].push_back(entry.piece);
    }
    return pieces;
}

void StrandCells::fill(Hall& hall, const std::vector<StrandPoint>& points, const Vec3& low,
                       const std::vector<std::uint32_t>& pieces) const {
    struct Entry {
        std::uint32_t cell;
        std::uint32_t piece;
    };
    const Boxes cells{low, step_, glm::ivec3(kHall)};
    std::vector<Entry> entries;
    entries.reserve(12 * pieces.size());
    std::array<std::uint32_t, kCellsOfHall> counts{};
    for (const std::uint32_t piece : pieces) {
        visit_boxes(points[piece], points[piece + 1], cells, 0.0F, [&](std::uint32_t cell) {
            entries.push_back({cell, piece});
            ++counts.at(cell);
        });
    }
    hall.starts.resize(kCellsOfHall + 1);
    for (std::uint32_t c = 0; c < kCellsOfHall; ++c) {
        hall.starts[c + 1] = hall.starts[c] + counts.at(c);
        if (counts.at(c) > 0) hall.used_blocks |= block_bit(c);
        counts.at(c) = hall.starts[c];
    }
    hall.pieces.resize(entries.size() + kPiecesAfter, pieces.front());
    for (const Entry& entry : entries) hall.pieces[counts.at(entry.cell)++] = entry.piece;
}

}  // namespace understudy
