// Flat things and the sweep: where rays meet them.
#include "stage/board.h"

#include <gtest/gtest.h>

#include "scatter/random_stream.h"

namespace understudy {
namespace {

Vec3 any_direction(RandomStream& random) {
    const Vec3 up = random.next_direction();
    return random.next() < 0.5F ? up : -up;
}

TEST(Board, IsMetOnBothSidesAndNowhereElse) {
    // 1 m wide along x, 2 m high along y, in the plane z = 0.5.
    const Board board({{0.2, 1.0, 0.5}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}}, 1.0, 2.0);
    const auto meets = [&](float x, float y, float from, float way) {
        return board.intersect({Vec3(x, y, from), Vec3(0.0F, 0.0F, way)});
    };
    ASSERT_TRUE(meets(0.2F, 1.0F, 2.0F, -1.0F));
    EXPECT_FLOAT_EQ(meets(0.2F, 1.0F, 2.0F, -1.0F)->distance, 1.5F);
    ASSERT_TRUE(meets(0.2F, 1.0F, -2.0F, 1.0F));
    EXPECT_FLOAT_EQ(meets(0.2F, 1.0F, -2.0F, 1.0F)->distance, 2.5F);
    EXPECT_TRUE(meets(0.69F, 1.99F, 2.0F, -1.0F));
    EXPECT_FALSE(meets(0.71F, 1.0F, 2.0F, -1.0F));
    EXPECT_FALSE(meets(-0.31F, 1.0F, 2.0F, -1.0F));
    EXPECT_FALSE(meets(0.2F, 2.01F, 2.0F, -1.0F));
    EXPECT_FALSE(meets(0.2F, -0.01F, 2.0F, -1.0F));
    EXPECT_FALSE(meets(0.2F, 1.0F, 2.0F, 1.0F));
    EXPECT_FLOAT_EQ(board.area(), 2.0F);
    for (const Vec3& corner : board.outline(4)) {
        EXPECT_NEAR(std::abs(corner.x - 0.2F), 0.5F, 1e-6F);
        EXPECT_NEAR(std::abs(corner.y - 1.0F), 1.0F, 1e-6F);
        EXPECT_FLOAT_EQ(corner.z, 0.5F);
    }
}

// A quarter of a cylinder that ends upright on the wall and level on the floor.
TEST(Sweep, JoinsWallAndFloor) {
    const Sweep sweep{-1.5F, 0.4F, 1.36F};
    const Vec3 axis(0.0F, 0.4F, -1.1F);
    for (const float turn : {0.01F, 0.4F, 0.8F, 1.2F, 1.56F}) {
        const Vec3 out(0.0F, -std::sin(turn), -std::cos(turn));
        const auto hit = sweep.intersect({axis + Vec3(0.5F, 0, 0), out});
        ASSERT_TRUE(hit) << turn;
        EXPECT_NEAR(hit->distance, 0.4F, 1e-6F);
        EXPECT_NEAR(glm::dot(hit->normal, -out), 1.0F, 1e-6F);
    }
    EXPECT_FALSE(sweep.intersect({axis, Vec3(0, 1, 0)}));
    EXPECT_FALSE(sweep.intersect({axis, Vec3(0, 0, 1)}));
    EXPECT_FALSE(sweep.intersect({axis + Vec3(1.37F, 0, 0), glm::normalize(Vec3(0, -1, -1))}));
    EXPECT_FALSE(sweep.intersect({axis, Vec3(1, 0, 0)}));
    // From behind, through the part of the cylinder that is not there.
    const auto back = sweep.intersect({Vec3(0.0F, -1.0F, -2.0F), glm::normalize(Vec3(0, 1, 0.8F))});
    ASSERT_TRUE(back);
    EXPECT_LT((Vec3(0.0F, -1.0F, -2.0F) + back->distance * glm::normalize(Vec3(0, 1, 0.8F))).y, 0.4F);
}

// From where the sitter is, no ray finds a gap between the upright part, the sweep and the floor.
TEST(Backdrop, HasNoGap) {
    BackdropSettings settings;
    const BackdropShape shape = backdrop_shape(settings);
    ASSERT_TRUE(shape.sweep);
    ASSERT_EQ(shape.boards.size(), 2U);
    for (const float across : {-1.3F, 0.0F, 1.2F}) {
        for (int i = 0; i <= 2000; ++i) {
            // From the backdrop's top round to the floor before the mark.
            const float turn = -0.6F + 1.9F * static_cast<float>(i) / 2000.0F;
            const Ray ray{Vec3(across, 1.3F, 0.3F), Vec3(0.0F, -std::sin(turn), -std::cos(turn))};
            int met = 0;
            for (const Board& board : shape.boards) met += board.intersect(ray) ? 1 : 0;
            met += shape.sweep->intersect(ray) ? 1 : 0;
            EXPECT_GE(met, 1) << turn;
        }
    }
}

TEST(Backdrop, WithoutAFloorIsOneBoard) {
    BackdropSettings settings;
    settings.floor = false;
    const BackdropShape shape = backdrop_shape(settings);
    EXPECT_FALSE(shape.sweep);
    ASSERT_EQ(shape.boards.size(), 1U);
    EXPECT_NEAR(shape.boards[0].area(), settings.width_m * settings.height_m, 1e-5);
}

TEST(RoomWalls, AreClosed) {
    const Double3 size(4.0, 6.0, 2.7);  // width, depth, height
    const std::vector<Board> walls = room_walls(size);
    RandomStream random(3);
    for (int i = 0; i < 20000; ++i) {
        const Vec3 u = random.next3();
        const Vec3 origin(3.9F * (u.x - 0.5F), 0.05F + 2.6F * u.y, 5.9F * (u.z - 0.5F));
        const Ray ray{origin, any_direction(random)};
        float nearest = kInfinity;
        for (const Board& wall : walls) {
            if (const auto hit = wall.intersect(ray)) nearest = std::min(nearest, hit->distance);
        }
        ASSERT_LT(nearest, 8.0F);  // the room's diagonal is 7.7 m
        const Vec3 place = ray.at(nearest);
        ASSERT_LE(std::abs(place.x), 2.0F + 1e-4F);
        ASSERT_LE(std::abs(place.z), 3.0F + 1e-4F);
        ASSERT_GE(place.y, -0.0011F);
        ASSERT_LE(place.y, 2.7F + 1e-4F);
    }
    double area = 0.0;
    for (const Board& wall : walls) area += static_cast<double>(wall.area());
    EXPECT_NEAR(area, 2.0 * (4.0 * 6.0 + 4.0 * 2.7 + 6.0 * 2.7), 1e-4);
}

}  // namespace
}  // namespace understudy
