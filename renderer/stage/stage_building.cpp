// What a studio puts on the stage: lights, panels, backdrop, room and sitter as shapes and surfaces.
#include <utility>

#include "scatter/eye_colours.h"
#include "stage/stage.h"
#include "stage/surfaces.h"

namespace understudy {

namespace {

// The same front from behind.
PlacedFront turned_round(const PlacedFront& front) { return {front.centre, -front.axis, -front.right, front.up}; }

}  // namespace

Stage::Stage(const Studio& studio, With with)
    : eye_white_(understudy::eye_white_surface()),
      tear_gloss_(std::get<CoatedSurface>(eye_white_).with_albedo(Spectrum(0.0F))),
      eye_white_base_(MattSurface{sclera_albedo()}),
      iris_(studio.sitter.iris) {
    furnish(studio);
    if (with == With::kNobody) return;
    const Sitter& sitter = studio.sitter;
    if (sitter.kind == Sitter::Kind::kBall) {
        ball_radius_ = static_cast<float>(sitter.ball_radius_m);
        ball_centre_ = Vec3(studio.face);
        ball_surface_ = MattSurface{Spectrum(kBallReflectance)};
    }
    if (!sitter.mesh.triangles.empty()) {
        mesh_.emplace(sitter.mesh);
        zone_surfaces_ = zone_surfaces(sitter);
        cover_.emplace(sitter.mesh);
        if (studio.setup.picture.skin == SkinLight::kUnderSkin) flesh_.emplace(sitter);
        cloth_.emplace(sitter);
    }
    for (const SpectacleLens& lens : sitter.lenses) lenses_.emplace_back(lens, sitter.glasses->glass);
    if (!sitter.strands.empty()) strands_.emplace(sitter.strands);
    if (sitter.eyes) eyes_.assign(sitter.eyes->begin(), sitter.eyes->end());
}

void Stage::furnish(const Studio& studio) {
    const Setup& setup = studio.setup;
    put_up_lights(studio);
    put_up_panels(studio);
    put_up_backdrop(setup.backdrop);
    put_up_room(setup.room);
    has_ambient_ = setup.room.ambient_lx > 0.0;
}

void Stage::rearrange(const Studio& studio) {
    furnish(studio);
    if (!eyes_.empty()) eyes_.assign(studio.sitter.eyes->begin(), studio.sitter.eyes->end());
}

void Stage::seat(const Studio& studio) {
    const Sitter& sitter = studio.sitter;
    if (mesh_ && mesh_moves_ && mesh_->is_of(sitter.mesh)) {
        mesh_->move(sitter.mesh);
    } else if (mesh_) {
        mesh_.emplace(sitter.mesh, TriangleScene::Will::kMove);
        mesh_moves_ = true;
    }
    if (strands_) strands_.emplace(sitter.strands);
    lenses_.clear();
    for (const SpectacleLens& lens : sitter.lenses) lenses_.emplace_back(lens, sitter.glasses->glass);
    rearrange(studio);
}

void Stage::put_up_lights(const Studio& studio) {
    names_.clear();
    const std::vector<Emitter> before = std::exchange(emitters_, {});
    for (std::size_t i = 0; i < studio.setup.lights.size(); ++i) {
        const LightSettings& light = studio.setup.lights[i];
        const BuiltModifier& modifier = studio.modifiers[i];
        names_.push_back(light.name);
        if (i < before.size()) {
            emitters_.emplace_back(light.modifier.shape, studio.lights[i], modifier.table, modifier.web, before[i]);
        } else {
            emitters_.emplace_back(light.modifier.shape, studio.lights[i], modifier.table, modifier.web);
        }
    }
}

void Stage::put_up_panels(const Studio& studio) {
    panel_names_.clear();
    panels_.clear();
    panel_surfaces_.clear();
    panel_open_shares_.clear();
    scrims_.clear();
    any_open_ = false;
    for (std::size_t i = 0; i < studio.panels.size(); ++i) {
        const PanelSettings& panel = studio.setup.panels[i];
        const bool round = panel.shape == PanelShape::kDisc;
        const ModifierShape shape = round ? ModifierShape(DiscShape{panel.width_m})
                                          : ModifierShape(RectangleShape{panel.width_m, panel.height_m});
        const auto width = static_cast<float>(panel.width_m);
        panel_names_.push_back(panel.name);
        panels_.emplace_back(studio.panels[i], round ? FlatFront::ring(width, 0.0F)
                                                     : FlatFront::rectangle(width, static_cast<float>(panel.height_m)));
        panel_surfaces_.push_back(board_surface(panel.surface));
        panel_open_shares_.push_back(open_share(panel_surfaces_.back()));
        any_open_ = any_open_ || panel_open_shares_.back() > 0.0F;
        if (!transmits(panel_surfaces_.back())) continue;
        scrims_.push_back({static_cast<std::uint32_t>(i), Emitter(shape, studio.panels[i]),
                           Emitter(shape, turned_round(studio.panels[i]))});
    }
}

void Stage::put_up_backdrop(const std::optional<BackdropSettings>& settings) {
    backdrop_.clear();
    sweep_.reset();
    backdrop_surface_.reset();
    paint_.reset();
    if (!settings) return;
    BackdropShape shape = backdrop_shape(*settings);
    backdrop_ = std::move(shape.boards);
    sweep_ = shape.sweep;
    if (const auto* mottled = std::get_if<Mottled>(&settings->surface)) {
        paint_.emplace(*mottled);
    } else {
        backdrop_surface_ = board_surface(settings->surface);
    }
}

void Stage::put_up_room(const RoomSettings& settings) {
    walls_.clear();
    wall_surfaces_.clear();
    if (!settings.size_m) return;
    walls_ = room_walls(*settings.size_m);
    wall_surfaces_.assign(walls_.size(), board_surface(settings.walls));
    wall_surfaces_[kFloorBoard] = board_surface(settings.floor);
    wall_surfaces_[kCeilingBoard] = board_surface(settings.ceiling);
}

}  // namespace understudy
