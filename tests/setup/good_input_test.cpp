#include <cmath>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

const StandPlacement& stand_of(const Placement& placement) { return std::get<StandPlacement>(placement.where); }

// Every key of the scene file's contract, with its default as the value.
const std::string kListing = R"(title = "Side strip, black and white"

[picture]
width = 640
height = 800
treatment = "colour"
samples = 64
white_balance = "flash"

[camera]
focal_length = "85 mm"
sensor = [36.0, 24.0]
distance = "2.2 m"
angle = 0
height = "eye"
aim = "face"
aperture = 4.0
shutter = "1/200"
iso = 200
focus = "near-eye"

[sitter]
head = "aspen"
eye_height = "1.25 m"
turn = 0
chin = 0
lean = 0
gaze = "camera"

[[light]]
name = "key"
modifier = "strip-30x120"
angle = -60
height = "1.7 m"
distance = "1.3 m"
source = "flash"
colour_temperature = "5500 K"
meter = 4.0

[[panel]]
name = "fill card"
surface = "white"
size = ["1.0 m", "1.5 m"]
angle = 70
height = "1.3 m"
distance = "0.9 m"

[backdrop]
surface = "grey"
distance = "1.5 m"
width = "2.72 m"
floor = true

[room]
ambient = "0 lx"
ambient_temperature = "4000 K"
)";

void expect_listing(const Setup& setup) {
    EXPECT_EQ(setup.picture.width, 640);
    EXPECT_EQ(setup.picture.height, 800);
    EXPECT_EQ(setup.picture.treatment, Treatment::kColour);
    EXPECT_EQ(setup.picture.samples, 64);
    EXPECT_FALSE(setup.picture.white_balance.as_lit);
    EXPECT_DOUBLE_EQ(setup.picture.white_balance.kelvin, 5500.0);
    EXPECT_EQ(setup.picture.seed, 0U);

    EXPECT_DOUBLE_EQ(setup.camera.focal_length_m, 0.085);
    EXPECT_DOUBLE_EQ(setup.camera.sensor_long_m, 0.036);
    EXPECT_DOUBLE_EQ(setup.camera.sensor_short_m, 0.024);
    EXPECT_DOUBLE_EQ(stand_of(setup.camera.placement).distance_m, 2.2);
    EXPECT_DOUBLE_EQ(stand_of(setup.camera.placement).angle_deg, 0.0);
    EXPECT_FALSE(stand_of(setup.camera.placement).height_m);
    EXPECT_FALSE(stand_of(setup.camera.placement).elevation_deg);
    EXPECT_EQ(setup.camera.placement.aim.target, Aim::Target::kFace);
    EXPECT_DOUBLE_EQ(setup.camera.exposure.aperture, 4.0);
    EXPECT_DOUBLE_EQ(setup.camera.exposure.shutter_s, 0.005);
    EXPECT_DOUBLE_EQ(setup.camera.exposure.iso, 200.0);
    EXPECT_EQ(setup.camera.focus.on, Focus::On::kNearEye);

    EXPECT_EQ(std::get<LibraryHead>(setup.sitter.head).name, "aspen");
    EXPECT_TRUE(std::filesystem::exists(std::get<LibraryHead>(setup.sitter.head).path));
    EXPECT_DOUBLE_EQ(setup.sitter.eye_height_m, 1.25);
    EXPECT_DOUBLE_EQ(setup.sitter.turn_deg, 0.0);
    EXPECT_TRUE(std::holds_alternative<GazeAtCamera>(setup.sitter.gaze));
    EXPECT_FALSE(setup.sitter.skin.melanin);

    ASSERT_EQ(setup.lights.size(), 1U);
    const LightSettings& key = setup.lights[0];
    EXPECT_EQ(key.name, "key");
    EXPECT_DOUBLE_EQ(stand_of(key.placement).angle_deg, -60.0);
    EXPECT_DOUBLE_EQ(*stand_of(key.placement).height_m, 1.7);
    EXPECT_DOUBLE_EQ(stand_of(key.placement).distance_m, 1.3);
    EXPECT_EQ(key.source, SourceKind::kFlash);
    EXPECT_DOUBLE_EQ(key.colour.kelvin, 5500.0);
    EXPECT_EQ(key.colour.illuminant, "");
    EXPECT_DOUBLE_EQ(std::get<PowerFromMeter>(key.power).f_number, 4.0);

    ASSERT_TRUE(setup.backdrop);
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(setup.backdrop->surface).value, 0.18);
    EXPECT_DOUBLE_EQ(setup.backdrop->distance_m, 1.5);
    EXPECT_DOUBLE_EQ(setup.backdrop->width_m, 2.72);
    EXPECT_TRUE(setup.backdrop->floor);
    EXPECT_DOUBLE_EQ(setup.room.ambient_lx, 0.0);
    EXPECT_DOUBLE_EQ(setup.room.ambient_kelvin, 4000.0);
    EXPECT_FALSE(setup.room.size_m);
}

