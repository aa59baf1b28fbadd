// What it costs to find light's bent way through the cornea to the iris, and how often there is none.

#include <fmt/format.h>

#include "bench.h"
#include "stage/cornea_refraction.h"

namespace understudy {

void bench_eye_light() {
    constexpr int kAcross = 80;
    const Eye eye{{0.0, 1.2, 0.0}, {0.0, 0.0, 1.0}};
    for (const double elevation : {0.0, 40.0, 70.0, 85.0}) {
        const double turn = radians(elevation);
        const Vec3 light(eye.centre + Double3(0.0, std::sin(turn), std::cos(turn)));
        int asked = 0;
        int found = 0;
        double light_sum = 0.0;
        const double seconds = shortest_time(5, [&] {
            asked = found = 0;
            for (int i = 0; i < kAcross; ++i) {
                for (int j = 0; j < kAcross; ++j) {
                    const double x = kIrisRadius * (2.0 * (i + 0.5) / kAcross - 1.0);
                    const double y = kIrisRadius * (2.0 * (j + 0.5) / kAcross - 1.0);
                    if (x * x + y * y > kIrisRadius * kIrisRadius) continue;
                    const auto way = bent_way(eye, Vec3(eye.centre + Double3(x, y, kIrisAhead)), light);
                    ++asked;
                    if (!way) continue;
                    ++found;
                    light_sum += static_cast<double>(way->spread);
                }
            }
        });
        fmt::print("eye-light: light at {:2.0f} degrees: {:.0f} ns a bent way, {:.1f} % of the iris has one\n",
                   elevation, seconds / asked * 1e9, 100.0 * found / asked);
        if (light_sum < 0.0) fmt::print("{}", light_sum);  // keeps the ways from being optimised away
    }
}

}  // namespace understudy
