// Photometric files as lights, from the scene file to the meter. Illuminance is candela over the distance squared
// (inverse square law) times the receptor's cosine; candela of the composed file as computed apart from this program.

#include <filesystem>
#include <fstream>

#include <unistd.h>

#include "metered.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

class PhotometricLights : public testing::Test {
  protected:
    PhotometricLights()
        : folder_(std::filesystem::temp_directory_path() / ("understudy-photometric-" + std::to_string(getpid()))) {
        std::filesystem::create_directories(folder_);
    }
    ~PhotometricLights() override {
        std::error_code error;
        std::filesystem::remove_all(folder_, error);
    }
    void write(const std::string& name, const std::string& text) const {
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }
    Expected<Studio> placed(const std::string& toml) const {
        const understudy::Setup setup = value_of(parse_setup(toml, folder_ / "scene.toml", source_library()));
        return place_studio(setup, source_library());
    }
    MeterReport read(const std::string& toml) const {
        const Studio studio = value_of(placed(toml));
        const Stage stage(studio, Stage::With::kSitter);
        const Stage nobody(studio, Stage::With::kNobody);
        const LitStudio lit = value_of(set_powers(studio, nobody));
        return read_meter(studio, stage, nobody, lit);
    }
    // lx at the face from a light of this modifier, the receptor toward it; the shutter's 1/200 s taken out.
    double lux(const std::string& modifier, const std::string& rest) const {
        const MeterReport report = read(kEmpty + "[[light]]\nmodifier = " + modifier + "\n" + rest);
        return 200.0 * face_reading(report, Receptor::kFlat, Facing::kKey).exposure_lxs;
    }

  private:
    std::filesystem::path folder_;
};

const std::string kPoint = "{ photometric = \"lamp.ies\" }";
const std::string kAsFile = "lumens = \"as file\"\n";

// 5e-4: the meter stops at a standard error of a thousandth, and for a point it has none.
TEST_F(PhotometricLights, APointGivesCandelaOverDistanceSquared) {
    write("lamp.ies", kQuadrants);
    // Straight down from 2 m: the composed file's 150 lx.
    EXPECT_NEAR(lux(kPoint, "position = [0, 3.25, 0]\naim = [0, 0, 0]\n" + kAsFile), 150.0, 0.01);
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 2]\n" + kAsFile), 150.0, 0.01);
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 4]\n" + kAsFile), 37.5, 0.01);
    // The face 45 degrees below the axis is in the 0-180 plane (400 cd), beside it in the 90-270 plane (200 cd).
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 2]\naim = [0, 3.25, 0]\n" + kAsFile), 100.0, 0.01);
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 2]\naim = [2, 1.25, 0]\n" + kAsFile), 50.0, 0.01);
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 2]\naim = [2, 1.25, 0]\nroll = 90\n" + kAsFile), 100.0, 0.01);
}

// One value a quarter at 45 degrees. A light at +z that is aimed past the face toward +x has it on the right of someone
// who looks at the light from there; a quarter turn counter-clockwise then brings what pointed down to the right.
TEST_F(PhotometricLights, SidesAndRollAreTheStatedOnes) {
    write("lamp.ies", photometric_text(
                          3, 5, 1, "0 45 90\n0 90 180 270 360\n100 100 0\n100 200 0\n100 300 0\n100 400 0\n100 100 0"));
    const auto aimed = [&](const std::string& aim, const std::string& roll) {
        return 4.0 * lux(kPoint, "position = [0, 1.25, 2]\naim = " + aim + "\nroll = " + roll + "\n" + kAsFile);
    };
    EXPECT_NEAR(aimed("[2, 1.25, 0]", "0"), 200.0, 0.05);
    EXPECT_NEAR(aimed("[-2, 1.25, 0]", "0"), 400.0, 0.05);
    EXPECT_NEAR(aimed("[0, -0.75, 0]", "0"), 100.0, 0.05);
    EXPECT_NEAR(aimed("[0, 3.25, 0]", "0"), 300.0, 0.05);
    EXPECT_NEAR(aimed("[2, 1.25, 0]", "90"), 300.0, 0.05);
    EXPECT_NEAR(aimed("[2, 1.25, 0]", "-90"), 100.0, 0.05);
}