void expect_panel(const PanelSettings& panel) {
    EXPECT_EQ(panel.name, "fill card");
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(panel.surface).value, 0.9);
    EXPECT_DOUBLE_EQ(panel.width_m, 1.0);
    EXPECT_DOUBLE_EQ(panel.height_m, 1.5);
    EXPECT_DOUBLE_EQ(stand_of(panel.placement).angle_deg, 70.0);
    EXPECT_DOUBLE_EQ(*stand_of(panel.placement).height_m, 1.3);
    EXPECT_DOUBLE_EQ(stand_of(panel.placement).distance_m, 0.9);
}

TEST(GoodInput, TheWholeListingIsRead) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(kListing);
    ASSERT_TRUE(setup) << all_text(setup.problems());
    EXPECT_EQ(setup->title, "Side strip, black and white");
    EXPECT_EQ(setup->text, kListing);
    EXPECT_EQ(setup->lights[0].modifier.name, "strip-30x120");
    EXPECT_EQ(setup->lights[0].said_at.line, 30);
    expect_listing(*setup);
    ASSERT_EQ(setup->panels.size(), 1U);
    expect_panel(setup->panels[0]);
}

TEST(GoodInput, OneLightOneModifierAndAMeterValueAreACompleteScene) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(kLight);
    ASSERT_TRUE(setup) << all_text(setup.problems());
    EXPECT_EQ(setup->title, "scene");
    expect_listing(*setup);
    EXPECT_TRUE(setup->panels.empty());
    const auto with_panel = scratch.parse(kLight + "[[panel]]\n");
    ASSERT_TRUE(with_panel);
    expect_panel(with_panel->panels[0]);
}

TEST(GoodInput, LaterLightsAreAStopAndAHalfUnderTheKey) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(kLight + "[[light]]\nmodifier = \"bulb\"\n[[light]]\nmodifier = \"bulb\"\n");
    ASSERT_TRUE(setup) << all_text(setup.problems());
    EXPECT_EQ(setup->lights[1].name, "light-2");
    EXPECT_EQ(setup->lights[2].name, "light-3");
    EXPECT_DOUBLE_EQ(std::get<PowerFromKey>(setup->lights[2].power).stops, -1.5);
}

