#include "report/words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace understudy {
namespace {

constexpr double kMinutesADegree = 2.0;
constexpr int kMinutesRound = 12 * 60;

}  // namespace

std::string word(Receptor receptor) { return receptor == Receptor::kFlat ? "flat" : "dome"; }

std::string word(Facing facing) {
    switch (facing) {
        case Facing::kCamera:
            return "camera";
        case Facing::kKey:
            return "key";
        case Facing::kSurface:
            break;
    }
    return "surface";
}

std::string word(EyeVerdict verdict) {
    switch (verdict) {
        case EyeVerdict::kLit:
            return "lit";
        case EyeVerdict::kDim:
            return "dim";
        case EyeVerdict::kDark:
            break;
    }
    return "dark";
}

std::string word(EfficacyFrom from) {
    if (from == EfficacyFrom::kReading) return "reading";
    return from == EfficacyFrom::kTold ? "told" : "usual";
}

std::string word(EyeFault fault) {
    if (fault == EyeFault::kNone) return "none";
    return fault == EyeFault::kNoLight ? "no light" : "no reflection";
}

std::string word(LightPattern pattern) {
    switch (pattern) {
        case LightPattern::kFlat:
            return "flat";
        case LightPattern::kButterfly:
            return "butterfly";
        case LightPattern::kLoop:
            return "loop";
        case LightPattern::kRembrandt:
            return "rembrandt";
        case LightPattern::kSplit:
            return "split";
        case LightPattern::kRim:
            break;
    }
    return "rim";
}

std::string word(LitSide side) {
    if (side == LitSide::kFaceOn) return "face-on";
    return side == LitSide::kBroad ? "broad" : "short";
}

std::string word(PupilFrom from) {
    if (from == PupilFrom::kStandingLight) return "standing light";
    return from == PupilFrom::kTold ? "told" : "usual";
}

std::string word(Remedy::Kind kind) {
    switch (kind) {
        case Remedy::Kind::kIso:
            return "iso";
        case Remedy::Kind::kNeutralDensity:
            return "neutral density";
        case Remedy::Kind::kDistance:
            return "distance";
        case Remedy::Kind::kClothOut:
            return "cloth out";
        case Remedy::Kind::kClothIn:
            break;
    }
    return "cloth in";
}

std::string error_in_stops(double exposure_lxs, double standard_error_lxs) {
    const double stops = standard_error_lxs / (exposure_lxs * std::log(2.0));
    if (!std::isfinite(stops)) return "none";
    return stops < 0.005 ? "< 0.01" : plain_number(stops, 2);
}

std::string centimetres(double metres) {
    if (!std::isfinite(metres)) return "none";
    constexpr double kCentimetre = 0.01;
    if (std::abs(metres) < kCentimetre) return plain_number(1000.0 * metres, 0) + " mm";
    return plain_number(100.0 * metres, 0) + " cm";
}

std::string heading(const std::string& words) { return "\n" + words + "\n"; }

std::string clock_time(double clock_deg, int nearest_minutes) {
    if (!std::isfinite(clock_deg)) return "none";
    const double turn_deg = std::fmod(std::fmod(clock_deg, 360.0) + 360.0, 360.0);
    const auto steps = static_cast<int>(std::lround(turn_deg * kMinutesADegree / nearest_minutes));
    const int minutes = steps * nearest_minutes % kMinutesRound;
    const int hour = minutes / 60 == 0 ? 12 : minutes / 60;
    return fmt::format("{}:{:02}", hour, minutes % 60);
}

std::string plain_number(double value, int decimals) {
    if (!std::isfinite(value)) return "none";
    const double unit = std::pow(10.0, -decimals);
    const double shown = std::abs(value) < 0.5 * unit ? 0.0 : value;
    return fmt::format("{:.{}f}", shown, decimals);
}

std::string signed_stops(double stops) {
    if (std::isinf(stops) && stops < 0.0) return "no light";
    const std::string number = plain_number(stops, 1);
    const bool is_zero = number == "0.0";
    return std::isfinite(stops) && stops > 0.0 && !is_zero ? "+" + number : number;
}

std::string three_figures(double value) {
    if (!std::isfinite(value)) return "none";
    if (value == 0.0) return "0";
    const int magnitude = static_cast<int>(std::floor(std::log10(std::abs(value))));
    if (magnitude < -4) return fmt::format("{:.2e}", value);
    return plain_number(value, std::max(0, 2 - magnitude));
}

std::string shutter_time(double shutter_s) {
    if (!std::isfinite(shutter_s) || shutter_s <= 0.0) return "none";
    const double parts = 1.0 / shutter_s;
    const bool is_fraction = shutter_s < 0.4 && std::abs(parts - std::round(parts)) < 0.01 * parts;
    return is_fraction ? fmt::format("1/{:.0f} s", parts) : fmt::format("{:.4g} s", shutter_s);
}

std::string to_one(double ratio) {
    if (!std::isfinite(ratio)) return "none";
    return plain_number(ratio, ratio < 9.95 ? 1 : 0) + ":1";
}

std::string percent(double share) {
    return std::isfinite(share) ? plain_number(100.0 * share, 0) + " %" : std::string("none");
}

}  // namespace understudy