// An even 100 cd ahead, over a disc of radius R at a distance d on its axis: L = I / (A cos θ), so that
// E = (I / A) ∫ d / r³ dA = (2 I / R²) (1 − d / √(d² + R²)).
TEST_F(PhotometricLights, SpreadOverADiscItIsTheIntegralOverTheDisc) {
    write("lamp.ies", photometric_text(2, 1, 1, "0 90\n0\n100 100"));
    const auto by_hand = [](double radius, double distance) {
        return 200.0 / (radius * radius) * (1.0 - distance / std::hypot(distance, radius));
    };
    const std::string disc = R"({ photometric = "lamp.ies", shape = "disc", diameter = 1.0 })";
    EXPECT_NEAR(lux(disc, "position = [0, 1.25, 1]\n" + kAsFile), by_hand(0.5, 1.0), 3e-3 * by_hand(0.5, 1.0));
    EXPECT_NEAR(lux(disc, "position = [0, 1.25, 0.5]\n" + kAsFile), by_hand(0.5, 0.5), 3e-3 * by_hand(0.5, 0.5));
    // Far away it is the point.
    EXPECT_NEAR(lux(disc, "position = [0, 1.25, 10]\n" + kAsFile), 1.0, 3e-3);
}

TEST_F(PhotometricLights, TakePowerLikeAnyLight) {
    write("lamp.ies", kQuadrants);
    const auto power = [&](const std::string& said) {
        return read(kEmpty + "[[light]]\nmodifier = " + kPoint + "\nposition = [0, 1.25, 2]\n" + said + "\n").powers[0];
    };
    EXPECT_NEAR(power(kAsFile).lumens, 1369.911, 0.001);
    EXPECT_FALSE(power(kAsFile).flash);
    EXPECT_NEAR(power("lumens = 500").lumens, 500.0, 1e-9);
    // A flash set to read f/4 at ISO 200: E·t = 250 · 4² / 200 = 20 lx·s from 600 cd in 1369.911 lm at 2 m.
    EXPECT_NEAR(power("meter = 4").lumens, 20.0 * 4.0 / (600.0 / 1369.911), 0.05);
    EXPECT_NEAR(power("energy = 100").lumens, 4000.0, 1e-6);
}

TEST_F(PhotometricLights, AFlatFrontCannotShineBackward) {
    write("lamp.ies", photometric_text(2, 1, 1, "0 180\n0\n100 100"));
    const std::string rest = "\nposition = [0, 1.25, 2]\n" + kAsFile;
    const auto front = placed(kEmpty + "[[light]]\nmodifier = { photometric = \"lamp.ies\", shape = \"disc\", " +
                              "diameter = 0.1 }" + rest);
    ASSERT_FALSE(front);
    EXPECT_NE(front.problems()[0].text.find("lamp.ies:1:1: 50 % of the file's light goes behind"), std::string::npos)
        << front.problems()[0].text;
    // As a point it shines back past itself too.
    EXPECT_NEAR(lux(kPoint, "position = [0, 1.25, 2]\naim = [0, 1.25, 9]\n" + kAsFile), 25.0, 0.01);
}

// A point's mirror image has no size: it shows or it does not.
TEST_F(PhotometricLights, CatchlightOfAPointHasNoWidth) {
    write("lamp.ies", kQuadrants);
    const std::string head = "[sitter]\nhead = \"aspen\"\n[backdrop]\nsurface = \"none\"\n";
    const MeterReport report =
        read(head + "[[light]]\nmodifier = " + kPoint + "\nangle = -30\nheight = 1.6\ndistance = 1.5\nmeter = 4\n" +
             "[[light]]\nname = \"behind\"\nmodifier = " + kPoint + "\nangle = 180\nheight = 1.6\ndistance = 1.5\n");
    ASSERT_TRUE(report.catchlights);
    for (const Catchlight& image : *report.catchlights) {
        EXPECT_EQ(image.width_in_iris, 0.0);
        EXPECT_EQ(image.height_in_iris, 0.0);
        EXPECT_EQ(image.visible, image.light == "key" ? 1.0 : 0.0) << image.eye << " " << image.light;
        if (image.light != "key") continue;
        EXPECT_LT(glm::length(image.offset_in_iris), 1.0F);
    }
}

}  // namespace
}  // namespace understudy
