// The lines of a photometric file before its numbers: the edition, the keywords, and what TILT says.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/photometric_file.h"
#include "setup/photometric_scanner.h"

namespace understudy {

struct PhotometricHeader {
    PhotometricEdition edition = PhotometricEdition::k1986;
    std::vector<PhotometricKeyword> keywords;
    std::string tilt;  // "NONE", "INCLUDE" or a file's name
};

// None when the scanner has failed.
std::optional<PhotometricHeader> read_photometric_header(PhotometricScanner& scanner);

}  // namespace understudy
