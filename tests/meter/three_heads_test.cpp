// The key's pattern on three real faces, told a second way: rays of our own onto the face from straight in front of it,
// and lights for which the answer is clear. And the military courses' rule for a key's height.
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "meter/face/light_pattern.h"
#include "metered.h"

namespace understudy {
namespace {

constexpr double kStep = 0.002;    // metres between places
constexpr double kAway = 1.5;      // of the light
constexpr double kWidest = 0.060;  // from the middle of the face to where a cheek turns aside

// A bald head: what is asked for is the nose's shadow.
Studio bald(const std::string& head) {
    return studio_from("[sitter]\nhead = \"" + head +
                       "\"\nhair = { style = \"none\" }\nbeard = \"none\"\n[backdrop]\nsurface = \"none\"\n"
                       "[[light]]\nmodifier = \"bulb\"\nangle = 0\ndistance = 2\nmeter = 4\n");
}

struct Skin {
    Vec3 position{0.0F};
    Vec3 normal{0.0F};
    Vec3 leave_from{0.0F};
};

class OwnEyes {
  public:
    OwnEyes(const Stage& stage, const FaceMeasures& face) : stage_(stage), face_(face) {}

    Vec3 light(double across_deg, double up_deg) const {
        const double a = radians(across_deg);
        const double e = radians(up_deg);
        const FaceFrame& frame = face_.frame;
        return {frame.origin + kAway * (std::cos(e) * std::sin(a) * frame.right + std::sin(e) * frame.up +
                                        std::cos(e) * std::cos(a) * frame.forward)};
    }
    std::optional<Skin> at(double x, double y) const {
        const FaceFrame& frame = face_.frame;
        const Ray ray{Vec3(frame.origin + x * frame.right + y * frame.up + 0.3 * frame.forward), -Vec3(frame.forward)};
        const auto hit = stage_.intersect(ray);
        if (!hit || hit->thing != Thing::kSitter) return std::nullopt;
        return Skin{hit->position, hit->shading, hit->leave_from};
    }
    // What blocks the light there, in the face's axes; none: it is lit, or turned away by itself.
    struct Seen {
        bool lit = false;
        bool by_nose = false;
    };
    Seen look(const Skin& skin, const Vec3& light) const {
        const Vec3 way = light - skin.leave_from;
        if (glm::dot(way, skin.normal) <= 0.0F) return {};
        Ray ray{skin.leave_from, glm::normalize(way)};
        ray.far = glm::length(way) * 0.999F;
        const auto hit = stage_.intersect(ray);
        if (!hit) return {true, false};
        const Double3 there = face_.frame.place(Double3(hit->position));
        return {false,
                std::abs(there.x) < face_.nose_half_width && there.y > face_.nose_base - 0.004 && there.y < 0.01};
    }
    // Of a cheek, beside the nose and from under the eye to the mouth; side: -1 or 1 along the face's right.
    double cheek_lit(double side, const Vec3& light) const {
        int all = 0, lit = 0;
        for (double y = -0.016; y > face_.mouth; y -= kStep) {
            for (double x = face_.nose_half_width + 0.004; x < kWidest; x += kStep) {
                const auto skin = at(side * x, y);
                if (!skin) continue;
                ++all;
                lit += look(*skin, light).lit ? 1 : 0;
            }
        }
        return static_cast<double>(lit) / all;
    }
    // How many metres of skin are lit beside the nose on that side, at a height.
    double lit_beside_nose(double side, double y, const Vec3& light) const {
        double length = 0.0;
        for (double x = face_.nose_half_width + 0.004; x < kWidest; x += kStep) {
            const auto skin = at(side * x, y);
            if (skin && look(*skin, light).lit) length += kStep;
        }
        return length;
    }
    struct NoseShadowSeen {
        double area_m2 = 0.0;
        double from_down_deg = 0.0;
        double lowest = 0.0;
    };
    NoseShadowSeen nose_shadow(const Vec3& light) const {
        NoseShadowSeen shadow;
        glm::dvec2 sum(0.0);
        for (double y = -0.014; y > face_.mouth - 0.03; y -= kStep) {
            for (double x = -kWidest; x < kWidest; x += kStep) {
                if (std::abs(x) < face_.nose_half_width && y > face_.nose_base) continue;
                const auto skin = at(x, y);
                if (!skin || !look(*skin, light).by_nose) continue;
                shadow.area_m2 += kStep * kStep;
                shadow.lowest = std::min(shadow.lowest, y);
                sum += glm::dvec2(x, y - face_.nose_tip);
            }
        }
        shadow.from_down_deg = shadow.area_m2 > 0.0 ? degrees(std::atan2(sum.x, -sum.y)) : 0.0;
        return shadow;
    }

