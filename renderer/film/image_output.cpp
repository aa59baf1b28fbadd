#include "film/image_output.h"

#include <OpenImageIO/filesystem.h>

#include <cmath>
#include <exception>
#include <memory>
#include <string>

#include "film/pending_file.h"
#include "film/seal.h"

namespace understudy {
namespace {

using Output = std::unique_ptr<OIIO::ImageOutput>;

// OpenImageIO's own messages name the temporary file.
Problem output_problem(const std::filesystem::path& path, const std::string& temporary, std::string reason) {
    for (auto at = reason.find(temporary); at != std::string::npos; at = reason.find(temporary)) {
        reason.replace(at, temporary.size(), path.string());
    }
    while (!reason.empty() && reason.back() == '\n') reason.pop_back();
    return write_problem(path, reason.empty() ? "the image library gives no reason" : reason);
}

bool open_parts(OIIO::ImageOutput* output, const std::string& name, const std::vector<ImagePart>& parts) {
    if (parts.size() == 1) return output->open(name, parts.front().spec);
    std::vector<OIIO::ImageSpec> specs;
    specs.reserve(parts.size());
    for (const ImagePart& part : parts) specs.push_back(part.spec);
    return output->open(name, static_cast<int>(specs.size()), specs.data());
}

bool write_parts(OIIO::ImageOutput* output, const std::string& name, const std::vector<ImagePart>& parts) {
    if (!open_parts(output, name, parts)) return false;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0 && !output->open(name, parts[i].spec, OIIO::ImageOutput::AppendSubimage)) return false;
        if (!output->write_image(parts[i].type, parts[i].data)) return false;
    }
    return output->close() && !output->has_error();
}

}  // namespace

void set_tags(OIIO::ImageSpec* spec, const PictureTags& tags) {
    spec->attribute("Software", "understudy");
    if (!tags.title.empty()) spec->attribute("ImageDescription", tags.title);
    // EXIF's fraction is made by cutting after a millionth, which would take 1/200 s for 0.004999 s: one bit up.
    if (tags.shutter_s > 0.0) {
        spec->attribute("ExposureTime", std::nextafter(static_cast<float>(tags.shutter_s), 1e6F));
    }
    if (tags.aperture > 0.0) spec->attribute("FNumber", static_cast<float>(tags.aperture));
    if (tags.iso > 0.0) spec->attribute("Exif:PhotographicSensitivity", static_cast<int>(tags.iso + 0.5));
    if (tags.focal_length_m > 0.0) {
        constexpr double kMillimetres = 1000.0;
        spec->attribute("Exif:FocalLength", static_cast<float>(tags.focal_length_m * kMillimetres));
    }
}

Expected<std::vector<unsigned char>> encode_image(const std::filesystem::path& path, const std::string& format,
                                                  const ImagePart& part) {
    const std::string name = path.string();
    try {
        std::vector<unsigned char> bytes;
        OIIO::Filesystem::IOVecOutput memory(bytes);
        const Output output = OIIO::ImageOutput::create(format, &memory);
        if (!output) return output_problem(path, name, OIIO::geterror());
        if (!write_parts(output.get(), name, {part})) return output_problem(path, name, output->geterror());
        return bytes;
    } catch (const std::exception& error) {
        return output_problem(path, name, error.what());
    }
}

Expected<Done> write_exr_file(const std::filesystem::path& path, const std::vector<ImagePart>& parts, bool sealed) {
    Expected<PendingFile> pending = PendingFile::beside(path);
    if (!pending) return pending.problems();
    const std::string name = pending->temporary().string();
    try {
        const Output output = OIIO::ImageOutput::create("openexr");
        if (!output) return output_problem(path, name, OIIO::geterror());
        if (!write_parts(output.get(), name, parts)) return output_problem(path, name, output->geterror());
    } catch (const std::exception& error) {
        return output_problem(path, name, error.what());
    }
    if (sealed) {
        if (const std::string reason = seal_file(name); !reason.empty()) return write_problem(path, reason);
    }
    return pending->publish();
}

}  // namespace understudy
