// A checksum at the end of a saved film, behind what EXR readers look at. It is checked before the file reaches the
// image library, which ends the process over some kinds of damage.
#pragma once

#include <filesystem>
#include <string>

namespace understudy {

// Appends the seal: the bytes "understudy film " and the CRC-32 of all before them in 8 hexadecimal digits. The reason
// if it cannot be written, else empty.
std::string seal_file(const std::filesystem::path& path);

// Why the seal does not vouch for the file; empty if it does.
std::string broken_seal(const std::filesystem::path& path);

}  // namespace understudy
