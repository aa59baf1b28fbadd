#include "sitter/wardrobe/glasses.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sitter/eye.h"
#include "sitter/wardrobe/skin_rays.h"
#include "sitter/wardrobe/tube.h"

namespace understudy {
namespace {

// Opticians' usual sizes. Common practice, no source.
constexpr double kVertexDistance = 0.013;  // cornea to lens
constexpr double kHalfBridge = 0.0085;     // between the lenses, for eyes 62 mm apart
constexpr double kUsualApart = 0.062;
constexpr double kWrapDeg = 4.0;                                    // by which each lens is turned outward
constexpr std::array kUnderPupil = {0.003, 0.0015, 0.0045, 0.006};  // of the lenses' middle, the usual one first
constexpr double kClearance = 0.0012;                               // of rims over the skin
constexpr double kEndPiece = 0.005;                                 // from the lens's edge to the temple

// What a frame is built of.
struct Make {
    double half_height;
    double most_half_width;
    double roundness;
    double rim_across, rim_deep;  // half axes of the rim's section, in the lens's plane and along its axis
    double temple;                // half its height
    bool lower_rim;
};

Make make_of(GlassesFrame frame) {
    switch (frame) {
        case GlassesFrame::kRound:
            return {0.0, 0.0235, 2.0, 0.0008, 0.0009, 0.0009, true};
        case GlassesFrame::kSquare:
            return {0.0185, 0.0262, 3.6, 0.0021, 0.0019, 0.0024, true};
        case GlassesFrame::kHalfRim:
            break;
    }
    return {0.0165, 0.0262, 3.0, 0.0014, 0.0016, 0.0016, false};
}

struct Outline2 {
    double x, y;
};
Outline2 outline_at(const SpectacleLens& lens, double angle, double beyond) {
    const auto part = [&](double wave) { return std::copysign(std::pow(std::abs(wave), 2.0 / lens.roundness), wave); };
    return {(lens.half_width_m + beyond) * part(std::cos(angle)),
            (lens.half_height_m + beyond) * part(std::sin(angle))};
}

class Fitter {
  public:
    Fitter(SkinnedMesh& mesh, const std::array<Double3, 2>& eyes, const GlassesSettings& glasses)
        : mesh_(mesh),
          face_(mesh, HeadSurface::Ears::kKept),
          skull_(mesh, HeadSurface::Ears::kLeftOut),
          eyes_(eyes),
          glasses_(glasses),
          make_(make_of(glasses.frame)),
          size_(glm::distance(eyes[0], eyes[1]) / kUsualApart) {}

    std::vector<SpectacleLens> fit() {
        settle();
        for (std::size_t e = 0; e < 2; ++e) {
            add_rim(lenses_[e], side_of(e));
            if (glasses_.frame != GlassesFrame::kSquare) add_nose_pad(lenses_[e], side_of(e));
            add_temple(lenses_[e], side_of(e));
        }
        add_bridge();
        return lenses_;
    }

  private:
    static double side_of(std::size_t eye) { return eye == 0 ? -1.0 : 1.0; }

    // Half the head's width where the temples go, at the height of the eyes.
    double half_width() const {
        const Double3 middle = 0.5 * (eyes_[0] + eyes_[1]);
        const double right = skull_.side_at(1.0, middle.y + 0.008, middle.z - 0.012).value_or(0.07);
        const double left = skull_.side_at(-1.0, middle.y + 0.008, middle.z - 0.012).value_or(-0.07);
        return 0.5 * (right - left);
    }

    SpectacleLens lens_before(std::size_t e, double under_pupil) const {
        const double side = side_of(e);
        const double bridge = size_ * kHalfBridge;
        const double most = size_ * make_.most_half_width;
        SpectacleLens lens;
        lens.half_width_m = std::clamp(0.5 * (half_width() + 0.002 - kEndPiece - bridge), 0.8 * most, most);
        lens.half_height_m = make_.half_height > 0.0 ? size_ * make_.half_height : lens.half_width_m;
        lens.roundness = make_.roundness;
        lens.radius_m = glasses_.curvature_m;
        const double lean = radians(glasses_.lean_deg);
        const double wrap = side * radians(kWrapDeg);
        const Double3 forward(std::sin(wrap), 0.0, std::cos(wrap));
        lens.right = {std::cos(wrap), 0.0, -std::sin(wrap)};
        lens.axis = std::cos(lean) * forward - std::sin(lean) * Double3(0.0, 1.0, 0.0);
        lens.up = glm::cross(lens.axis, lens.right);
        const double apex = eyes_.at(e).z + kApexAhead;
        const Double3 vertex(side * (bridge + lens.half_width_m), eyes_.at(e).y - under_pupil, apex + kVertexDistance);
        lens.centre = vertex - lens.radius_m * lens.axis;
        return lens;
    }

