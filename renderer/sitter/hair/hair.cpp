#include "sitter/hair/hair.h"

#include <algorithm>
#include <span>

#include <tbb/parallel_for.h>

#include "sitter/hair/chance.h"
#include "sitter/hair/lock_finder.h"
#include "sitter/hair/shades.h"
#include "sitter/hair/skin_distance.h"
#include "sitter/hair/style.h"

namespace understudy {

namespace {

constexpr double kASquareMetre = 1.75e6;  // hairs on a scalp: 150 to 200 a square centimetre; common figure
constexpr float kRadius = 0.000036F;      // fibres are about 70 µm thick: OSA 1990, LCOA-1990-ThB2
constexpr float kUnderSkin = 0.0004F;     // where roots begin
constexpr float kLeastOff = 0.0003F;      // of a hair from the skin
constexpr float kUnderHat = 0.0015F;      // what a hat leaves of it
constexpr float kLockReach = 0.03F;       // hairs farther from a lock are not held by it
constexpr std::size_t kMostPoints = 80;
constexpr float kSoftEdge = 0.009F;

// One hair's line, from the root.
struct Line {
    std::array<Vec3, kMostPoints> points;
    std::size_t count = 0;
    float step = 0.001F;

    Vec3 at(float reached) const {
        const float place = std::min(reached / step, static_cast<float>(count - 1) - 0.0001F);
        const auto i = static_cast<std::size_t>(std::max(place, 0.0F));
        return glm::mix(points.at(i), points.at(i + 1), place - static_cast<float>(i));
    }
    float length() const { return step * static_cast<float>(count - 1); }
};

class Grower {
  public:
    Grower(const GrowingHead& head, const SkinDistance& skin)
        : head_(head), look_(head.look), make_(make_of(head.look.style)), skin_(skin) {}

    void grow_leaders() {
        leaders_ = spread_roots(head_, make_.locks, 0.004F, 7000U, above_hairline, may_be_scalp);
        leader_lines_.resize(leaders_.size());
        tbb::parallel_for(std::size_t{0}, leaders_.size(),
                          [&](std::size_t i) { leader_lines_[i] = line_of(leaders_[i], false); });
        finder_.emplace(leaders_);
    }

    int drawn_points() const { return make_.fine > 0 ? make_.fine : make_.points; }

    // Into as many places as a hair may have points; how many it has.
    std::uint16_t grow(const Root& root, std::span<StrandPoint> into, float wider) const {
        const bool strays = chance(root.key, 21) < make_.stray;
        Line line = line_of(root, strays);
        if (line.count < 2) return 0;
        const std::size_t leader = finder_ ? finder_->nearest(root) : LockFinder::kNobody;
        const float hold = strays ? 0.0F : make_.hold;
        const float length = line.length();
        const auto count = static_cast<std::size_t>(make_.fine > 0 ? fine_count(length) : static_cast<int>(line.count));
        const std::uint32_t lock = leader == LockFinder::kNobody ? root.key : leaders_[leader].key;
        Frame frame = Frame::around(glm::normalize(line.points[1] - line.points[0]));
        for (std::size_t k = 0; k < count; ++k) {
            const float share = static_cast<float>(k) / static_cast<float>(count - 1);
            const float reached = share * length;
            Vec3 place = line.at(reached);
            if (leader != LockFinder::kNobody && leader_lines_[leader].count > 1) {
                const float drawn = hold * smooth(0.0F, 0.6F * length, reached);
                const Line& led = leader_lines_[leader];
                // Not from one side of a part to the other.
                if (reached < led.length() && glm::distance(place, led.at(reached)) < kLockReach) {
                    place = glm::mix(place, led.at(reached), drawn);
                }
            }
            place += aside(line, reached, lock, root.key, frame);
            if (k > 0) keep_off(place);
            const float radius = kRadius * wider * (0.85F + 0.3F * chance(root.key, 22)) * tapered(root, share);
            into[k] = {place, radius};
        }
        return static_cast<std::uint16_t>(count);
    }

    std::uint32_t lock_of(const Root& root) const {
        const std::size_t leader = finder_ ? finder_->nearest(root) : LockFinder::kNobody;
        return leader == LockFinder::kNobody ? root.key : leaders_[leader].key;
    }

