// What a photometric file holds (LM-63 of the Illuminating Engineering Society; editions of 1986, 1991, 1995, 2002 and
// 2019): candela over direction, as a goniometer measured it.
//
// The reader is strict. What real files get wrong in a harmless way is accepted with a warning; whatever would leave
// the light in doubt is a problem with its line.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

enum class PhotometricEdition { k1986, k1991, k1995, k2002, k2019 };

// How its two angles turn; the numbers are the file's own.
enum class PhotometricType {
    kC = 1,  // the poles are straight down and up, as for a lamp that hangs from a ceiling
    kB = 2,  // the poles lie to the sides, as for a floodlight
    kA = 3,  // the poles are down and up and the light shines ahead, as for a headlamp
};

// What the last horizontal angle, or the first, says of the planes that were not measured.
enum class PhotometricSymmetry {
    kAxial,            // type C: 0 alone, the same all round
    kQuadrants,        // type C: 0 to 90
    kPlane0To180,      // type C: 0 to 180, mirrored at that plane
    kPlane90To270,     // type C: 90 to 270, mirrored at that plane
    kNone,             // type C: all round; A and B: −90 to 90
    kLeftEqualsRight,  // types A and B: 0 to 90
};

struct PhotometricKeyword {
    std::string key;   // without brackets; empty for a label line
    std::string text;  // [MORE] joined to the line that it continues
};

// How the lamp's output changes when the luminaire is tilted.
struct PhotometricTilt {
    std::string from;  // "INCLUDE", or the file's name
    int lamp_to_luminaire = 1;
    std::vector<double> angles_deg;
    std::vector<double> factors;
};

// The sizes of the luminous opening as they are written, signs included; kit/photometric_opening.h tells their meaning.
struct PhotometricOpening {
    double width_m = 0.0;   // across the 0-180 plane
    double length_m = 0.0;  // along it
    double height_m = 0.0;
};

struct PhotometricFile {
    std::string name;  // for messages
    PhotometricEdition edition = PhotometricEdition::k2002;
    std::vector<PhotometricKeyword> keywords;
    std::optional<PhotometricTilt> tilt;
    int lamps = 1;
    std::optional<double> lumens_per_lamp;  // none: absolute photometry
    double multiplier = 1.0;
    double ballast_factor = 1.0;
    double second_factor = 1.0;  // 1991: of ballast and lamp; later for future use, and 1
    double input_watts = 0.0;
    PhotometricType type = PhotometricType::kC;
    PhotometricSymmetry symmetry = PhotometricSymmetry::kNone;
    bool in_feet = false;
    PhotometricOpening opening;
    std::vector<double> vertical_deg;  // as written, increasing
    std::vector<double> horizontal_deg;
    std::vector<std::vector<double>> candela;  // by horizontal angle, then vertical; all factors multiplied in
    std::vector<std::string> warnings;         // "file:line:column: …"
};

// The same limit for the file and for one that its TILT names.
inline constexpr std::size_t kMostPhotometricBytes = std::size_t{8} << 20U;

Expected<PhotometricFile> read_photometric_file(const std::filesystem::path& file);

// The same for text in memory; file is used in messages and to find what TILT names.
Expected<PhotometricFile> parse_photometric_file(const std::string& text, const std::filesystem::path& file);

}  // namespace understudy
