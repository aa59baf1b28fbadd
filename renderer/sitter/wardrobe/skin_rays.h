// How far the head reaches at a place: what glasses are fitted by.
#pragma once

#include <optional>

#include "sitter/skinned_mesh.h"

namespace understudy {

// The face and the skull of a straight head, with or without its ears.
class HeadSurface {
  public:
    enum class Ears { kKept, kLeftOut };
    HeadSurface(const SkinnedMesh& mesh, Ears ears);

    // The foremost skin at a place seen from the front: its z. None: the head is not there.
    std::optional<double> front_at(double x, double y) const;
    // Seen from the side (1 or -1), no farther out than `within` from the middle: the x of the outermost skin.
    std::optional<double> side_at(double side, double y, double z, double within = 0.5) const;

  private:
    static constexpr std::size_t kAcross = 96;  // cells each way
    static constexpr double kCell = 0.004;
    // Triangles by the cells that they cover, seen along an axis.
    using Cells = std::vector<std::vector<std::uint32_t>>;
    static std::optional<std::size_t> cell_at(double a, double b);
    void sort_in(Cells& cells, std::uint32_t triangle, glm::length_t a, glm::length_t b) const;
    std::optional<double> first_skin(const Cells& cells, std::optional<std::size_t> cell, const Double3& origin,
                                     const Double3& way) const;

    std::vector<std::array<Double3, 3>> triangles_;
    Cells along_z_, along_x_;
};

}  // namespace understudy