  private:
    int fine_count(float length) const {
        const int turns = static_cast<int>(std::ceil(7.0F * length / make_.curl_length));
        return std::clamp(turns, 8, make_.fine);
    }

    float tapered(const Root& root, float share) const {
        const float young = 0.55F + 0.45F * smooth(0.0F, 0.012F, root.inside);
        return young * (1.0F - 0.55F * smooth(0.6F, 1.0F, share));
    }

    void keep_off(Vec3& place) const {
        const auto reading = skin_.at(place);
        const float most = head_.under_hat(place) ? kUnderHat : kInfinity;
        place += (std::clamp(reading.distance, kLeastOff, most) - reading.distance) * reading.away;
    }

    // Curl and waves, which a lock's hairs have in common, and a little of their own.
    Vec3 aside(const Line& line, float reached, std::uint32_t lock, std::uint32_t hair, Frame& frame) const {
        const Vec3 way = glm::normalize(line.at(reached + 0.5F * line.step) - line.at(reached - 0.5F * line.step));
        frame.tangent = glm::normalize(frame.tangent - glm::dot(frame.tangent, way) * way);
        const Vec3 other = glm::cross(way, frame.tangent);
        const float full = 6.2831853F;
        const float grown = smooth(0.0F, 0.025F, reached);
        const float wave_phase = full * (reached / (0.055F + 0.03F * chance(lock, 41)) + chance(lock, 42));
        Vec3 off = make_.wave * grown * (std::sin(wave_phase) * frame.tangent + std::cos(0.7F * wave_phase) * other);
        off += 0.45F * make_.wave * grown *
               (std::sin(1.9F * wave_phase + full * chance(hair, 43)) * frame.tangent + 0.7F * swing(hair, 44) * other);
        if (!(make_.curl > 0.0F)) return off;
        const float hand = chance(lock, 45) < 0.5F ? 1.0F : -1.0F;
        const float turn = full * (reached / (make_.curl_length * (0.8F + 0.4F * chance(lock, 46)))) +
                           full * chance(lock, 47) + 0.9F * swing(hair, 48);
        const float radius =
            make_.curl * (0.75F + 0.5F * chance(lock, 49)) * smooth(0.0F, 1.2F * make_.curl_length, reached);
        return off + radius * (std::cos(turn) * frame.tangent + hand * std::sin(turn) * other);
    }

    Line line_of(const Root& root, bool strays) const {
        const Vec3 usual_root = root.place / head_.size;
        const bool fringe = look_.fringe && in_fringe(usual_root, chance(root.key, 32));
        const float varied = look_.style == HairStyle::kShaved ? 0.7F + 0.6F * chance(root.key, 24)
                                                               : 0.94F + 0.12F * chance(root.key, 24);
        const float length = head_.size * varied * length_of(look_, root, usual_root, fringe);
        Line line;
        line.step = length / static_cast<float>(make_.points - 1);
        if (!(line.step > 0.0F)) return line;
        const float level = chance(root.key, 25);
        float high = make_.lift * (0.06F + 0.94F * level) * (0.35F + 0.65F * smooth(0.0F, 0.035F, root.inside));
        high = std::min(high, 0.4F * length);
        if (strays) high = 1.25F * high + 0.004F;
        // On the brow a fringe lies closer than the hair of the crown, out of which it comes.
        const float on_brow = fringe ? std::min(high, 0.0015F + 0.005F * level) : high;
        const float own = chance(root.key, 30);
        const Vec3 first = combed(look_, usual_root, usual_root, fringe, own);
        const Vec3 flat = first - glm::dot(first, root.normal) * root.normal;
        Vec3 way = glm::normalize(make_.stand * root.normal + (1.0F - make_.stand) * glm::normalize(flat + 1e-5F) +
                                  (strays ? 0.5F : 0.10F) * swing3(root.key, 26));
        Vec3 place = root.place - kUnderSkin * root.normal;
        const float uneven = swing(root.key, 29);
        line.points[line.count++] = place;
        const float turn = 1.0F - std::exp(-line.step / make_.bend);
        for (int k = 1; k < make_.points; ++k) {
            const float reached = line.step * static_cast<float>(k);
            const Vec3 usual = place / head_.size;
            const float hangs = fringe ? 1.0F : 1.0F - before_face(look_, usual, own);
            const Vec3 weight = make_.weight * hangs * smooth(0.0F, 0.06F, reached) * head_.down;
            const Vec3 wanted = glm::normalize(combed(look_, usual, usual_root, fringe, own) + weight);
            way = glm::normalize(glm::mix(way, wanted, turn));
            const float cling = cling_of(look_, usual, fringe);
            const float here = glm::mix(on_brow, high, smooth(0.062F, 0.095F, usual.y));
            place = lay_over_skin(place + line.step * way, here * smooth(0.0F, 0.02F, reached), cling, way);
            line.points.at(line.count++) = place;
            if (cut_off(look_, place / head_.size, fringe, uneven)) break;
        }
        return line;
    }

