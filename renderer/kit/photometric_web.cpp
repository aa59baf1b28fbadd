#include "kit/photometric_web.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace understudy {
namespace {

// Directions are floats: so far outside the measured range still counts as its edge.
constexpr double kEdgeDeg = 1e-3;

// An angle's cell and its share of the way through it.
struct Between {
    std::size_t cell = 0;
    double share = 0.0;
};

std::optional<Between> find_between(const std::vector<double>& nodes, double angle) {
    if (angle < nodes.front() - kEdgeDeg || angle > nodes.back() + kEdgeDeg) return std::nullopt;
    const auto above = std::upper_bound(nodes.begin() + 1, nodes.end() - 1, angle);
    const auto cell = static_cast<std::size_t>(above - nodes.begin()) - 1;
    return Between{cell, std::clamp((angle - nodes[cell]) / (nodes[cell + 1] - nodes[cell]), 0.0, 1.0)};
}

double mix(double a, double b, double share) { return a + share * (b - a); }

// ∫ (a + (b − a)(φ − φ₀)/(φ₁ − φ₀)) cos φ dφ: a strip of a globe between two latitudes, for one radian of longitude.
double strip(double from_deg, double to_deg, double a, double b) {
    const double from = radians(from_deg);
    const double to = radians(to_deg);
    const double rise = (b - a) / (to - from);
    return a * (std::sin(to) - std::sin(from)) + rise * ((to - from) * std::sin(to) + std::cos(to) - std::cos(from));
}

struct Plane {
    double horizontal_deg;
    std::size_t source;  // the file's plane that it equals
};

// Type C: the planes all round, but for the one that closes the round.
std::vector<Plane> planes_round(const PhotometricFile& file) {
    const std::vector<double>& given = file.horizontal_deg;
    std::vector<Plane> planes;
    const auto add = [&](double horizontal_deg, std::size_t source) { planes.push_back({horizontal_deg, source}); };
    for (std::size_t i = 0; i < given.size(); ++i) {
        const double h = given[i];
        switch (file.symmetry) {
            case PhotometricSymmetry::kAxial:
                add(0.0, i);
                add(360.0, i);
                break;
            case PhotometricSymmetry::kQuadrants:
                for (const double angle : {h, 180.0 - h, 180.0 + h, 360.0 - h}) add(angle, i);
                break;
            case PhotometricSymmetry::kPlane0To180:
                add(h, i);
                add(360.0 - h, i);
                break;
            case PhotometricSymmetry::kPlane90To270:
                add(h, i);
                add(h <= 180.0 ? 180.0 - h : 540.0 - h, i);
                break;
            case PhotometricSymmetry::kNone:
            case PhotometricSymmetry::kLeftEqualsRight:
                add(h, i);
                break;
        }
    }
    return planes;
}

// In order, each angle once.
std::vector<Plane> in_order(std::vector<Plane> planes) {
    std::stable_sort(planes.begin(), planes.end(),
                     [](const Plane& a, const Plane& b) { return a.horizontal_deg < b.horizontal_deg; });
    const auto same = [](const Plane& a, const Plane& b) { return b.horizontal_deg - a.horizontal_deg < 1e-5; };
    planes.erase(std::unique(planes.begin(), planes.end(), same), planes.end());
    return planes;
}

}  // namespace

PhotometricWeb::PhotometricWeb(const PhotometricFile& file) : type_(file.type) {
    if (type_ == PhotometricType::kC) {
        fill_round(file);
    } else {
        fill_ahead(file);
    }
    flux_lm_ = flux_below(90.0);
    // A and B reach 90 degrees to each side of straight ahead, which is all that lies ahead; C's nadir is ahead.
    forward_flux_lm_ = type_ == PhotometricType::kC ? flux_below(0.0) : flux_lm_;
    for (std::size_t h = 0; h < file.candela.size(); ++h) {
        for (std::size_t v = 0; v < file.vertical_deg.size(); ++v) {
            if (file.candela[h][v] <= peak_candela_) continue;
            peak_candela_ = file.candela[h][v];
            peak_at_ = {file.vertical_deg[v], file.horizontal_deg[h]};
        }
    }
}

void PhotometricWeb::fill_round(const PhotometricFile& file) {
    for (const double vertical : file.vertical_deg) latitudes_deg_.push_back(vertical - 90.0);
    std::vector<Plane> planes = in_order(planes_round(file));
    // The first plane closes the round.
    const Plane first = planes.front();
    const double full = first.horizontal_deg + 360.0;
    if (planes.back().horizontal_deg < full - 1e-5) planes.push_back({full, first.source});
    for (const Plane& plane : planes) {
        longitudes_deg_.push_back(plane.horizontal_deg);
        candela_.push_back(file.candela[plane.source]);
    }
}

