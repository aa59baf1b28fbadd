#include "setup/read_photometric.h"

#include <filesystem>
#include <system_error>

#include <fmt/format.h>

namespace understudy {
namespace {

constexpr std::string_view kExpected = "a photometric file of LM-63 (.ies)";

}  // namespace

std::shared_ptr<const PhotometricFile> read_photometric(TableReader& modifier) {
    const std::optional<std::string> said = modifier.text("photometric");
    if (!said) {
        return nullptr;
    }
    const SourcePlace place = modifier.place_of("photometric");
    const std::filesystem::path path = std::filesystem::path(place.file).parent_path() / *said;
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(path, error);
    if (said->empty() || std::filesystem::is_directory(status)) {
        modifier.wrong("photometric", fmt::format("is \"{}\", which is no file", shown(*said)), kExpected);
        return nullptr;
    }
    if (!std::filesystem::exists(status)) {
        modifier.wrong("photometric", fmt::format("is \"{}\"; there is no such file", shown(path.string())), kExpected);
        return nullptr;
    }
    Expected<PhotometricFile> file = read_photometric_file(path);
    if (!file) {
        modifier.log().add_all(place, file.problems());
        return nullptr;
    }
    return std::make_shared<const PhotometricFile>(std::move(*file));
}

}  // namespace understudy
