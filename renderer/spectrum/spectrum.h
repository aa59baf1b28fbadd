// A function of wavelength over the visible range, tabulated.
#pragma once

#include <array>
#include <cstddef>

namespace understudy {

// The range that paths carry. The observer's tables go on to 780 nm; what lies beyond 720 nm is under 0.03 % of the
// luminance of any CIE illuminant here.
inline constexpr float kShortestWave = 380.0F;  // nm
inline constexpr float kLongestWave = 720.0F;   // nm

// 5 nm steps from 380 to 780 nm, linear between them: the step of the CIE's tables.
class Spectrum {
  public:
    static constexpr float kFirst = 380.0F;
    static constexpr float kLast = 780.0F;
    static constexpr float kStep = 5.0F;
    static constexpr std::size_t kCount = 81;

    Spectrum() = default;
    explicit constexpr Spectrum(float everywhere) { values_.fill(everywhere); }
    explicit constexpr Spectrum(const std::array<float, kCount>& values) : values_(values) {}

    // From a function of the wavelength in nm.
    template <class Function>
    static Spectrum tabulate(const Function& function) {
        Spectrum result;
        for (std::size_t i = 0; i < kCount; ++i) result.values_[i] = static_cast<float>(function(wave(i)));
        return result;
    }

    static constexpr float wave(std::size_t index) { return kFirst + kStep * static_cast<float>(index); }

    // nm must lie in [380, 780].
    float at(float nm) const {
        const float place = (nm - kFirst) * (1.0F / kStep);
        auto index = static_cast<std::size_t>(place);
        if (index >= kCount - 1) index = kCount - 2;
        const float share = place - static_cast<float>(index);
        return values_[index] + share * (values_[index + 1] - values_[index]);
    }

    float operator[](std::size_t index) const { return values_[index]; }
    float& operator[](std::size_t index) { return values_[index]; }

    Spectrum& operator*=(const Spectrum& other) {
        for (std::size_t i = 0; i < kCount; ++i) values_[i] *= other.values_[i];
        return *this;
    }
    Spectrum& operator+=(const Spectrum& other) {
        for (std::size_t i = 0; i < kCount; ++i) values_[i] += other.values_[i];
        return *this;
    }
    Spectrum& operator*=(float factor) {
        for (float& value : values_) value *= factor;
        return *this;
    }

  private:
    std::array<float, kCount> values_{};
};

inline Spectrum operator*(Spectrum a, const Spectrum& b) { return a *= b; }
inline Spectrum operator+(Spectrum a, const Spectrum& b) { return a += b; }
inline Spectrum operator*(Spectrum a, float factor) { return a *= factor; }

// ∫ of the tabulated function between two wavelengths (nm), exact for the piecewise linear function; per nm times nm.
double integral(const Spectrum& spectrum, double from_nm = static_cast<double>(kShortestWave),
                double to_nm = static_cast<double>(kLongestWave));

}  // namespace understudy
