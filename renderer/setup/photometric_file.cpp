#include "setup/photometric_file.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/photometric_header.h"
#include "setup/photometric_scanner.h"
#include "setup/problem_log.h"

namespace understudy {
namespace {

constexpr double kMetresAFoot = 0.3048;  // the international foot, exact
constexpr int kMostAngles = 100000;
constexpr Range kFactors{1e-9, 1e9};
constexpr Range kAngles{-360.0, 360.0};
constexpr double kLeastStepDeg = 1e-4;
// A searchlight has some 1e9 cd; no sum of what is below the limit leaves the range of a float.
constexpr double kMostCandela = 1e12;
constexpr double kLeastPeakCandela = 1e-6;
constexpr std::string_view kExpected = "a photometric file of LM-63 (.ies)";

bool is(double value, double mark) { return std::abs(value - mark) < kLeastStepDeg; }

// Each is checked as it comes, so that a message points at it.
std::vector<double> increasing(PhotometricScanner& scanner, std::string_view name, int count, Range range) {
    std::vector<double> angles;
    for (int i = 0; i < count; ++i) {
        const std::optional<double> angle = scanner.number(fmt::format("{} {} of {}", name, i + 1, count), range);
        if (!angle) {
            break;
        }
        if (i > 0 && !(*angle >= angles.back() + kLeastStepDeg)) {
            scanner.fail(fmt::format("{} {} is {} after {}", name, i + 1, *angle, angles.back()),
                         "angles that increase");
            break;
        }
        angles.push_back(*angle);
    }
    return angles;
}

PhotometricTilt read_tilt_numbers(PhotometricScanner& scanner, std::string from) {
    PhotometricTilt tilt;
    tilt.from = std::move(from);
    tilt.lamp_to_luminaire = scanner.whole("the lamp-to-luminaire geometry", 1, 3).value_or(1);
    const int pairs = scanner.whole("the number of tilt angles", 1, kMostAngles).value_or(0);
    tilt.angles_deg = increasing(scanner, "tilt angle", pairs, {0.0, 180.0});
    tilt.factors = scanner.numbers("tilt factor", static_cast<std::size_t>(pairs), {0.0, 1e3});
    if (!scanner.failed()) {
        scanner.warn("the lamp's output when tilted is read but not used: the light shines as it was measured");
    }
    return tilt;
}

// From a file of its own beside the photometric file; a way out of that folder is not followed.
Expected<PhotometricTilt> read_tilt_file(PhotometricScanner& scanner, const std::string& name,
                                         const std::filesystem::path& beside) {
    if (name.find_first_of("/\\") != std::string::npos || name == "." || name == "..") {
        scanner.fail(fmt::format("TILT names \"{}\"", shown(name)), "NONE, INCLUDE or a file in the same folder");
        return scanner.problem();
    }
    const std::filesystem::path path = beside.parent_path() / name;
    const Expected<std::string> text = read_text_file(path, "a file of tilt factors", kMostPhotometricBytes);
    if (!text) {
        scanner.fail(fmt::format("TILT names \"{}\", which cannot be read", shown(name)),
                     "NONE, INCLUDE or a file of tilt factors in the same folder");
        return scanner.problem();
    }
    PhotometricScanner tilt_scanner(*text, path.string());
    PhotometricTilt tilt = read_tilt_numbers(tilt_scanner, name);
    tilt_scanner.end("nothing after the tilt factors");
    if (tilt_scanner.failed()) {
        return tilt_scanner.problem();
    }
    for (const std::string& warning : tilt_scanner.warnings()) {
        scanner.warn(warning);
    }
    return tilt;
}

void read_lamp_line(PhotometricScanner& scanner, PhotometricFile& file, int& vertical, int& horizontal) {
    file.lamps = scanner.whole("the number of lamps", 1, 10000).value_or(1);
    const double lumens = scanner.number("lumens per lamp", {-1.0, 1e12}).value_or(-1.0);
    if (lumens <= 0.0 && lumens != -1.0) {
        scanner.fail(fmt::format("lumens per lamp is {}", lumens), "more than 0, or -1 for absolute photometry");
    }
    if (lumens > 0.0) {
        file.lumens_per_lamp = lumens;
    }
    file.multiplier = scanner.number("the candela multiplier", kFactors).value_or(1.0);
    vertical = scanner.whole("the number of vertical angles", 2, kMostAngles).value_or(0);
    horizontal = scanner.whole("the number of horizontal angles", 1, kMostAngles).value_or(0);
    file.type = static_cast<PhotometricType>(scanner.whole("the photometric type", 1, 3).value_or(1));
    file.in_feet = scanner.whole("the units (1 feet, 2 metres)", 1, 2).value_or(2) == 1;
    const double unit_m = file.in_feet ? kMetresAFoot : 1.0;
    constexpr Range kSizes{-1000.0, 1000.0};
    file.opening.width_m = unit_m * scanner.number("the opening's width", kSizes).value_or(0.0);
    file.opening.length_m = unit_m * scanner.number("the opening's length", kSizes).value_or(0.0);
    file.opening.height_m = unit_m * scanner.number("the opening's height", kSizes).value_or(0.0);
}

void read_ballast_line(PhotometricScanner& scanner, PhotometricFile& file) {
    file.ballast_factor = scanner.number("the ballast factor", kFactors).value_or(1.0);
    file.second_factor = scanner.number("the factor after the ballast's", kFactors).value_or(1.0);
    if (!scanner.failed() && file.edition >= PhotometricEdition::k1995 && file.second_factor != 1.0) {
        scanner.warn(
            fmt::format("the number for future use is {} and not 1; candela are multiplied by it", file.second_factor));
    }
    file.input_watts = scanner.number("the input watts", {0.0, 1e9}).value_or(0.0);
}

// LM-63-2002: type C from 0 or 90 to 90 or 180; types A and B from −90 or 0 to 90.
void check_vertical(PhotometricScanner& scanner, const PhotometricFile& file) {
    if (scanner.failed()) {
        return;
    }
    const double first = file.vertical_deg.front();
    const double last = file.vertical_deg.back();
    const auto complain = [&](std::string_view which, double angle, std::string_view expected) {
        scanner.fail(fmt::format("the {} vertical angle is {}", which, angle), expected);
    };
    if (file.type == PhotometricType::kC) {
        if (!is(first, 0.0) && !is(first, 90.0)) {
            complain("first", first, "0 or 90, for type C");
        }
        if (!is(last, 90.0) && !is(last, 180.0)) {
            complain("last", last, "90 or 180, for type C");
        }
        return;
    }
    if (!is(first, -90.0) && !is(first, 0.0)) {
        complain("first", first, "-90 or 0, for types A and B");
    }
    if (!is(last, 90.0)) {
        complain("last", last, "90, for types A and B");
    }
    if (is(first, 0.0)) {
        scanner.warn("vertical angles begin at 0: no light is taken to go below it");
    }
}

PhotometricSymmetry side_symmetry(PhotometricScanner& scanner, double first, double last) {
    if (!is(last, 90.0)) {
        scanner.fail(fmt::format("the last horizontal angle is {}", last), "90, for types A and B");
    }
    if (is(first, 0.0)) {
        return PhotometricSymmetry::kLeftEqualsRight;
    }
    if (!is(first, -90.0)) {
        scanner.fail(fmt::format("the first horizontal angle is {}", first), "-90 or 0, for types A and B");
    }
    return PhotometricSymmetry::kNone;
}

// LM-63-2002: 0 alone, or 0 to 90, 180 or 360. Programs agree on what 90 to 270 means, and the edition of 1995 allowed
// any last angle above 180.
PhotometricSymmetry round_symmetry(PhotometricScanner& scanner, const std::vector<double>& angles) {
    const double first = angles.front();
    const double last = angles.back();
    if (is(first, 90.0) && is(last, 270.0)) {
        scanner.warn("horizontal angles from 90 to 270: taken to be mirrored at the 90-270 plane");
        return PhotometricSymmetry::kPlane90To270;
    }
    if (!is(first, 0.0)) {
        scanner.fail(fmt::format("the first horizontal angle is {}", first), "0, for type C");
    }
    if (angles.size() == 1) {
        return PhotometricSymmetry::kAxial;
    }
    if (is(last, 90.0)) {
        return PhotometricSymmetry::kQuadrants;
    }
    if (is(last, 180.0)) {
        return PhotometricSymmetry::kPlane0To180;
    }
    if (last > 180.0 && last < 360.0 && !is(last, 360.0)) {
        scanner.warn(
            fmt::format("the last horizontal angle is {} and not 360: from there the light is taken to change "
                        "evenly to that at 0",
                        last));
    } else if (!is(last, 360.0)) {
        scanner.fail(fmt::format("the last horizontal angle is {}", last), "0, 90, 180 or 360, for type C");
    }
    return PhotometricSymmetry::kNone;
}

void read_angles(PhotometricScanner& scanner, PhotometricFile& file, int vertical, int horizontal) {
    file.vertical_deg = increasing(scanner, "vertical angle", vertical, kAngles);
    check_vertical(scanner, file);
    file.horizontal_deg = increasing(scanner, "horizontal angle", horizontal, kAngles);
    if (scanner.failed()) {
        return;
    }
    file.symmetry = file.type == PhotometricType::kC
                        ? round_symmetry(scanner, file.horizontal_deg)
                        : side_symmetry(scanner, file.horizontal_deg.front(), file.horizontal_deg.back());
}

void read_candela(PhotometricScanner& scanner, PhotometricFile& file) {
    const double factor = file.multiplier * file.ballast_factor * file.second_factor;
    const Range range{0.0, kMostCandela / std::max(1.0, factor)};
    double peak = 0.0;
    for (const double horizontal : file.horizontal_deg) {
        if (scanner.failed()) {
            return;
        }
        std::vector<double> plane = scanner.numbers(fmt::format("candela in the plane at {}, value", horizontal),
                                                    file.vertical_deg.size(), range);
        for (double& candela : plane) {
            candela *= factor;
            peak = std::max(peak, candela);
        }
        file.candela.push_back(std::move(plane));
    }
    if (scanner.failed()) {
        return;
    }
    if (!(peak >= kLeastPeakCandela)) {
        scanner.fail("no direction has any light", "candela values above 0");
    }
    if (is(file.horizontal_deg.back(), 360.0) && file.candela.front() != file.candela.back()) {
        scanner.warn("the planes at 0 and 360 are the same and have different values; each is used on its own side");
    }
}

}  // namespace

Expected<PhotometricFile> parse_photometric_file(const std::string& text, const std::filesystem::path& file) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    const bool marked = std::string_view(text).substr(0, kByteOrderMark.size()) == kByteOrderMark;
    PhotometricScanner scanner(std::string_view(text).substr(marked ? kByteOrderMark.size() : 0), file.string());
    if (marked) {
        scanner.warn("the file begins with a byte order mark, which is left out");
    }
    if (text.find('\0') != std::string::npos) {
        scanner.fail("this is no text file: it holds zero bytes", kExpected);
    }
    PhotometricFile result;
    result.name = file.string();
    const std::optional<PhotometricHeader> header = read_photometric_header(scanner);
    if (!header) {
        return scanner.problem();
    }
    result.edition = header->edition;
    result.keywords = header->keywords;
    if (header->tilt == "INCLUDE") {
        result.tilt = read_tilt_numbers(scanner, header->tilt);
    } else if (header->tilt != "NONE") {
        const Expected<PhotometricTilt> tilt = read_tilt_file(scanner, header->tilt, file);
        if (!tilt) {
            return tilt.problems();
        }
        result.tilt = *tilt;
    }
    int vertical = 0;
    int horizontal = 0;
    read_lamp_line(scanner, result, vertical, horizontal);
    read_ballast_line(scanner, result);
    read_angles(scanner, result, vertical, horizontal);
    read_candela(scanner, result);
    scanner.end(fmt::format("{} planes of {} candela values and then nothing", horizontal, vertical));
    if (scanner.failed()) {
        return scanner.problem();
    }
    result.warnings = scanner.warnings();
    return result;
}

Expected<PhotometricFile> read_photometric_file(const std::filesystem::path& file) {
    const Expected<std::string> text = read_text_file(file, kExpected, kMostPhotometricBytes);
    if (!text) {
        return text.problems();
    }
    if (text->size() > kMostPhotometricBytes) {
        return problem_at({file.string(), 1, 1}, fmt::format("the file is larger than {} bytes; expected {}",
                                                             kMostPhotometricBytes, kExpected));
    }
    return parse_photometric_file(*text, file);
}

}  // namespace understudy
