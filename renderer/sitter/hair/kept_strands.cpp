#include "sitter/hair/kept_strands.h"

#include "sitter/kept.h"

namespace understudy {

namespace {

void take(Fingerprint& print, const Double3& place) {
    for (glm::length_t a = 0; a < 3; ++a) print.take(place[a]);
}

// All that grow_strands looks at: the posed mesh, where the eyes are, and what is wished for.
Fingerprint fingerprint_of(const Sitter& sitter, const StrandDetail& detail) {
    Fingerprint print("strands");
    print.take_all(sitter.mesh.positions);
    print.take_all(sitter.mesh.normals);
    print.take_all(sitter.mesh.triangles);
    print.take_all(sitter.mesh.zones);
    for (const Eye& eye : *sitter.eyes) {
        take(print, eye.centre);
        take(print, eye.axis);
        take(print, eye.up);
        print.take(eye.pupil_radius_m);
    }
    const Growth& growth = *sitter.growth;
    for (glm::length_t column = 0; column < 4; ++column) {
        for (glm::length_t row = 0; row < 4; ++row) print.take(growth.to_studio[column][row]);
    }
    for (const auto& line : growth.lash_lines) print.take_all(line);
    const HairLook& look = growth.look;
    print.take(look.style);
    print.take(look.fringe);
    print.take(look.colour.eumelanin);
    print.take(look.colour.pheomelanin);
    print.take(look.grey);
    print.take(look.beard);
    print.take(look.brows);
    print.take(growth.hat_band.has_value());
    if (growth.hat_band) {
        for (const Double3& of_band : *growth.hat_band) take(print, of_band);
    }
    print.take(detail.least_width_m);
    return print;
}

std::optional<Strands> strands_in(std::string_view bytes) {
    Strands strands;
    const bool whole = take_all(bytes, strands.points) && take_all(bytes, strands.strands) &&
                       take_all(bytes, strands.shades) && bytes.empty();
    if (!whole) return std::nullopt;
    return strands;
}

}  // namespace

Strands kept_strands(const Sitter& sitter, const StrandDetail& detail, const std::filesystem::path& folder) {
    if (folder.empty() || !sitter.growth || !sitter.eyes) return grow_strands(sitter, detail);
    const Fingerprint print = fingerprint_of(sitter, detail);
    if (const auto bytes = read_kept(folder, print)) {
        if (auto strands = strands_in(*bytes)) return std::move(*strands);
    }
    Strands strands = grow_strands(sitter, detail);
    std::string bytes;
    bytes.reserve(strands.points.size() * sizeof(StrandPoint) + strands.strands.size() * sizeof(Strand) + 1024);
    put_all(bytes, strands.points);
    put_all(bytes, strands.strands);
    put_all(bytes, strands.shades);
    write_kept(folder, print, bytes);
    return strands;
}

}  // namespace understudy
