// Linear light as the network was trained to see it: a curve of about equal steps to the eye, from the dark to 65504.
//
// The piecewise fit of Open Image Denoise (its core/color.h, Apache-2.0) to perceptually uniform coding: Mantiuk and
// others, "Perception-motivated high dynamic range video encoding", 2004, in the form of Aydın, Mantiuk and Seidel,
// "Extending quality metrics to full luminance range images", 2008.
#pragma once

#include <algorithm>
#include <cmath>

namespace understudy {

inline constexpr float kBrightestCoded = 65504.0F;  // the largest half float

namespace perceptual {

inline constexpr float kFirst = 1.57945760e-6F;
inline constexpr float kSecond = 3.22087631e-2F;
inline constexpr float kLinear = 1.41283765e3F;
inline constexpr float kPowerScale = 1.64593172F;
inline constexpr float kPower = 4.31384981e-1F;
inline constexpr float kPowerShift = -2.94139609e-3F;
inline constexpr float kLogScale = 1.92653254e-1F;
inline constexpr float kLogOffset = 6.26026094e-3F;
inline constexpr float kLogShift = 9.98620152e-1F;

inline float curve(float y) {
    if (y <= kFirst) return kLinear * y;
    if (y <= kSecond) return kPowerScale * std::pow(y, kPower) + kPowerShift;
    return kLogScale * std::log(y + kLogOffset) + kLogShift;
}

}  // namespace perceptual

// 0 … 1 for 0 … kBrightestCoded; rising.
inline float coded(float linear) {
    static const float kWhole = perceptual::curve(kBrightestCoded);
    return perceptual::curve(std::clamp(linear, 0.0F, kBrightestCoded)) / kWhole;
}

// The inverse; below 0 there is no light.
inline float decoded(float code) {
    using namespace perceptual;
    static const float kWhole = curve(kBrightestCoded);
    static const float kFirstCode = curve(kFirst);
    static const float kSecondCode = curve(kSecond);
    const float x = std::max(0.0F, code) * kWhole;
    if (x <= kFirstCode) return x / kLinear;
    if (x <= kSecondCode) return std::pow((x - kPowerShift) / kPowerScale, 1.0F / kPower);
    return std::exp((x - kLogShift) / kLogScale) - kLogOffset;
}

}  // namespace understudy