    // As high or low on the nose as they come closest to the eyes, and forward until neither rim touches the face.
    void settle() {
        double least = 1.0;
        for (const double under_pupil : kUnderPupil) {
            const std::vector<SpectacleLens> pair{lens_before(0, under_pupil), lens_before(1, under_pupil)};
            const double lacking = std::max(lacking_before(pair[0]), lacking_before(pair[1]));
            if (lacking >= least) continue;
            least = lacking;
            lenses_ = pair;
        }
        for (SpectacleLens& lens : lenses_) lens.centre.z += least;
    }

    // By how much the rim must come forward.
    double lacking_before(const SpectacleLens& lens) const {
        double lacking = 0.0;
        for (int k = 0; k < 24; ++k) {
            const auto [x, y] = outline_at(lens, 2.0 * kPiDouble * k / 24.0, make_.rim_across);
            const Double3 rim = lens_point(lens, x, y);
            const auto skin = face_.front_at(rim.x, rim.y);
            if (skin) lacking = std::max(lacking, *skin + make_.rim_deep + kClearance - rim.z);
        }
        return lacking;
    }

    void add_rim(const SpectacleLens& lens, double) {
        constexpr int kSteps = 72;
        const double from = make_.lower_rim ? 0.0 : radians(-8.0);
        const double to = make_.lower_rim ? 2.0 * kPiDouble : radians(188.0);
        std::vector<TubePoint> points;
        for (int k = 0; k < kSteps + (make_.lower_rim ? 0 : 1); ++k) {
            const auto [x, y] = outline_at(lens, from + (to - from) * k / kSteps, 0.5 * make_.rim_across);
            const Double3 at = lens_point(lens, x, y);
            const Double3 aside = at - (lens.centre + glm::dot(at - lens.centre, lens.axis) * lens.axis);
            points.push_back({at, aside, make_.rim_across, make_.rim_deep});
        }
        add_tube(mesh_, points, make_.lower_rim, Zone::kGlasses);
    }

    void add_bridge() {
        const double height = 0.30;
        std::vector<Double3> ends;
        for (std::size_t e = 0; e < 2; ++e) {
            const SpectacleLens& lens = lenses_[e];
            const auto [x, y] =
                outline_at(lens, side_of(e) > 0.0 ? kPiDouble - height : height, 0.5 * make_.rim_across);
            ends.push_back(lens_point(lens, x, y));
        }
        const Double3 straight = 0.5 * (ends[0] + ends[1]);
        const double nose = face_.front_at(0.0001, straight.y + 0.002).value_or(straight.z);
        const Double3 top(0.0, straight.y + 0.003, std::max(straight.z + 0.001, nose + make_.rim_deep + kClearance));
        std::vector<TubePoint> points;
        constexpr int kSteps = 14;
        for (int k = 0; k <= kSteps; ++k) {
            const double t = static_cast<double>(k) / kSteps;
            const double arch = 4.0 * t * (1.0 - t);
            points.push_back({glm::mix(ends[0], ends[1], t) + arch * (top - straight),
                              {0.0, 1.0, 0.0},
                              1.1 * make_.rim_across,
                              make_.rim_deep});
        }
        add_tube(mesh_, points, false, Zone::kGlasses);
    }

    // On the nose's flank, held by a thin arm.
    void add_nose_pad(const SpectacleLens& lens, double side) {
        const auto [x, y] = outline_at(lens, side > 0.0 ? kPiDouble + 0.35 : -0.35, 0.0);
        const Double3 rim = lens_point(lens, x, y);
        Double3 pad = rim - Double3(0.0, 0.001, 0.006);
        const auto nose = face_.side_at(side, pad.y, pad.z, side * rim.x + 0.004);
        if (!nose) return;
        const double flank = *nose;
        // A nose too broad or too narrow there is not touched.
        if (side * flank < 0.002 || side * flank > side * rim.x + 0.004) return;
        pad.x = flank + side * 0.0010;
        add_pad(mesh_, pad, glm::normalize(Double3(side, 0.0, 0.45)), {0.0008, 0.0042, 0.0024}, Zone::kGlasses);
        add_tube(mesh_,
                 {{rim, {0.0, 1.0, 0.0}, 0.0006, 0.0006},
                  {0.5 * (rim + pad) - Double3(0, 0, 0.001), {0.0, 1.0, 0.0}, 0.0006, 0.0006},
                  {pad, {0.0, 1.0, 0.0}, 0.0006, 0.0006}},
                 false, Zone::kGlasses);
    }

