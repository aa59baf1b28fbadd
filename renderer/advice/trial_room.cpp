#include "advice/trial_room.h"

#include <cmath>

#include <fmt/format.h>

#include "sitter/hair/brows.h"
#include "sitter/hair/grow_strands.h"
#include "sitter/hair/lashes.h"
#include "stage/placing.h"

namespace understudy {

Expected<HeadPointer> load_sighted_head(const Setup& setup, const Library& library) {
    auto head = load_head(setup.sitter, library);
    if (!head || has_eyes(**head)) return head;
    return Problem{Blame::kWrongInput,
                   fmt::format("{}: this is about eyes, and this sitter has none; expected a head of the library, "
                               "or an .obj with left_eye and right_eye",
                               setup.file.string())};
}

Expected<TrialRoom> TrialRoom::open(const Setup& setup, const Library& library, const HeadPointer& head) {
    TrialRoom room;
    room.asked_ = setup;
    room.asked_.picture.skin = SkinLight::kAtSurface;
    room.cache_ = library.cache;
    room.head_ = head;
    auto studio = place_studio(room.asked_, library, room.head_);
    if (!studio) return studio.problems();
    room.studio_ = std::move(*studio);
    room.asked_.lights = room.studio_.setup.lights;  // what photometric files give by themselves is filled in
    room.modifiers_ = room.studio_.modifiers;
    room.camera_ = room.studio_.camera;
    room.eyes_ = room.studio_.sitter.eyes;
    room.first_strands_ = room.studio_.sitter.strands;
    if (room.studio_.sitter.growth) room.first_skull_ = room.studio_.sitter.growth->to_studio;
    room.stage_ = std::make_unique<Stage>(room.studio_, Stage::With::kSitter);
    room.nobody_ = std::make_unique<Stage>(room.studio_, Stage::With::kNobody);
    if (Problems problems = room.stage_->problems_with(room.studio_); !problems.empty()) return problems;
    auto lit = set_powers(room.studio_, *room.nobody_);
    if (!lit) return lit.problems();
    room.lit_ = std::move(*lit);
    return room;
}

bool TrialRoom::set_lights() {
    auto lit = set_powers(studio_, *nobody_);
    if (!lit) return false;
    lit_ = std::move(*lit);
    return true;
}

bool TrialRoom::with_studio(const std::function<void(Setup&)>& change) {
    if (sitter_moved_ && !with_sitter([](SitterSettings&) {})) return false;
    sitter_moved_ = false;
    studio_.camera = camera_;
    studio_.sitter.eyes = eyes_;
    studio_.setup = asked_;
    studio_.modifiers = modifiers_;
    change(studio_.setup);
    for (std::size_t i = 0; i < studio_.setup.lights.size(); ++i) {
        if (studio_.setup.lights[i].modifier.name == asked_.lights[i].modifier.name) continue;
        auto built = build_modifier(studio_.setup.lights[i].modifier, cache_);
        if (!built) return false;
        studio_.modifiers[i] = *built;
    }
    if (!place_things(studio_).empty()) return false;
    stage_->rearrange(studio_);
    nobody_->rearrange(studio_);
    return stage_->problems_with(studio_).empty() && set_lights();
}

bool TrialRoom::with_sitter(const std::function<void(SitterSettings&)>& change) {
    sitter_moved_ = true;
    studio_.setup = asked_;
    studio_.modifiers = modifiers_;
    studio_.camera = camera_;
    change(studio_.setup.sitter);
    if (!place_things(studio_).empty()) return false;
    studio_.face = stepped_face(*head_, studio_.setup.sitter);
    studio_.sitter = pose_head(*head_, studio_.setup.sitter, gaze_target(studio_));
    studio_.sitter.strands = moved_strands();
    if (studio_.sitter.landmarks) {
        studio_.sitter.landmarks = clear_of(studio_.sitter.strands, *studio_.sitter.landmarks);
    }
    stage_->seat(studio_);
    nobody_->rearrange(studio_);
    return stage_->problems_with(studio_).empty() && set_lights();
}

bool TrialRoom::as_if_turned(double degrees) {
    if (!with_studio([](Setup&) {})) return false;
    const double turn = -radians(degrees);
    const auto turned = [&](const Double3& way) {
        return Double3(std::cos(turn) * way.x + std::sin(turn) * way.z, way.y,
                       std::cos(turn) * way.z - std::sin(turn) * way.x);
    };
    const Double3 axis = asked_.sitter.step_m;
    const auto turn_front = [&](PlacedFront& front) {
        front.centre = axis + turned(front.centre - axis);
        for (Double3* way : {&front.axis, &front.right, &front.up}) *way = turned(*way);
    };
    turn_front(studio_.camera);
    for (PlacedFront& front : studio_.lights) turn_front(front);
    for (PlacedFront& front : studio_.panels) turn_front(front);
    const auto target = gaze_target(studio_);
    for (Eye& eye : *studio_.sitter.eyes) {
        eye.axis = target ? glm::normalize(*target - eye.centre) : turned(eye.axis);
    }
    stage_->rearrange(studio_);
    nobody_->rearrange(studio_);
    return set_lights();
}

void TrialRoom::turn_up(std::size_t light, double stops) {
    lit_.layers[light].exposure_power *= std::exp2(stops);
    lit_.powers[light].lumens *= std::exp2(stops);
}

// Hair and beard turn with the skull; lashes go with the lids and are grown anew, and the brows with them.
Strands TrialRoom::moved_strands() const {
    const Sitter& sitter = studio_.sitter;
    if (!sitter.growth) return {};
    const GrowingHead head(sitter);
    Strands moved = grow_lashes(head);
    moved.add(grow_brows(head));
    for (StrandPoint& point : moved.points) point.place = head.in_studio(point.place);
    const glm::dmat4 turn = sitter.growth->to_studio * glm::inverse(first_skull_);
    const auto shade = static_cast<std::uint8_t>(moved.shades.size());
    moved.shades.insert(moved.shades.end(), first_strands_.shades.begin(), first_strands_.shades.end());
    for (const Strand& strand : first_strands_.strands) {
        if (strand.kind == StrandKind::kLash || strand.kind == StrandKind::kBrow) continue;
        Strand turned = strand;
        turned.first = static_cast<std::uint32_t>(moved.points.size());
        turned.shade = static_cast<std::uint8_t>(turned.shade + shade);
        moved.strands.push_back(turned);
        for (std::uint32_t k = 0; k < strand.count; ++k) {
            StrandPoint point = first_strands_.points[strand.first + k];
            point.place = Vec3(turn * glm::dvec4(Double3(point.place), 1.0));
            moved.points.push_back(point);
        }
    }
    return moved;
}

}  // namespace understudy
