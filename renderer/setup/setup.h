// One lighting setup as plain data: what a scene file says, checked, in SI units.
//
// Angles are in degrees here, as in the file, because a person reads both; every other number is in the unit of its
// name. Places on the studio floor are resolved by setup/placement.h once the sitter's face is known.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "setup/camera_settings.h"
#include "setup/flash_settings.h"
#include "setup/light_settings.h"
#include "setup/picture_settings.h"
#include "setup/sitter_settings.h"
#include "setup/studio_settings.h"

namespace understudy {

struct Setup {
    std::string title;
    std::filesystem::path file;
    std::string text;  // the scene file as it was read, kept with a saved film
    PictureSettings picture;
    CameraSettings camera;
    SitterSettings sitter;
    std::vector<FlashHead> flashes;
    std::vector<LightSettings> lights;  // at least one; the first is the key
    std::vector<PanelSettings> panels;
    std::optional<BackdropSettings> backdrop;
    RoomSettings room;
};

// Where the program finds what it brings along.
struct Library {
    std::filesystem::path kit;        // *.toml, one modifier each
    std::filesystem::path heads;      // *.toml, one head's shape amounts each
    std::filesystem::path head_mesh;  // the folder that the asset step wrote: mesh, shapes, rig
    std::filesystem::path cache;      // the folder for modifiers once built; empty: nothing is kept

    // The folder for what sitters wear and what grows on them; empty: nothing is kept.
    std::filesystem::path kept() const { return cache.empty() ? cache : cache / "sitters"; }
};

}  // namespace understudy
