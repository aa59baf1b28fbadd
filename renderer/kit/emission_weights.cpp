#include "kit/emission_weights.h"

#include <array>
#include <cmath>
#include <functional>

namespace understudy {

namespace {

// Gauss and Legendre with four points: exact to degree 7, which the measures below do not reach but for the azimuth's.
struct Node {
    double at;
    double weight;
};
constexpr std::array<Node, 4> kNodes{{{-0.8611363115940526, 0.3478548451374538},
                                      {-0.3399810435848563, 0.6521451548625461},
                                      {0.3399810435848563, 0.6521451548625461},
                                      {0.8611363115940526, 0.3478548451374538}}};

// For each knot the integral of its hat times a measure.
std::vector<double> hat_integrals(const std::vector<double>& knots, const std::function<double(double)>& measure) {
    std::vector<double> weights(knots.size(), 0.0);
    for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
        const double half = 0.5 * (knots[i + 1] - knots[i]);
        for (const Node& node : kNodes) {
            const double part = 0.5 * (1.0 + node.at);
            const double share = half * node.weight * measure(knots[i] + 2.0 * half * part);
            weights[i] += (1.0 - part) * share;
            weights[i + 1] += part * share;
        }
    }
    return weights;
}

std::vector<double> equal_knots(std::size_t count, double from, double to) {
    std::vector<double> knots;
    for (std::size_t i = 0; i < count; ++i) {
        knots.push_back(from + (to - from) * static_cast<double>(i) / static_cast<double>(count - 1));
    }
    return knots;
}

void weigh_places(const EmissionLayout& layout, EmissionWeights& weights) {
    const auto one = [](double) { return 1.0; };
    const auto reach = static_cast<double>(layout.reach);
    weights.along = {1.0};
    switch (layout.fold) {
        case EmissionLayout::Fold::kRectangle:
            weights.across = hat_integrals(equal_knots(layout.across, 0.0, 2.0 * reach), one);
            weights.along =
                hat_integrals(equal_knots(layout.along, 0.0, 2.0 * static_cast<double>(layout.second_reach)), one);
            return;
        case EmissionLayout::Fold::kPolygon: {
            const double slope = std::tan(kPiDouble / layout.sides);
            const auto widening = [&](double out) { return 2.0 * layout.sides * slope * out; };
            weights.across = hat_integrals(equal_knots(layout.across, 0.0, reach), widening);
            weights.along = hat_integrals(equal_knots(layout.along, 0.0, 1.0), one);
            return;
        }
        case EmissionLayout::Fold::kRound: {
            const auto circle = [](double radius) { return 2.0 * kPiDouble * radius; };
            weights.across =
                hat_integrals(equal_knots(layout.across, static_cast<double>(layout.second_reach), reach), circle);
            return;
        }
        case EmissionLayout::Fold::kBall: {
            // The knots are equal steps of s = sin(polar angle / 2); area is 8π R² s ds.
            const auto circle = [&](double s) { return 8.0 * kPiDouble * reach * reach * s; };
            weights.across = hat_integrals(equal_knots(layout.across, 0.0, 1.0), circle);
            return;
        }
    }
}

// Of d(azimuth) / d(place on the square): 1 / (x² + y²).
std::vector<double> azimuth_weights(const EmissionLayout& layout) {
    const auto measure = [](double place) {
        const double turn = place < 2.0 ? 1.0 - place : place - 3.0;
        const double rest = 1.0 - std::abs(turn);
        return 1.0 / (turn * turn + rest * rest);
    };
    if (layout.azimuths == 1) return {2.0 * kPiDouble};
    if (layout.round()) {  // half a circle stands for both
        std::vector<double> weights = hat_integrals(equal_knots(layout.azimuths, 0.0, 2.0), measure);
        for (double& weight : weights) weight *= 2.0;
        return weights;
    }
    std::vector<double> weights = hat_integrals(equal_knots(layout.azimuths + 1, 0.0, 4.0), measure);
    weights.front() += weights.back();
    weights.pop_back();
    return weights;
}

}  // namespace

EmissionWeights emission_weights(const EmissionLayout& layout) {
    EmissionWeights weights;
    weigh_places(layout, weights);
    weights.azimuths = azimuth_weights(layout);
    // With s = sin(angle / 2): cos = 1 − 2 s², and the solid angle of a ring is 4 s ds for each radian round.
    std::vector<double> sines;
    for (const float angle : layout.angles) sines.push_back(std::sin(0.5 * static_cast<double>(angle)));
    weights.angles = hat_integrals(sines, [](double s) { return (1.0 - 2.0 * s * s) * 4.0 * s; });
    return weights;
}

double emission_flux(const EmissionLayout& layout, const std::vector<float>& values) {
    const EmissionWeights weights = emission_weights(layout);
    double sum = 0.0;
    std::size_t index = 0;
    for (const double across : weights.across) {
        for (const double along : weights.along) {
            for (const double azimuth : weights.azimuths) {
                for (const double angle : weights.angles) {
                    sum += across * along * azimuth * angle * static_cast<double>(values[index++]);
                }
            }
        }
    }
    return sum;
}

}  // namespace understudy
