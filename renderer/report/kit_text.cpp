#include "report/kit_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/table.h"

namespace understudy {

namespace {

std::string centimetres(double metres) { return fmt::format("{:.4g}", 100.0 * metres); }

std::string size_of(const ModifierShape& shape) {
    return std::visit(
        [](const auto& front) {
            if constexpr (requires { front.inner_m; }) {
                return fmt::format("{} / {} cm", centimetres(front.diameter_m), centimetres(front.inner_m));
            } else if constexpr (requires { front.diameter_m; }) {
                return fmt::format("Ø {} cm", centimetres(front.diameter_m));
            } else if constexpr (std::is_same_v<decltype(front), const PointShape&>) {
                return std::string("a point");
            } else {
                return fmt::format("{} × {} cm", centimetres(front.width_m), centimetres(front.height_m));
            }
        },
        shape);
}

std::string stops(const std::optional<double>& value) { return value ? fmt::format("{:+.1f}", *value) : ""; }

std::string opening(const KitFigures& figures) {
    return figures.opening_deg ? fmt::format("{:.0f}°", *figures.opening_deg) : "all round";
}

std::string lining_words(const Lining& lining) {
    if (lining.metal) {
        return fmt::format("silver ({:.2f}, roughness {:.2f})", lining.reflectance, lining.roughness);
    }
    return fmt::format("matt ({:.2f})", lining.reflectance);
}

std::string cloth_words(const DiffusingCloth& cloth) {
    return fmt::format("lets pass {:.2f}, {:.0f} % of it nearly straight; reflects {:.2f}", cloth.transmittance,
                       100.0 * cloth.straight, cloth.reflectance);
}

std::string body_words(const Construction& built) {
    using Body = Construction::Body;
    const auto deep = [&](std::string_view what) {
        return fmt::format("{}, {} cm deep, back {} cm", what, centimetres(built.depth_m),
                           centimetres(built.back_diameter_m));
    };
    switch (built.body) {
        case Body::kBox:
            return deep("box");
        case Body::kCone:
            return deep("cone");
        case Body::kBowl:
            return deep("bowl");
        case Body::kParabola:
            return fmt::format("parabola of focal length {} cm, {} cm deep", centimetres(built.tube.before_back_m),
                               centimetres(built.depth_m));
        case Body::kRing:
            return fmt::format("channel, {} cm deep", centimetres(built.depth_m));
        case Body::kBall:
            break;
    }
    return "ball";
}

std::string tube_words(const Tube& tube) {
    const std::string_view glass = tube.glass == Tube::Glass::kNone    ? ""
                                   : tube.glass == Tube::Glass::kClear ? ", under clear glass"
                                                                       : ", under frosted glass";
    return fmt::format("{} of {} cm, {} cm before the back{}", tube.ring ? "ring" : "ball",
                       centimetres(tube.diameter_m), centimetres(tube.before_back_m), glass);
}

std::string construction_words(const Construction& built) {
    std::string text = fmt::format("  body        {}\n", body_words(built));
    if (built.body != Construction::Body::kBall) {
        text += fmt::format("  walls       {}\n", lining_words(built.lining));
    }
    text += fmt::format("  tube        {}\n", tube_words(built.tube));
    if (const auto& plate = built.deflector) {
        text += fmt::format("  deflector   {} cm, {} cm before the back, {}\n", centimetres(plate->diameter_m),
                            centimetres(plate->before_back_m), lining_words(plate->lining));
    }
    if (const auto& inner = built.inner_cloth) {
        text += fmt::format("  inner cloth {} cm behind the front, {} cm off the walls, {}\n",
                            centimetres(inner->behind_front_m), centimetres(inner->gap_m), cloth_words(inner->cloth));
    }
    if (built.front_cloth) text += fmt::format("  front cloth {}\n", cloth_words(*built.front_cloth));
    if (const auto& grid = built.grid) {
        text += fmt::format("  grid        {} cells {:.3g} mm wide and {:.3g} mm deep: dark beyond {:.1f}° in all\n",
                            grid->cells == Grid::Cells::kRound ? "round" : "square", 1000.0 * grid->width_m,
                            1000.0 * grid->depth_m, degrees(2.0 * std::atan(grid->width_m / grid->depth_m)));
    }
    return text;
}

std::string unbuilt_words(const ModifierShape& shape) {
    if (std::holds_alternative<UmbrellaShape>(shape)) return "  umbrella    its light worked out on the canopy\n";
    if (std::holds_alternative<FrameShape>(shape)) return "  frame       of cloth, its light worked out on the cloth\n";
    if (std::holds_alternative<WindowShape>(shape)) return "  window      on an overcast day\n";
    return "  shines evenly all over\n";
}

}  // namespace

std::string kit_text(const std::vector<KitFigures>& kit) {
    Table table({{"modifier", Align::kLeft},
                 {"front", Align::kLeft},
                 {"opens", Align::kRight},
                 {"output", Align::kRight},
                 {"hot spot", Align::kRight}});
    for (const KitFigures& figures : kit) {
        table.add_row({figures.name, size_of(figures.shape), opening(figures), stops(figures.output_stops),
                       stops(figures.hot_spot_stops)});
    }
    return table.text() +
           "\n  opens: full angle at half the axial intensity\n"
           "  output: stops over the bare bulb, on the axis at 1 m\n"
           "  hot spot: stops from the middle of the front to its edge\n";
}

std::string kit_modifier_text(const KitFigures& figures, const ModifierSettings& settings, double efficiency,
                              const std::vector<KitIntensity>& intensities) {
    std::string text = fmt::format("{}\n  front       {}\n", figures.name, size_of(figures.shape));
    text += settings.construction ? construction_words(*settings.construction) : unbuilt_words(settings.shape);
    text += fmt::format("  opens       {}\n", opening(figures));
    if (figures.output_stops) {
        text += fmt::format("  lets out    {:.0f} % of the tube's light ({:+.1f} stops)\n", 100.0 * efficiency,
                            std::log2(efficiency));
        text +=
            fmt::format("  output      {:+.1f} stops over the bare bulb, on the axis at 1 m\n", *figures.output_stops);
    }
    if (figures.hot_spot_stops) {
        text += fmt::format("  hot spot    {:+.1f} stops from the middle to the edge\n", *figures.hot_spot_stops);
    }
    text += "\n";
    Table table({{"off axis", Align::kRight}, {"stops under the axis", Align::kRight}});
    for (const KitIntensity& at : intensities) {
        table.add_row(
            {fmt::format("{:.0f}°", at.angle_deg), std::isfinite(at.stops) ? fmt::format("{:.1f}", at.stops) : "dark"});
    }
    return text + table.text();
}

}  // namespace understudy
