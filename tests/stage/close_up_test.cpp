// An eye seen near: where it is drawn, how large, and through the same lens.
#include "stage/close_up.h"

#include <gtest/gtest.h>

#include "sitter/eye.h"
#include "stage/camera.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

const CloseUp kView{200, 150, 0.042};

// Aimed beside the eyes, in focus behind them; without hair, which is long in growing and nothing to this.
const Studio& portrait() {
    static const Studio studio = studio_from(
        "[camera]\nangle = 20\nheight = 1.5\naperture = 2.8\nfocus = \"2.5 m\"\naim = [0.1, 1.1, 0]\n"
        "[sitter]\nturn = 15\nhair = \"none\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4.0\n");
    return studio;
}

TEST(CloseUp, HasTheEyeInItsMiddleAndTheFieldThatWasAskedFor) {
    const Studio& studio = portrait();
    for (const std::size_t eye : {0U, 1U}) {
        const Double3 iris = iris_centre((*studio.sitter.eyes)[eye]);
        const Studio near = close_up_of_eye(studio, eye, kView);
        const Camera camera(near);
        EXPECT_NEAR(camera.pixel_of(iris).x, 100.0F, 0.01F);
        EXPECT_NEAR(camera.pixel_of(iris).y, 75.0F, 0.01F);
        EXPECT_NEAR(camera.pixel_of(iris + 0.021 * camera.right()).x, 200.0F, 0.05F);
        EXPECT_NEAR(camera.pixel_of(iris + 0.01575 * camera.up()).y, 0.0F, 0.05F);
        // Seen from the same place, the same way up.
        EXPECT_EQ(camera.position(), Camera(studio).position());
        EXPECT_GT(glm::dot(camera.right(), Camera(studio).right()), 0.98);
        EXPECT_NEAR(glm::dot(camera.right(), camera.up()), 0.0, 1e-12);
    }
}

// What is out of focus spreads over a cone that the lens's width and the plane in focus make: both stay.
TEST(CloseUp, LooksThroughALensOfTheSameWidth) {
    const Studio& studio = portrait();
    const Studio near = close_up_of_eye(studio, 0, kView);
    const auto width = [](const CameraSettings& camera) { return camera.focal_length_m / camera.exposure.aperture; };
    EXPECT_NEAR(width(near.setup.camera), width(studio.setup.camera), 1e-12);
    const Double3 iris = iris_centre((*studio.sitter.eyes)[0]);
    const auto before_focus = [&](const Studio& seen) {
        return seen.focus_m - glm::dot(iris - seen.camera.centre, seen.camera.axis);
    };
    EXPECT_NEAR(before_focus(near), before_focus(studio), 0.002);
}

}  // namespace
}  // namespace understudy
