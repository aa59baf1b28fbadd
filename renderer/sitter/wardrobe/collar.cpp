#include "sitter/wardrobe/collar.h"

#include <algorithm>
#include <cmath>

namespace understudy {
namespace {

constexpr std::size_t kStandRows = 6;
constexpr std::size_t kTurnRows = 6;
constexpr std::size_t kFallRows = 14;
constexpr std::size_t kRows = kStandRows + kTurnRows + kFallRows;
constexpr double kTurn = 0.0028;      // radius of the fold, where there is a stand
constexpr double kLean = -0.20;       // of the stand, toward the neck
constexpr double kStandSinks = 0.70;  // share of the half collar from which the stand sinks
constexpr double kLeastStanding = 0.05;
constexpr double kOffNeck = 0.0015;  // of the stand over the layer that the seam is in

struct AtAngle {
    double angle = 0.0;  // from the nape, positive toward the sitter's left
    SheetPoint point;
};

double angle_of(const Double3& place, const Double3& axis) { return std::atan2(place.x - axis.x, axis.z - place.z); }

std::vector<AtAngle> crossings(const ClothSheet& layer, const Outline& outline, const Double3& axis) {
    std::vector<AtAngle> found;
    std::vector<double> outside;
    for (const SheetPoint& point : layer.points) outside.push_back(outline(point));
    for (const auto& t : layer.triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const auto a = t.at(k);
            const auto b = t.at((k + 1) % 3);
            if (a > b || (outside[a] < 0.0) == (outside[b] < 0.0)) continue;
            const double share = outside[a] / (outside[a] - outside[b]);
            SheetPoint point = layer.points[share < 0.5 ? a : b];
            point.place = glm::mix(layer.points[a].place, layer.points[b].place, share);
            point.normal = glm::normalize(glm::mix(layer.points[a].normal, layer.points[b].normal, share));
            found.push_back({angle_of(point.place, axis), point});
        }
    }
    std::sort(found.begin(), found.end(), [](const AtAngle& a, const AtAngle& b) { return a.angle < b.angle; });
    return found;
}

// The crossings near an angle, weighed by nearness: the seam is smooth though the mesh is coarse.
SheetPoint seam_at(const std::vector<AtAngle>& found, double angle) {
    constexpr double kWidth = 0.07;
    SheetPoint sum;
    double total = 0.0;
    for (const AtAngle& at : found) {
        const double away = std::remainder(at.angle - angle, 2.0 * kPiDouble) / kWidth;
        const double weight = std::exp(-0.5 * away * away);
        if (weight < 1e-4) continue;
        total += weight;
        sum.place += weight * at.point.place;
        sum.skin += weight * at.point.skin;
        sum.normal += weight * at.point.normal;
        for (std::size_t k = 0; k < kBoneCount; ++k) {
            sum.weights.at(k) += static_cast<float>(weight) * at.point.weights.at(k);
        }
    }
    sum.place /= total;
    sum.skin /= total;
    sum.normal = glm::normalize(sum.normal);
    for (float& weight : sum.weights) weight /= static_cast<float>(total);
    return sum;
}

// What a collar lies on: pushed out of it along its nearest point's normal.
class Support {
  public:
    Support(const ClothSheet& layer, const std::vector<SheetPoint>& seam, double reach) {
        Double3 middle(0.0);
        for (const SheetPoint& point : seam) middle += point.place / static_cast<double>(seam.size());
        for (const SheetPoint& point : layer.points) {
            if (glm::distance(point.place, middle) < reach) near_.push_back(&point);
        }
    }

    Double3 pushed_out(Double3 place, double clearance) const {
        constexpr double kAcross = 0.006;  // over which the support is evened out
        double total = 0.0;
        double depth = 0.0;
        Double3 out(0.0);
        double nearest = 1e9;
        for (const SheetPoint* point : near_) {
            const Double3 gap = place - point->place;
            const double squared = glm::dot(gap, gap);
            nearest = std::min(nearest, squared);
            if (squared > 16.0 * kAcross * kAcross) continue;
            const double weight = std::exp(-0.5 * squared / (kAcross * kAcross));
            total += weight;
            depth += weight * (clearance - glm::dot(gap, point->normal));
            out += weight * point->normal;
        }
        if (!(total > 0.0) || !(depth > 0.0)) return place;
        return place + depth / total * glm::normalize(out);
    }

