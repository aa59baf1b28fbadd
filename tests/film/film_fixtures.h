// Films made by hand and a folder to write in.
#pragma once

#include <gtest/gtest.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "film/develop.h"
#include "film/exposure.h"
#include "spectrum/illuminant.h"
#include "transport/film.h"

namespace understudy {

inline FilmLayer even_layer(const std::string& light, std::size_t pixels, const Spectrum& transfer) {
    return {light, std::vector<Bands>(pixels, band_means(transfer))};
}

// A card square to a light of which it receives 1 lm/m² per lumen: transfer = reflectance / π.
inline Film card(const Spectrum& reflectance, int width = 4, int height = 3) {
    Film film;
    film.width = width;
    film.height = height;
    film.layers.push_back(even_layer("key", film.pixel_count(), reflectance * (1.0F / kPi)));
    return film;
}

// The settings at which a meter at the card reads the camera's own aperture.
inline Developing metered(const Spectrum& light, const Spectrum& white) {
    Developing developing;
    developing.aperture = 5.6;
    developing.iso = 200.0;
    developing.white = white;
    developing.lights.push_back({"key", exposure_of_f_number(developing.aperture, developing.iso), light});
    return developing;
}

// Three layers and all features, full of numbers that are not round.
inline Film busy_film(int width, int height) {
    std::mt19937 random(11);
    std::uniform_real_distribution<float> uniform(0.0F, 1.0F);
    Film film;
    film.width = width;
    film.height = height;
    film.samples = 64;
    film.features.samples = 64;
    const auto fill = [&](Bands& bands) {
        for (float& value : bands) value = uniform(random);
    };
    for (const char* name : {"key", "rim light", "ambient"}) {
        film.layers.push_back({name, std::vector<Bands>(film.pixel_count())});
        for (Bands& pixel : film.layers.back().pixels) fill(pixel);
        for (const Bands& pixel : film.layers.back().pixels) film.layers.back().glints.push_back(0.5F * pixel[3]);
    }
    film.features.albedo.resize(film.pixel_count());
    for (Bands& pixel : film.features.albedo) fill(pixel);
    for (std::size_t i = 0; i < film.pixel_count(); ++i) {
        const float x = uniform(random);
        const float y = uniform(random);
        film.features.normal.emplace_back(x, y, 1.0F - x);
        film.features.depth_m.push_back(2.0F + y);
    }
    return film;
}

inline Developing developing_of(const Film& film) {
    Developing developing;
    developing.white = *cie_illuminant("D55");
    for (const FilmLayer& layer : film.layers) {
        developing.lights.push_back({layer.light, 4.0, *cie_illuminant(layer.light == "ambient" ? "FL11" : "D65")});
    }
    return developing;
}

// A folder of the test's own, gone afterwards.
class FolderTest : public testing::Test {
  protected:
    void SetUp() override {
        const auto* info = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = std::filesystem::temp_directory_path() /
                  (std::string("understudy-") + info->name() + "-" + std::to_string(::getpid()));
        std::filesystem::create_directories(folder_);
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    std::filesystem::path file(const std::string& name) const { return folder_ / name; }
    const std::filesystem::path& folder() const { return folder_; }

    std::size_t files() const {
        const auto count = std::distance(std::filesystem::directory_iterator(folder_), {});
        return static_cast<std::size_t>(count);
    }

    static std::string bytes_of(const std::filesystem::path& path) {
        std::ifstream stream(path, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), {}};
    }

  private:
    std::filesystem::path folder_;
};

}  // namespace understudy
