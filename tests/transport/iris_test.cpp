// The iris as a camera sees it through the cornea, under one light.
#include <gtest/gtest.h>

#include "stage/eye_optics.h"
#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

// Mean radiance per lumen toward a camera before the eye of a place of the iris, metres over the pupil's middle as the
// camera sees it.
double iris_at(const Stage& stage, const Eye& eye, double up) {
    constexpr std::uint32_t kPaths = 1024;
    const Vec3 from(eye.centre + 0.6 * eye.axis);
    const Vec3 to(iris_centre(eye) + Double3(0.0, up, 0.0));
    const PathTracer tracer(stage);
    double sum = 0.0;
    for (std::uint32_t i = 0; i < kPaths; ++i) {
        const Sampler sampler(7, 0, i);
        PathLight light;
        tracer.look({from, glm::normalize(to - from)}, sample_waves(sampler.group(1).x), sampler, light);
        const Light4& layer = light.layers[0];
        sum += static_cast<double>(layer.x + layer.y + layer.z + layer.w) / (4.0 * kPaths);
    }
    return sum;
}

// The bright crescent: more light lies on the side of the iris that is away from the light (common practice, no
// source). The light stands aside, so that brow and lids take nothing of it from either half.
TEST(Iris, IsBrightestOppositeTheLight) {
    for (const double side : {-1.0, 1.0}) {
        const Studio studio = studio_from(
            "[sitter]\nhair = \"none\"\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.3 }\nmeter = 4\n"
            "distance = 1.5\nelevation = " +
            std::string(side > 0.0 ? "20" : "-20") + "\nangle = 0\n");
        const Stage stage(studio, Stage::With::kSitter);
        ASSERT_FALSE(stage.eyes().empty());
        const Eye& eye = stage.eyes()[0];
        const double away = iris_at(stage, eye, -0.0028 * side);
        const double near = iris_at(stage, eye, 0.0028 * side);
        EXPECT_GT(away, 1.02 * near) << side;
        EXPECT_GT(near, 0.0) << side;
    }
}

}  // namespace
}  // namespace understudy
