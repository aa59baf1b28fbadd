#include "sitter/hair/lashes.h"

#include <algorithm>

#include "sitter/hair/chance.h"
#include "sitter/hair/shades.h"

namespace understudy {

namespace {

// Upper lashes are 8 to 12 mm long and number 90 to 150, lower ones 6 to 8 mm and 70 to 80; the sixth of a lid nearest
// to the nose, beyond the opening of its tear duct, has none: anatomy texts, from memory.
struct LashRow {
    int count;
    float longest;   // metres
    float shortest;  // at the inner corner
    float up;        // of the root's direction, against forward
    float turn;      // radians it curls upward to its tip
    float from, to;  // of the lid's edge, 0 at the nose's corner
};
constexpr LashRow kUpper{150, 0.0098F, 0.0048F, -0.25F, 1.25F, 0.17F, 0.99F};
constexpr LashRow kLower{64, 0.0062F, 0.0028F, -0.42F, -0.55F, 0.22F, 0.97F};
constexpr float kThickest = 0.000060F;  // radius
constexpr float kThinnest = 0.000008F;
constexpr std::uint16_t kPoints = 9;

// One lid's edge from the nose's corner outward.
class LidEdge {
  public:
    LidEdge(std::vector<Vec3> line) : line_(std::move(line)) {
        reached_.push_back(0.0F);
        for (std::size_t i = 1; i < line_.size(); ++i) {
            reached_.push_back(reached_.back() + glm::distance(line_[i - 1], line_[i]));
        }
    }
    Vec3 at(float share) const {
        const float wanted = std::clamp(share, 0.0F, 1.0F) * reached_.back();
        const auto after = std::upper_bound(reached_.begin() + 1, reached_.end() - 1, wanted);
        const auto i = static_cast<std::size_t>(after - reached_.begin());
        const float piece = std::max(reached_[i] - reached_[i - 1], 1e-9F);
        return glm::mix(line_[i - 1], line_[i], (wanted - reached_[i - 1]) / piece);
    }
    float length() const { return reached_.back(); }

  private:
    std::vector<Vec3> line_;
    std::vector<float> reached_;
};

// The closed line cut at both corners of the eye: the upper lid's part, or the lower one's.
LidEdge lid_edge(const std::vector<Vec3>& loop, float outward, bool upper) {
    const auto farther = [&](const Vec3& a, const Vec3& b) { return outward * a.x < outward * b.x; };
    const auto [nose, temple] = std::minmax_element(loop.begin(), loop.end(), farther);
    const auto first = static_cast<std::size_t>(nose - loop.begin());
    const auto last = static_cast<std::size_t>(temple - loop.begin());
    std::array<std::vector<Vec3>, 2> ways;
    for (std::size_t i = first; i != last; i = (i + 1) % loop.size()) ways[0].push_back(loop[i]);
    for (std::size_t i = first; i != last; i = (i + loop.size() - 1) % loop.size()) ways[1].push_back(loop[i]);
    const auto height = [](const std::vector<Vec3>& way) {
        float sum = 0.0F;
        for (const Vec3& p : way) sum += p.y;
        return sum / static_cast<float>(way.size());
    };
    const bool first_is_upper = height(ways[0]) > height(ways[1]);
    auto& way = ways.at(first_is_upper == upper ? 0 : 1);
    way.push_back(loop[last]);
    return {std::move(way)};
}

struct LashFrame {
    Vec3 along, out, up;
};

LashFrame frame_at(const LidEdge& edge, float share, const Vec3& eye, bool upper) {
    const Vec3 along = glm::normalize(edge.at(share + 0.04F) - edge.at(share - 0.04F));
    const Vec3 from_eye = glm::normalize(edge.at(share) - eye);
    const Vec3 out = glm::normalize(from_eye - glm::dot(from_eye, along) * along);
    Vec3 up = glm::cross(out, along);
    if ((up.y > 0.0F) != upper) up = -up;
    return {along, out, upper ? up : -up};
}

void add_lash(Strands& strands, const LashFrame& frame, const Vec3& root, float length, float fan, const LashRow& row,
              std::uint32_t key) {
    const float start = row.up + 0.14F * swing(key, 11);
    const float turn = row.turn * (0.85F + 0.3F * chance(key, 12));
    const float sideways = fan + 0.13F * swing(key, 13);
    Strand strand{static_cast<std::uint32_t>(strands.points.size()), kPoints, shade_of(key, key, 0.0),
                  StrandKind::kLash};
    const float step = length / static_cast<float>(kPoints - 1);
    const float thick = kThickest * (0.75F + 0.25F * chance(key, 14));
    Vec3 place = root;
    for (int k = 0; k < kPoints; ++k) {
        const float share = static_cast<float>(k) / static_cast<float>(kPoints - 1);
        strands.points.push_back({place, thick + (kThinnest - thick) * share * share});
        const float angle = start + turn * std::pow(share, 1.2F);
        place +=
            step * glm::normalize(std::cos(angle) * frame.out + std::sin(angle) * frame.up + sideways * frame.along);
    }
    strands.strands.push_back(strand);
}

void grow_row(Strands& strands, const LidEdge& edge, const Vec3& eye, bool upper, std::uint32_t seed) {
    const LashRow& row = upper ? kUpper : kLower;
    for (int i = 0; i < row.count; ++i) {
        const std::uint32_t key = scrambled(seed + static_cast<std::uint32_t>(i));
        const float place = (static_cast<float>(i) + 0.9F * chance(key, 1)) / static_cast<float>(row.count);
        const float share = row.from + place * (row.to - row.from);
        const LashFrame frame = frame_at(edge, share, eye, upper);
        // Longest a little outside the middle; some are young and short.
        const float full = smooth(0.0F, 0.62F, share) * (1.0F - 0.35F * smooth(0.85F, 1.0F, share));
        const float young = chance(key, 2) < 0.22F ? 0.45F + 0.4F * chance(key, 3) : 0.9F + 0.2F * chance(key, 4);
        const float length = young * (row.shortest + full * (row.longest - row.shortest));
        // Two or three rows on the edge's front, toward the opening.
        const float before = 0.0001F - 0.0007F * chance(key, 5);
        const Vec3 root = edge.at(share) + (upper ? before : -before) * frame.up - 0.0001F * frame.out;
        // Three neighbours lean together.
        const auto group = static_cast<std::uint32_t>(i / 3) + seed;
        const float fan = 1.1F * (share - 0.42F) + 0.12F * swing(group, 6);
        add_lash(strands, frame, root, length, fan, row, key);
    }
}

}  // namespace

Strands grow_lashes(const GrowingHead& head) {
    Strands strands;
    // Darker than the hair, of blond people too: common observation.
    const HairPigment& hair = head.look.colour;
    strands.shades = shades_of({std::max(4.0, 2.0 * hair.eumelanin), 0.6 * hair.pheomelanin});
    for (std::size_t e = 0; e < 2; ++e) {
        std::vector<Vec3> loop;
        for (const auto vertex : head.lash_lines.at(e)) loop.push_back(head.places[vertex]);
        const Vec3& eye = head.eyes.at(e);
        const float outward = eye.x < 0.0F ? -1.0F : 1.0F;
        for (const bool upper : {true, false}) {
            grow_row(strands, lid_edge(loop, outward, upper), eye, upper,
                     static_cast<std::uint32_t>(1000 * e + (upper ? 100000 : 200000)));
        }
    }
    return strands;
}

}  // namespace understudy
