// What a face is like, in the amounts that matter for light.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace understudy {

// Each from -1 to 1, 0 being the average face of its age, sex and ancestry.
enum class FaceFeature : std::size_t {
    kBrowDepth,   // flat to jutting
    kEyeSet,      // deep to prominent
    kEyeSpacing,  // close to wide
    kNoseLength,
    kNoseWidth,
    kNoseDepth,  // how far it stands out
    kCheekbone,  // flat to high
    kFaceWidth,
    kJaw,       // narrow to broad
    kForehead,  // sloping to upright
    kLips,      // thin to full
    kCount,
};

inline constexpr std::size_t kFaceFeatures = static_cast<std::size_t>(FaceFeature::kCount);
inline constexpr std::array<std::string_view, kFaceFeatures> kFaceFeatureNames = {
    "brow_depth", "eye_set",    "eye_spacing", "nose_length", "nose_width", "nose_depth",
    "cheekbone",  "face_width", "jaw",         "forehead",    "lips"};

// Shares of ancestry; they add up to 1.
struct Ancestry {
    double african = 0.0;
    double asian = 0.0;
    double european = 0.0;
};

struct FaceSettings {
    std::optional<double> age_years;  // 16 … 90
    std::optional<double> sex;        // 0 a woman's face … 1 a man's
    std::optional<Ancestry> ancestry;
    std::array<std::optional<double>, kFaceFeatures> features;

    std::optional<double>& of(FaceFeature feature) { return features.at(static_cast<std::size_t>(feature)); }
    const std::optional<double>& of(FaceFeature feature) const {
        return features.at(static_cast<std::size_t>(feature));
    }
};

// What `asked` leaves open is as in `own`.
FaceSettings face_over(const FaceSettings& asked, const FaceSettings& own);

// Each from 0, a neutral face, to 1, as far as it goes.
struct ExpressionSettings {
    double smile = 0.0;  // with closed lips
    double open_mouth = 0.0;
    double raised_brows = 0.0;
    double squint = 0.0;
};

}  // namespace understudy