  private:
    std::vector<const SheetPoint*> near_;
};

struct Profile {
    Double3 out, up, along;           // away from the neck, upward, along the seam toward the front
    double stand, turn, fall, slant;  // turn: the fold's radius
};

Profile profile_at(const std::vector<SheetPoint>& seam, const CollarCut& shape, std::size_t c) {
    const auto last = seam.size() - 1;
    const double half = 2.0 * static_cast<double>(c) / static_cast<double>(last) - 1.0;
    const double front = std::abs(half);
    const double grown = smooth_step((front - shape.points_from) / (1.0 - shape.points_from));
    const SheetPoint& before = seam[c == 0 ? 0 : c - 1];
    const SheetPoint& after = seam[std::min(c + 1, last)];
    Profile profile;
    profile.along = glm::normalize(after.place - before.place) * (half < 0.0 ? -1.0 : 1.0);
    const Double3 level = glm::cross(Double3(0.0, 1.0, 0.0), after.place - before.place);
    profile.out = glm::normalize(Double3(level.x, 0.0, level.z));
    if (glm::dot(profile.out, seam[c].normal) < 0.0) profile.out = -profile.out;
    profile.up = {0.0, 1.0, 0.0};
    // A collar that is worn open lies flat at its ends: hardly any stand is left where the garment's edge begins.
    const double standing = std::max(kLeastStanding, 1.0 - smooth_step((front - kStandSinks) / (1.0 - kStandSinks)));
    profile.stand = standing * glm::mix(shape.stand_nape_m, shape.stand_front_m, front);
    profile.turn = kTurn * std::max(0.2, standing);
    profile.fall = glm::mix(shape.fall_nape_m, shape.fall_front_m, grown);
    profile.slant = shape.spread * grown;
    return profile;
}

// From the seam up, over and down, before anything is in its way.
std::vector<Double3> hanging_row(const Profile& p, const Double3& seam) {
    std::vector<Double3> row;
    for (std::size_t r = 0; r < kStandRows; ++r) {
        row.push_back(seam + p.stand * static_cast<double>(r) / kStandRows * (p.up + kLean * p.out));
    }
    const Double3 top = seam + p.stand * (p.up + kLean * p.out);
    for (std::size_t r = 0; r < kTurnRows; ++r) {
        const double angle = kPiDouble * static_cast<double>(r) / kTurnRows;
        row.push_back(top + p.turn * ((1.0 - std::cos(angle)) * p.out + std::sin(angle) * p.up));
    }
    const Double3 edge = top + 2.0 * p.turn * p.out;
    const Double3 down = glm::normalize(-0.92 * p.up + 0.38 * p.out - p.slant * p.along);
    for (std::size_t r = 0; r < kFallRows; ++r) {
        row.push_back(edge + p.fall * static_cast<double>(r) / (kFallRows - 1) * down);
    }
    return row;
}

void lay_down(std::vector<Double3>& row, const Support& support, double clearance) {
    const std::size_t turned = kStandRows + kTurnRows;
    Double3 carried(0.0);  // the turn goes where the stand's top goes
    for (std::size_t r = 1; r < row.size(); ++r) {
        const Double3 before = row[r];
        if (r >= kStandRows) row[r] += carried;
        for (int round = 0; round < 4 && (r < kStandRows || r >= turned); ++round) {
            row[r] = support.pushed_out(row[r], r < kStandRows ? kOffNeck : clearance);
        }
        if (r < kStandRows) carried = row[r] - before;
    }
}

// Each point a little toward the mean of its neighbours along the collar.
void even_along(std::vector<std::vector<Double3>>& rows) {
    for (int round = 0; round < 3; ++round) {
        const auto before = rows;
        for (std::size_t c = 1; c + 1 < rows.size(); ++c) {
            for (std::size_t r = 1; r < kRows; ++r) {
                rows[c][r] = 0.5 * before[c][r] + 0.25 * (before[c - 1][r] + before[c + 1][r]);
            }
        }
    }
}

}  // namespace

std::vector<SheetPoint> neck_seam(const ClothSheet& layer, const Outline& outline, const Double3& neck_base,
                                  double front_deg, std::size_t count) {
    const Double3 axis = neck_base + Double3(0.0, 0.0, 0.02);
    const auto found = crossings(layer, outline, axis);
    std::vector<SheetPoint> seam;
    const double end = kPiDouble - radians(front_deg);
    for (std::size_t c = 0; c < count; ++c) {
        seam.push_back(seam_at(found, end * (2.0 * static_cast<double>(c) / static_cast<double>(count - 1) - 1.0)));
    }
    return seam;
}

ClothSheet collar(const std::vector<SheetPoint>& seam, const CollarCut& shape, const ClothSheet& under) {
    const Support support(under, seam, 0.25);
    std::vector<std::vector<Double3>> columns;
    for (std::size_t c = 0; c < seam.size(); ++c) {
        columns.push_back(hanging_row(profile_at(seam, shape, c), seam[c].place));
        lay_down(columns.back(), support, shape.clearance_m);
    }
    even_along(columns);
    std::vector<SheetPoint> points;
    for (std::size_t r = 0; r < kRows; ++r) {
        for (std::size_t c = 0; c < seam.size(); ++c) {
            SheetPoint point = seam[c];
            point.place = columns[c][r];
            points.push_back(point);
        }
    }
    return grid_sheet(points, seam.size(), false);
}

}  // namespace understudy