TEST(GoodInput, SitterChoices) {
    const ScratchLibrary scratch;
    const auto sitter = [&](const std::string& lines) {
        const auto setup = scratch.parse("[sitter]\n" + lines + "\n" + kLight);
        EXPECT_TRUE(setup) << all_text(setup.problems());
        return setup->sitter;
    };
    EXPECT_TRUE(std::holds_alternative<MattBall>(sitter("head = \"ball\"").head));
    EXPECT_TRUE(std::holds_alternative<NobodyThere>(sitter("head = \"none\"").head));
    EXPECT_EQ(std::get<GazeAtLight>(sitter("gaze = \"key\"").gaze).name, "key");
    const GazeAngles angles = std::get<GazeAngles>(sitter("gaze = [5, -3.5]").gaze);
    EXPECT_DOUBLE_EQ(angles.across_deg, 5.0);
    EXPECT_DOUBLE_EQ(angles.up_deg, -3.5);
    EXPECT_DOUBLE_EQ(*sitter("lids = 0").lids, 0.0);
    EXPECT_DOUBLE_EQ(*sitter("lids = 1.3").lids, 1.3);
    EXPECT_FALSE(sitter("gaze = [50, 0]").lids);
    EXPECT_EQ(*sitter("iris = \"grey\"").iris, IrisColour::kGrey);
    EXPECT_DOUBLE_EQ(*sitter("melanin = 0.03\nblood = 0.05").skin.blood, 0.05);
    EXPECT_DOUBLE_EQ(sitter("shine = 0.8").skin.shine, 0.8);
    EXPECT_DOUBLE_EQ(sitter("").skin.shine, 0.5);
    const OwnMesh mesh = std::get<OwnMesh>(sitter("head = \"own.obj\"\nscale = \"1 cm\"\nup = \"z\"\nfront = \"-y\"\n"
                                                  "left_eye = [3, -9, 10]\nright_eye = [-3, -9, 10]")
                                               .head);
    EXPECT_EQ(mesh.path, scratch.folder() / "own.obj");
    EXPECT_DOUBLE_EQ(mesh.scale_m, 0.01);
    EXPECT_EQ(mesh.up, Double3(0.0, 0.0, 1.0));
    EXPECT_EQ(mesh.front, Double3(0.0, -1.0, 0.0));
    EXPECT_EQ(*mesh.left_eye, Double3(3.0, -9.0, 10.0));
}

TEST(GoodInput, PictureCameraBackdropAndRoomChoices) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(R"([picture]
treatment = "black-and-white"
white_balance = "as-lit"
seed = 7
[camera]
focal_length = 50
sensor = [24, "36 mm"]
height = "5 ft"
shutter = 0.5
focus = "2 m"
[backdrop]
surface = "gold"
height = 2.6
floor = false
[room]
ambient = 120
size = [4.0, 6.0, 2.7]
walls = 0.5
)" + kLight);
    ASSERT_TRUE(setup) << all_text(setup.problems());
    EXPECT_EQ(setup->picture.treatment, Treatment::kBlackAndWhite);
    EXPECT_TRUE(setup->picture.white_balance.as_lit);
    EXPECT_EQ(setup->picture.seed, 7U);
    EXPECT_DOUBLE_EQ(setup->camera.focal_length_m, 0.05);
    EXPECT_DOUBLE_EQ(setup->camera.sensor_long_m, 0.036);
    EXPECT_DOUBLE_EQ(*stand_of(setup->camera.placement).height_m, 1.524);
    EXPECT_DOUBLE_EQ(setup->camera.exposure.shutter_s, 0.5);
    EXPECT_EQ(setup->camera.focus.on, Focus::On::kDistance);
    EXPECT_DOUBLE_EQ(setup->camera.focus.distance_m, 2.0);
    EXPECT_EQ(std::get<Metal>(setup->backdrop->surface), Metal::kGold);
    EXPECT_DOUBLE_EQ(setup->backdrop->height_m, 2.6);
    EXPECT_FALSE(setup->backdrop->floor);
    EXPECT_DOUBLE_EQ(setup->room.ambient_lx, 120.0);
    EXPECT_EQ(*setup->room.size_m, Double3(4.0, 6.0, 2.7));
    EXPECT_DOUBLE_EQ(std::get<Reflectance>(setup->room.walls).value, 0.5);
    for (const auto& [text, kelvin] :
         {std::pair("\"tungsten\"", 3200.0), {"\"flash\"", 5500.0}, {"4300", 4300.0}, {"\"4300 K\"", 4300.0}}) {
        const auto balanced = scratch.parse("[picture]\nwhite_balance = " + std::string(text) + "\n" + kLight);
        ASSERT_TRUE(balanced) << all_text(balanced.problems());
        EXPECT_DOUBLE_EQ(balanced->picture.white_balance.kelvin, kelvin);
    }
    EXPECT_FALSE(scratch.parse("[backdrop]\nsurface = \"none\"\n" + kLight)->backdrop);
}

}  // namespace
}  // namespace understudy