    Vec3 lay_over_skin(Vec3 place, float high, float cling, Vec3& way) const {
        const auto reading = skin_.at(place);
        const float wanted = kLeastOff + (head_.under_hat(place) ? std::min(high, kUnderHat - kLeastOff) : high);
        if (reading.distance < wanted) {
            place += (wanted - reading.distance) * reading.away;
            const float into = std::min(0.0F, glm::dot(way, reading.away));
            way = glm::normalize(way - into * reading.away + 1e-6F);
        } else if (head_.under_hat(place) && reading.distance > kUnderHat) {
            place -= (reading.distance - kUnderHat) * reading.away;
        } else {
            place -= cling * (reading.distance - wanted) * reading.away;
            way = glm::normalize(way - cling * std::max(0.0F, glm::dot(way, reading.away)) * reading.away + 1e-6F);
        }
        return place;
    }

    const GrowingHead& head_;
    const HairLook& look_;
    HairMake make_;
    const SkinDistance& skin_;
    std::vector<Root> leaders_;
    std::vector<Line> leader_lines_;
    std::optional<LockFinder> finder_;
};

SkinDistance skin_round(const GrowingHead& head, HairStyle style) {
    std::vector<bool> hidden(head.places.size(), false);
    for (std::size_t t = 0; t < head.mesh.triangles.size(); ++t) {
        const Zone zone = head.mesh.zones[t];
        if (!is_inside(zone) && zone != Zone::kHat && zone != Zone::kGlasses) continue;
        for (const auto v : head.mesh.triangles[t]) hidden[v] = true;
    }
    std::vector<Vec3> places;
    std::vector<Vec3> normals;
    for (std::size_t v = 0; v < head.places.size(); ++v) {
        if (hidden[v]) continue;
        places.push_back(head.places[v]);
        normals.push_back(head.normals[v]);
    }
    const bool hangs = style == HairStyle::kLong || style == HairStyle::kTiedBack;
    const Vec3 low(hangs ? -0.22F : -0.15F, hangs ? -0.40F : -0.20F, -0.30F);
    return {places, normals, low * head.size, Vec3(hangs ? 0.22F : 0.15F, 0.18F, 0.10F) * head.size};
}

}  // namespace

Strands grow_hair(const GrowingHead& head, const StrandDetail& detail) {
    Strands strands;
    const HairLook& look = head.look;
    if (look.style == HairStyle::kNone) return strands;
    strands.shades = shades_of(look.colour);
    const SkinDistance skin = skin_round(head, look.style);
    Grower grower(head, skin);
    grower.grow_leaders();
    const double wider = std::max(1.0, detail.least_width_m / (2.0 * static_cast<double>(kRadius)));
    const auto roots = spread_roots(head, kASquareMetre / wider, kSoftEdge, 11U, above_hairline, may_be_scalp);

    const auto most = static_cast<std::size_t>(grower.drawn_points());
    std::vector<StrandPoint> drawn(roots.size() * most);
    std::vector<std::uint16_t> counts(roots.size());
    tbb::parallel_for(std::size_t{0}, roots.size(), [&](std::size_t i) {
        counts[i] = grower.grow(roots[i], std::span(drawn).subspan(i * most, most), static_cast<float>(wider));
    });
    for (std::size_t i = 0; i < roots.size(); ++i) {
        if (counts[i] < 2) continue;
        strands.strands.push_back({static_cast<std::uint32_t>(strands.points.size()), counts[i],
                                   shade_of(roots[i].key, grower.lock_of(roots[i]), look.grey), StrandKind::kHair});
        const auto first = drawn.begin() + static_cast<std::ptrdiff_t>(i * most);
        strands.points.insert(strands.points.end(), first, first + counts[i]);
    }
    return strands;
}

}  // namespace understudy
