// A checksum at the end of a saved film, behind what EXR readers look at. It is checked before the file reaches the
// image library, which ends the process over some kinds of damage.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace understudy {

// The seal for what is to stand before it: the bytes "understudy film " and the CRC-32 of all before them in 8
// hexadecimal digits.
std::string seal_of(const std::vector<unsigned char>& bytes);

// Why the seal does not vouch for the file; empty if it does.
std::string broken_seal(const std::filesystem::path& path);

}  // namespace understudy