void PhotometricWeb::fill_ahead(const PhotometricFile& file) {
    std::vector<Plane> planes;
    for (std::size_t i = 0; i < file.horizontal_deg.size(); ++i) {
        planes.push_back({file.horizontal_deg[i], i});
        if (file.symmetry == PhotometricSymmetry::kLeftEqualsRight) planes.push_back({-file.horizontal_deg[i], i});
    }
    planes = in_order(std::move(planes));
    std::vector<double> horizontals_deg;
    horizontals_deg.reserve(planes.size());
    for (const Plane& plane : planes) horizontals_deg.push_back(plane.horizontal_deg);
    if (type_ == PhotometricType::kA) {
        longitudes_deg_ = std::move(horizontals_deg);
        latitudes_deg_ = file.vertical_deg;
        for (const Plane& plane : planes) candela_.push_back(file.candela[plane.source]);
        return;
    }
    longitudes_deg_ = file.vertical_deg;
    latitudes_deg_ = std::move(horizontals_deg);
    for (std::size_t v = 0; v < file.vertical_deg.size(); ++v) {
        std::vector<double> across;
        across.reserve(planes.size());
        for (const Plane& plane : planes) across.push_back(file.candela[plane.source][v]);
        candela_.push_back(std::move(across));
    }
}

double PhotometricWeb::flux_below(double latitude_deg) const {
    double flux = 0.0;
    for (std::size_t i = 0; i + 1 < longitudes_deg_.size(); ++i) {
        const double wide = radians(longitudes_deg_[i + 1] - longitudes_deg_[i]);
        for (std::size_t j = 0; j + 1 < latitudes_deg_.size() && latitudes_deg_[j] < latitude_deg; ++j) {
            const double from = latitudes_deg_[j];
            const double to = std::min(latitudes_deg_[j + 1], latitude_deg);
            const double share = (to - from) / (latitudes_deg_[j + 1] - from);
            // Linear in longitude: the mean of both sides.
            const double a = 0.5 * (candela_[i][j] + candela_[i + 1][j]);
            const double b = 0.5 * (candela_[i][j + 1] + candela_[i + 1][j + 1]);
            flux += wide * strip(from, to, a, mix(a, b, share));
        }
    }
    return flux;
}

// Into the round that the planes of type C make.
double PhotometricWeb::wrapped(double horizontal_deg) const {
    return horizontal_deg - 360.0 * std::floor((horizontal_deg - longitudes_deg_.front()) / 360.0);
}

PhotometricWeb::Place PhotometricWeb::place_of(const PhotometricAngles& angles) const {
    switch (type_) {
        case PhotometricType::kC:
            return {angles.vertical_deg - 90.0, wrapped(angles.horizontal_deg)};
        case PhotometricType::kB:
            return {angles.horizontal_deg, angles.vertical_deg};
        case PhotometricType::kA:
            break;
    }
    return {angles.vertical_deg, angles.horizontal_deg};
}

double PhotometricWeb::candela_at(const PhotometricAngles& angles) const {
    const Place place = place_of(angles);
    const auto latitude = find_between(latitudes_deg_, place.latitude_deg);
    const auto longitude = find_between(longitudes_deg_, place.longitude_deg);
    if (!latitude || !longitude) return 0.0;
    const auto in_plane = [&](const std::vector<double>& plane) {
        return mix(plane[latitude->cell], plane[latitude->cell + 1], latitude->share);
    };
    return mix(in_plane(candela_[longitude->cell]), in_plane(candela_[longitude->cell + 1]), longitude->share);
}

PhotometricAngles PhotometricWeb::angles_of(const Vec3& direction) const {
    const auto in_degrees = [](float up, float along) { return degrees(static_cast<double>(std::atan2(up, along))); };
    const auto globe = [&](float pole, float zero, float side) {
        return Place{std::clamp(in_degrees(pole, std::hypot(zero, side)), -90.0, 90.0), in_degrees(side, zero)};
    };
    if (type_ == PhotometricType::kC) {
        const Place place = globe(-direction.z, direction.y, direction.x);
        return {place.latitude_deg + 90.0, place.longitude_deg + (place.longitude_deg < 0.0 ? 360.0 : 0.0)};
    }
    if (type_ == PhotometricType::kB) {
        const Place place = globe(-direction.x, direction.z, direction.y);
        return {place.longitude_deg, place.latitude_deg};
    }
    const Place place = globe(direction.y, direction.z, -direction.x);
    return {place.latitude_deg, place.longitude_deg};
}

Vec3 PhotometricWeb::direction_of(const PhotometricAngles& angles) const {
    const Place place = place_of(angles);
    const double latitude = radians(place.latitude_deg);
    const double longitude = radians(place.longitude_deg);
    const auto pole = static_cast<float>(std::sin(latitude));
    const auto zero = static_cast<float>(std::cos(latitude) * std::cos(longitude));
    const auto side = static_cast<float>(std::cos(latitude) * std::sin(longitude));
    switch (type_) {
        case PhotometricType::kC:
            return {side, zero, -pole};
        case PhotometricType::kB:
            return {-pole, side, zero};
        case PhotometricType::kA:
            break;
    }
    return {-side, pole, zero};
}

}  // namespace understudy
