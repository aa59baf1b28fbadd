#include <OpenImageIO/imageio.h>
#include <gtest/gtest.h>

#include <cstring>
#include <fstream>

#include "film/picture_file.h"
#include "film_fixtures.h"

namespace understudy {
namespace {

class FilmFile : public FolderTest {};

void expect_same_film(const Film& one, const Film& other) {
    EXPECT_EQ(one.width, other.width);
    EXPECT_EQ(one.height, other.height);
    EXPECT_EQ(one.samples, other.samples);
    ASSERT_EQ(one.layers.size(), other.layers.size());
    for (std::size_t i = 0; i < one.layers.size(); ++i) {
        EXPECT_EQ(one.layers[i].light, other.layers[i].light);
        EXPECT_EQ(one.layers[i].pixels, other.layers[i].pixels);
        EXPECT_EQ(one.layers[i].glints, other.layers[i].glints);
    }
    EXPECT_EQ(one.features.samples, other.features.samples);
    EXPECT_EQ(one.features.albedo, other.features.albedo);
    EXPECT_EQ(one.features.normal, other.features.normal);
    EXPECT_EQ(one.features.depth_m, other.features.depth_m);
}

TEST_F(FilmFile, ComesBackExactly) {
    const Film film = busy_film(37, 23);
    const std::string text = "title = \"Ünder\"\n[[light]]\nname = \"key\"\n";
    const auto written = write_film(file("a.exr"), film, text);
    ASSERT_TRUE(written) << written.problems()[0].text;
    const auto saved = read_film(file("a.exr"));
    ASSERT_TRUE(saved) << saved.problems()[0].text;
    expect_same_film(film, saved->film);
    EXPECT_EQ(saved->scene_text, text);
    EXPECT_EQ(files(), 1U);
}

TEST_F(FilmFile, ComesBackWithOneLayerAndNoFeatures) {
    const Film film = card(Spectrum(0.18F));
    ASSERT_TRUE(write_film(file("a.exr"), film, ""));
    const auto saved = read_film(file("a.exr"));
    ASSERT_TRUE(saved) << saved.problems()[0].text;
    expect_same_film(film, saved->film);
    EXPECT_EQ(saved->scene_text, "");
}

TEST_F(FilmFile, CutShortAnywhereIsAProblemAndNoCrash) {
    ASSERT_TRUE(write_film(file("a.exr"), busy_film(37, 23), "text"));
    const std::string whole = bytes_of(file("a.exr"));
    for (std::size_t tenth = 0; tenth < 10; ++tenth) {
        std::ofstream(file("b.exr"), std::ios::binary) << whole.substr(0, whole.size() * tenth / 10);
        const auto saved = read_film(file("b.exr"));
        ASSERT_FALSE(saved) << tenth;
        EXPECT_NE(saved.problems()[0].text.find("b.exr"), std::string::npos);
        EXPECT_EQ(saved.problems()[0].blame, Blame::kWrongInput);
    }
}

// The image library ends the process over a pixel type that does not exist; a film must not get that far.
TEST_F(FilmFile, WithAnyByteChangedIsAProblemAndNoCrash) {
    ASSERT_TRUE(write_film(file("a.exr"), busy_film(13, 9), "text"));
    const std::string whole = bytes_of(file("a.exr"));
    for (std::size_t at = 0; at < whole.size(); at += 1 + whole.size() / 400) {
        std::string damaged = whole;
        damaged[at] = static_cast<char>(damaged[at] ^ 0x03);
        std::ofstream(file("b.exr"), std::ios::binary) << damaged;
        EXPECT_FALSE(read_film(file("b.exr"))) << at;
    }
}

// The seal lies behind what EXR readers look at: any of them can still open a film.
TEST_F(FilmFile, IsAnEverydayExrToOthers) {
    const Film film = busy_film(13, 9);
    ASSERT_TRUE(write_film(file("a.exr"), film, "text"));
    const auto input = OIIO::ImageInput::open(file("a.exr").string());
    ASSERT_TRUE(input);
    ASSERT_TRUE(input->seek_subimage(1, 0));
    EXPECT_EQ(input->spec().get_string_attribute("oiio:subimagename"), "rim light");
    EXPECT_EQ(input->spec().channelnames.front(), "380-429");
}

TEST_F(FilmFile, OfSomebodyElseIsAProblem) {
    const Film film = busy_film(5, 4);
    ASSERT_TRUE(write_exr(file("picture.exr"), film, developing_of(film), {}));
    EXPECT_FALSE(read_film(file("picture.exr")));
    ASSERT_TRUE(write_display_picture(file("p.png"), PictureKind::kPng, develop(film, developing_of(film)), {}));
    EXPECT_FALSE(read_film(file("p.png")));
    std::ofstream(file("text.exr")) << "not a picture at all";
    EXPECT_FALSE(read_film(file("text.exr")));
    EXPECT_FALSE(read_film(file("missing.exr")));
    EXPECT_FALSE(read_film(folder()));
}

TEST_F(FilmFile, NeedsALayerNameOfItsOwnForEachLight) {
    Film film = busy_film(5, 4);
    film.layers[1].light = "key";
    EXPECT_FALSE(write_film(file("a.exr"), film, ""));
    EXPECT_FALSE(write_exr(file("b.exr"), film, developing_of(film), {}));
    EXPECT_EQ(files(), 0U);
}

}  // namespace
}  // namespace understudy
