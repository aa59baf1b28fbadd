#include "film/picture_file.h"

#include <OpenImageIO/imageio.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <csignal>
#include <fstream>
#include <limits>

#include "film_fixtures.h"

// As in OpenImageIO/tiffutils.h, which cannot be included without the TIFF library's headers.
OIIO_NAMESPACE_BEGIN
OIIO_API bool decode_exif(string_view exif, ImageSpec& spec);
OIIO_NAMESPACE_END

namespace understudy {
namespace {

class PictureFile : public FolderTest {};

const PictureTags kTags = {"Strip, side", 4.0, 1.0 / 200.0, 200.0, 0.085};

Picture grey_picture() {
    return develop(card(Spectrum(0.18F), 32, 24), metered(*cie_illuminant("D55"), *cie_illuminant("D55")));
}

std::vector<unsigned char> codes_of(const std::filesystem::path& path) {
    const auto input = OIIO::ImageInput::open(path.string());
    if (!input) return {};
    const OIIO::ImageSpec& spec = input->spec();
    std::vector<unsigned char> codes(static_cast<std::size_t>(spec.width * spec.height * spec.nchannels));
    if (!input->read_image(0, 0, 0, spec.nchannels, OIIO::TypeDesc::UINT8, codes.data())) return {};
    return codes;
}

// ISO 12232's and the trade's middle: 18 % is code 118 of sRGB.
TEST_F(PictureFile, HoldsTheGreyCardAs118) {
    ASSERT_TRUE(write_display_picture(file("grey.png"), PictureKind::kPng, grey_picture(), kTags));
    const auto codes = codes_of(file("grey.png"));
    ASSERT_EQ(codes.size(), 32U * 24U * 3U);
    for (const unsigned char code : codes) EXPECT_EQ(code, 118);
    ASSERT_TRUE(write_display_picture(file("grey.jpg"), PictureKind::kJpeg, grey_picture(), kTags));
    for (const unsigned char code : codes_of(file("grey.jpg"))) EXPECT_NEAR(code, 118, 1);
    EXPECT_EQ(files(), 2U);
}

// PNG specification, third edition: 11.3.2.5 sRGB, 11.3.2.2 gAMA (45455) and chunk eXIf.
TEST_F(PictureFile, TagsPngAsSrgb) {
    ASSERT_TRUE(write_display_picture(file("a.png"), PictureKind::kPng, grey_picture(), kTags));
    const std::string bytes = bytes_of(file("a.png"));
    EXPECT_NE(bytes.find("sRGB"), std::string::npos);
    EXPECT_NE(bytes.find(std::string("gAMA\x00\x00\xb1\x8f", 8)), std::string::npos);
    EXPECT_NE(bytes.find("eXIf"), std::string::npos);
    EXPECT_NE(bytes.find("Strip, side"), std::string::npos);
}

void expect_settings(const OIIO::ImageSpec& spec) {
    EXPECT_NEAR(1.0F / spec.get_float_attribute("ExposureTime"), 200.0F, 1e-3F);
    EXPECT_NEAR(spec.get_float_attribute("FNumber"), 4.0F, 1e-6F);
    EXPECT_EQ(spec.get_int_attribute("Exif:PhotographicSensitivity"), 200);
    EXPECT_NEAR(spec.get_float_attribute("Exif:FocalLength"), 85.0F, 1e-4F);
    EXPECT_EQ(spec.get_string_attribute("ImageDescription"), "Strip, side");
    EXPECT_EQ(spec.get_int_attribute("Exif:ColorSpace"), 1);  // EXIF 2.3: 1 is sRGB
}

TEST_F(PictureFile, CarriesTheCamerasSettings) {
    ASSERT_TRUE(write_display_picture(file("a.jpg"), PictureKind::kJpeg, grey_picture(), kTags));
    ASSERT_TRUE(write_display_picture(file("a.png"), PictureKind::kPng, grey_picture(), kTags));
    const auto input = OIIO::ImageInput::open(file("a.jpg").string());
    ASSERT_TRUE(input);
    expect_settings(input->spec());
    // Not by way of the image library's PNG reader: the chunk's bytes as the standard has them (length, name, body).
    const std::string png = bytes_of(file("a.png"));
    const std::size_t at = png.find("eXIf");
    ASSERT_NE(at, std::string::npos);
    const auto byte = [&](std::size_t back) {
        return static_cast<std::size_t>(static_cast<unsigned char>(png[at - back]));
    };
    OIIO::ImageSpec spec;
    ASSERT_TRUE(OIIO::decode_exif(OIIO::string_view(png.data() + at + 4, byte(2) * 256 + byte(1)), spec));
    expect_settings(spec);
    EXPECT_NE(bytes_of(file("a.jpg")).find(std::string("Exif\0\0", 6)), std::string::npos);
}

TEST_F(PictureFile, LeavesOutSettingsThatAreNotKnown) {
    ASSERT_TRUE(write_display_picture(file("a.jpg"), PictureKind::kJpeg, grey_picture(), {}));
    const auto input = OIIO::ImageInput::open(file("a.jpg").string());
    ASSERT_TRUE(input);
    EXPECT_EQ(input->spec().find_attribute("FNumber"), nullptr);
    EXPECT_EQ(input->spec().find_attribute("ExposureTime"), nullptr);
}

TEST_F(PictureFile, ShowsWhatIsNoNumberAsMagenta) {
    Picture picture = grey_picture();
    picture.pixels[0] = Vec3(0.2F, std::numeric_limits<float>::quiet_NaN(), 0.2F);
    picture.pixels[1] = Vec3(-1.0F, 0.0F, 9.0F);
    ASSERT_TRUE(write_display_picture(file("a.png"), PictureKind::kPng, picture, {}));
    const auto codes = codes_of(file("a.png"));
    ASSERT_GE(codes.size(), 6U);
    const std::vector<unsigned char> expected = {255, 0, 255, 0, 0, 255};
    EXPECT_TRUE(std::equal(expected.begin(), expected.end(), codes.begin()));
}

TEST_F(PictureFile, ExrHasEveryLightAndFeatureByName) {
    const Film film = busy_film(8, 6);
    const Developing developing = developing_of(film);
    const auto written = write_exr(file("a.exr"), film, developing, kTags);
    ASSERT_TRUE(written) << written.problems()[0].text;
    const auto input = OIIO::ImageInput::open(file("a.exr").string());
    ASSERT_TRUE(input);
    const OIIO::ImageSpec spec = input->spec();
    std::vector<float> values(film.pixel_count() * static_cast<std::size_t>(spec.nchannels));
    ASSERT_TRUE(input->read_image(0, 0, 0, spec.nchannels, OIIO::TypeDesc::FLOAT, values.data()));
    const auto value = [&](const char* channel, std::size_t pixel) {
        const int index = spec.channelindex(channel);
        EXPECT_GE(index, 0) << channel;
        return values[pixel * static_cast<std::size_t>(spec.nchannels) + static_cast<std::size_t>(index)];
    };
    EXPECT_EQ(spec.nchannels, 3 + 3 * 3 + 3 + 3 + 1);
    EXPECT_EQ(spec.format, OIIO::TypeDesc::HALF);
    const Picture whole = develop(film, developing);
    const Picture rim = develop_layer(film, developing, 1);
    // A half float has 11 significant bits: half a unit in the last place is 1/2048 of the value at most.
    EXPECT_NEAR(value("R", 13), whole.pixels[13].r, std::abs(whole.pixels[13].r) / 2048.0F);
    EXPECT_NEAR(value("rim light.G", 13), rim.pixels[13].g, std::abs(rim.pixels[13].g) / 2048.0F);
    EXPECT_NEAR(value("normal.X", 13), film.features.normal[13].x, 1.0F / 2048.0F);
    EXPECT_NEAR(value("depth.Z", 13), film.features.depth_m[13], 3.0F / 2048.0F);
    value("albedo.B", 0);
    value("ambient.R", 0);
    EXPECT_NEAR(spec.get_float_attribute("ExposureTime"), 0.005F, 1e-6F);
}

// A disk that runs full, by the process's limit on a file's size: the old file stays as it was and nothing is left
// behind.
TEST_F(PictureFile, IsWholeOrNotThereWhenTheDiskIsFull) {
    const Film film = busy_film(64, 48);
    const Picture picture = develop(film, developing_of(film));
    ASSERT_LT(clipped_share(picture), 0.5);  // or a PNG of it would be small enough to fit
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
    for (const char* name : {"a.png", "a.jpg", "a.exr", "film.exr"}) {
        std::ofstream(file(name)) << "old";
        rlimit small = before;
        small.rlim_cur = 1500;
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
        const auto outcome = [&]() -> Expected<Done> {
            if (std::string(name) == "film.exr") return write_film(file(name), film, "text");
            if (std::string(name) == "a.exr") return write_exr(file(name), film, developing_of(film), kTags);
            return write_display_picture(file(name), *picture_kind(name), picture, kTags);
        }();
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &before), 0);
        ASSERT_FALSE(outcome) << name;
        EXPECT_EQ(outcome.problems()[0].blame, Blame::kFailed);
        EXPECT_NE(outcome.problems()[0].text.find(file(name).string()), std::string::npos)
            << outcome.problems()[0].text;
        EXPECT_EQ(bytes_of(file(name)), "old") << name;
    }
    std::signal(SIGXFSZ, SIG_DFL);
    EXPECT_EQ(files(), 4U);
}