    // The skin beside the ear: where the auricle stands before it, what lies a little higher.
    double skull_at(double side, double y, double z) const {
        constexpr double kStep = 0.004;
        constexpr int kMost = 6;
        if (const auto skin = skull_.side_at(side, y, z)) return side * *skin;
        double least = 1.0;
        for (int i = 0; i <= kMost; ++i) {
            const auto skin = face_.side_at(side, y + kStep * i, z);
            if (skin) least = std::min(least, side * *skin);
        }
        return least < 1.0 ? least : 0.0;
    }

    // Where the temple lies: in the fork between skull and auricle, by the highest place that stands off the skull.
    Double3 ear_rest(double side) const {
        constexpr double kStandsOff = 0.008;
        std::vector<Double3> ear;
        for (std::size_t t = 0; t < mesh_.triangles.size(); ++t) {
            if (mesh_.zones[t] != Zone::kEar) continue;
            const Double3& p = mesh_.positions[mesh_.triangles[t][0]];
            if (side * p.x > 0.0) ear.push_back(p);
        }
        std::sort(ear.begin(), ear.end(), [](const Double3& a, const Double3& b) { return a.y > b.y; });
        for (const Double3& p : ear) {
            if (side * p.x > skull_at(side, p.y, p.z) + kStandsOff) return p - Double3(0.0, 0.003, -0.002);
        }
        return {side * half_width(), eyes_[0].y, eyes_[0].z - 0.09};
    }

    Double3 beside_skull(double side, double y, double z, double at_least) const {
        return {side * std::max(skull_at(side, y, z) + make_.rim_deep + kClearance, at_least), y, z};
    }

    void add_temple(const SpectacleLens& lens, double side) {
        const auto [x, y] = outline_at(lens, side > 0.0 ? 0.42 : kPiDouble - 0.42, make_.rim_across);
        const Double3 edge = lens_point(lens, x, y);
        const Double3 hinge(side * std::max(side * edge.x + 0.0035, half_width() + 0.003), edge.y, edge.z - 0.006);
        const Double3 ear = ear_rest(side);
        std::vector<Double3> way{edge, {glm::mix(edge.x, hinge.x, 0.8), edge.y, edge.z - 0.0015}, hinge};
        constexpr int kSteps = 10;
        for (int k = 1; k <= kSteps; ++k) {
            const double t = static_cast<double>(k) / kSteps;
            const Double3 on = glm::mix(hinge, ear, t);
            way.push_back(beside_skull(side, on.y, on.z, k < kSteps ? (1.0 - t) * side * hinge.x : 0.0));
        }
        // Down behind the ear.
        for (int k = 1; k <= 6; ++k) {
            const double angle = radians(12.0 * k);
            const double run = 0.006;
            const Double3 last = way.back();
            way.push_back(beside_skull(side, last.y - run * std::sin(angle), last.z - run * std::cos(angle), 0.0));
        }
        std::vector<TubePoint> points;
        points.reserve(way.size());
        for (const Double3& at : way) points.push_back({at, {0.0, 1.0, 0.0}, make_.temple, 0.8 * make_.rim_deep});
        add_tube(mesh_, points, false, Zone::kGlasses);
    }

    SkinnedMesh& mesh_;
    HeadSurface face_;
    HeadSurface skull_;
    std::array<Double3, 2> eyes_;
    GlassesSettings glasses_;
    Make make_;
    double size_;
    std::vector<SpectacleLens> lenses_;
};

}  // namespace

Double3 lens_point(const SpectacleLens& lens, double x, double y) {
    const double along = std::sqrt(std::max(0.0, lens.radius_m * lens.radius_m - x * x - y * y));
    return lens.centre + x * lens.right + y * lens.up + along * lens.axis;
}

std::vector<SpectacleLens> put_on_glasses(SkinnedMesh& mesh, const std::array<Double3, 2>& eyes,
                                          const GlassesSettings& glasses) {
    return Fitter(mesh, eyes, glasses).fit();
}

}  // namespace understudy