    // None where it is a matter of taste: by limits well to either side of what the classifier has chosen.
    std::optional<LightPattern> pattern(double across_deg, const Vec3& where) const {
        const double far = across_deg > 0.0 ? -1.0 : 1.0;
        const double near_lit = cheek_lit(-far, where);
        const double far_lit = cheek_lit(far, where);
        if (near_lit < 0.2) return LightPattern::kRim;
        if (near_lit < 0.8) return std::nullopt;
        if (far_lit < 0.03) return LightPattern::kSplit;
        if (far_lit < 0.2) return std::nullopt;
        const NoseShadowSeen shadow = nose_shadow(where);
        if (shadow.area_m2 < 4e-6) return far_lit > 0.97 ? std::optional(LightPattern::kFlat) : std::nullopt;
        if (shadow.area_m2 < 60e-6) return std::nullopt;
        if (std::abs(shadow.from_down_deg) < 8.0) return LightPattern::kButterfly;
        if (std::abs(shadow.from_down_deg) < 25.0) return std::nullopt;
        int dark_rows = 0, most_dark_rows = 0;
        double least_lit = HUGE_VAL;
        for (double y = face_.nose_base; y > face_.mouth; y -= kStep) {
            const double lit = lit_beside_nose(far, y, where);
            least_lit = std::min(least_lit, lit);
            dark_rows = lit == 0.0 ? dark_rows + 1 : 0;
            most_dark_rows = std::max(most_dark_rows, dark_rows);
        }
        if (most_dark_rows * kStep >= 0.008) return LightPattern::kRembrandt;
        if (least_lit >= 0.010) return LightPattern::kLoop;
        return std::nullopt;
    }

  private:
    const Stage& stage_;
    const FaceMeasures& face_;
};

class ThreeHeads : public testing::TestWithParam<const char*> {
  protected:
    ThreeHeads()
        : studio_(bald(GetParam())),
          stage_(studio_, Stage::With::kSitter),
          face_(measure_face(studio_.sitter, *stage_.sitter_mesh()).value()),
          eyes_(stage_, face_) {}

    Studio studio_;
    Stage stage_;
    FaceMeasures face_;
    OwnEyes eyes_;
};

TEST_P(ThreeHeads, AreNamedAsTheirShadowsFall) {
    const FaceView view(stage_, face_, studio_.camera.centre, kStep);
    std::array<int, 6> told{};
    for (const double across :
         {-165.0, -150.0, -92.0, -84.0, -62.0, -50.0, -35.0, -4.0, 4.0, 35.0, 50.0, 62.0, 84.0, 92.0, 150.0, 165.0}) {
        for (const double up : {2.0, 15.0, 30.0, 42.0, 50.0}) {
            const Vec3 where = eyes_.light(across, up);
            const auto expected = eyes_.pattern(across, where);
            if (!expected) continue;
            ++told.at(static_cast<std::size_t>(*expected));
            const auto reading = read_pattern(stage_, view, where);
            ASSERT_TRUE(reading) << across << " across, " << up << " up";
            EXPECT_EQ(static_cast<int>(reading->pattern), static_cast<int>(*expected))
                << across << " across, " << up << " up; cheeks " << reading->near_cheek_lit << " "
                << reading->far_cheek_lit;
        }
    }
    EXPECT_GE(std::accumulate(told.begin(), told.end(), 0), 20) << "hardly anything is tried";
    EXPECT_GE(std::count_if(told.begin(), told.end(), [](int count) { return count > 0; }), 4);
}

// The courses' height (US Army SS0510, Navy NAVEDTRA 14209): with the light straight ahead, until the nose's shadow
// just touches the upper lip. The tip's shadow gets there at atan(drop / how far the tip stands before the lip), a
// right triangle.
TEST_P(ThreeHeads, TheNosesShadowTouchesTheLipWhereTheTriangleSays) {
    // A hair's breadth off the middle: the mesh's halves meet there, and a ray into a seam may slip through.
    constexpr double kBeside = 0.0004;
    const auto tip = eyes_.at(kBeside, face_.nose_tip);
    const auto lip = eyes_.at(kBeside, face_.lip_top);
    ASSERT_TRUE(tip && lip);
    const Double3 drop = face_.frame.place(Double3(tip->position)) - face_.frame.place(Double3(lip->position));
    const FaceView view(stage_, face_, studio_.camera.centre, 0.001);
    const double at_infinity = degrees(std::atan2(drop.y, drop.z));
    double touches = 0.0;
    for (double up = 15.0; up < 75.0 && touches == 0.0; up += 1.0) {
        const auto reading = read_pattern(stage_, view, eyes_.light(0.0, up));
        ASSERT_TRUE(reading);
        if (!reading->nose || reading->nose->to_lip < 1.0) continue;
        touches = up;
        // What it is called there. The nose has to end where the lip begins, or its shadow counts as its own underside.
        EXPECT_EQ(reading->pattern, LightPattern::kButterfly);
    }
    EXPECT_GT(face_.nose_base - face_.lip_top, 0.004) << "there is skin between nose and lip";
    // The light is 1.5 m from the eyes and the lip a few centimetres under them: seen from there it stands higher.
    const double parallax = degrees(-face_.lip_top / kAway);
    EXPECT_NEAR(touches + parallax, at_infinity, 4.0);
}

// Their direction: the height kept, swung round until the shadow merges with the cheek's and leaves a triangle.
TEST_P(ThreeHeads, SwungRoundTheShadowMergesWithTheCheeks) {
    const FaceView view(stage_, face_, studio_.camera.centre, kStep);
    std::optional<PatternReading> first;
    double before = 0.0;
    for (double across = 15.0; across < 80.0 && !first; across += 2.0) {
        const auto reading = read_pattern(stage_, view, eyes_.light(across, 38.0));
        ASSERT_TRUE(reading);
        if (reading->pattern == LightPattern::kRembrandt) first = reading;
        if (!first) before = across;
    }
    ASSERT_TRUE(first);
    EXPECT_GT(before, 15.0) << "closed from the first";
    ASSERT_TRUE(first->triangle);
    EXPECT_GT(first->triangle->area_m2, 1e-4);
}

INSTANTIATE_TEST_SUITE_P(Faces, ThreeHeads, testing::Values("aspen", "elm", "cedar"));

}  // namespace
}  // namespace understudy