TEST_F(PictureFile, ReplacesAnOlderOne) {
    std::ofstream(file("a.png")) << "old";
    ASSERT_TRUE(write_display_picture(file("a.png"), PictureKind::kPng, grey_picture(), {}));
    EXPECT_EQ(codes_of(file("a.png")).size(), 32U * 24U * 3U);
    EXPECT_EQ(files(), 1U);
}

TEST_F(PictureFile, CannotBeMadeEverywhere) {
    EXPECT_TRUE(check_writable(file("new.png")));
    EXPECT_TRUE(check_writable("new-in-the-present-folder.png"));
    EXPECT_FALSE(check_writable(folder()));
    EXPECT_FALSE(check_writable(file("missing") / "a.png"));
    EXPECT_FALSE(check_writable("/dev/null"));
    EXPECT_FALSE(check_writable(""));
    const auto problem = check_writable(file("missing") / "a.png");
    EXPECT_NE(problem.problems()[0].text.find("missing"), std::string::npos);
    EXPECT_FALSE(write_display_picture(file("missing") / "a.png", PictureKind::kPng, grey_picture(), {}));
    EXPECT_FALSE(check_writable("/proc/a.png"));
    EXPECT_EQ(files(), 0U);
}

TEST(PictureKindOf, GoesByTheNamesEnding) {
    EXPECT_EQ(*picture_kind("a.png"), PictureKind::kPng);
    EXPECT_EQ(*picture_kind("folder.exr/a.JPG"), PictureKind::kJpeg);
    EXPECT_EQ(*picture_kind("a.jpeg"), PictureKind::kJpeg);
    EXPECT_EQ(*picture_kind("a.exr"), PictureKind::kExr);
    const auto unknown = picture_kind("a.tiff");
    ASSERT_FALSE(unknown);
    for (const char* known : {".png", ".jpg", ".exr", "a.tiff"}) {
        EXPECT_NE(unknown.problems()[0].text.find(known), std::string::npos) << known;
    }
    EXPECT_FALSE(picture_kind("a"));
}

}  // namespace
}  // namespace understudy
