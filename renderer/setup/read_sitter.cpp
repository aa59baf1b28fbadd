#include "setup/read_sitter.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <system_error>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/read_face.h"
#include "setup/read_hair.h"
#include "setup/read_iris.h"
#include "setup/read_wardrobe.h"

namespace understudy {
namespace {

constexpr Range kEyeHeight{0.3, 3.0};
// A neck turns some 80° to either side (American Academy of Orthopaedic Surgeons, "Joint Motion", 1965; from memory);
// the spine below gives the rest.
constexpr double kMostNeckTurn = 90.0;
constexpr std::array<std::string_view, 5> kOwnMeshKeys{"scale", "up", "front", "left_eye", "right_eye"};

bool names_a_mesh(const std::string& head) {
    std::string ending = std::filesystem::path(head).extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return ending == ".obj";
}

// "+y", "z", "-x", or a vector.
std::optional<Double3> read_axis(TableReader& table, std::string_view key) {
    if (table.is_list(key)) {
        const std::optional<Double3> vector = table.point(key, kPlainNumber, {-1e6, 1e6});
        if (vector && glm::length(*vector) < 1e-6) {
            table.wrong(key, "has no length", "a direction in the mesh's axes");
            return std::nullopt;
        }
        return vector ? std::optional(glm::normalize(*vector)) : std::nullopt;
    }
    return table.choice<Double3>(key, {{"x", {1.0, 0.0, 0.0}},
                                       {"y", {0.0, 1.0, 0.0}},
                                       {"z", {0.0, 0.0, 1.0}},
                                       {"-x", {-1.0, 0.0, 0.0}},
                                       {"-y", {0.0, -1.0, 0.0}},
                                       {"-z", {0.0, 0.0, -1.0}}});
}

void check_mesh_axes(TableReader& table, const OwnMesh& mesh) {
    if (glm::length(glm::cross(mesh.up, mesh.front)) < 1e-3) {
        const std::string_view key = table.has("front") ? "front" : "up";
        table.wrong(key, "runs along the other of up and front", "two directions that differ");
    }
    if (mesh.left_eye.has_value() != mesh.right_eye.has_value()) {
        const std::string_view key = mesh.left_eye ? "left_eye" : "right_eye";
        table.wrong(key, "stands alone", "left_eye and right_eye, or neither");
    } else if (mesh.left_eye && glm::length(*mesh.left_eye - *mesh.right_eye) < 1e-9) {
        table.wrong("right_eye", "is where left_eye is", "two places");
    }
}

OwnMesh read_own_mesh(TableReader& table, const std::string& head, const std::filesystem::path& scene_file) {
    OwnMesh mesh;
    mesh.path = scene_file.parent_path() / head;  // an absolute head stays as it is
    std::error_code error;
    if (!std::filesystem::is_regular_file(mesh.path, error)) {
        table.wrong("head", fmt::format("is \"{}\", and there is no such file", mesh.path.string()),
                    "a path to an .obj file, relative to the scene file");
    }
    mesh.scale_m = table.quantity("scale", kLength, {1e-6, 1e3}).value_or(mesh.scale_m);
    mesh.up = read_axis(table, "up").value_or(mesh.up);
    mesh.front = read_axis(table, "front").value_or(mesh.front);
    mesh.left_eye = table.point("left_eye", kPlainNumber, {-1e6, 1e6});
    mesh.right_eye = table.point("right_eye", kPlainNumber, {-1e6, 1e6});
    check_mesh_axes(table, mesh);
    return mesh;
}

void refuse_own_mesh_keys(TableReader& table, const std::string& head) {
    for (const std::string_view key : kOwnMeshKeys) {
        if (table.find(key) != nullptr) {
            table.log().add(table.key_place_of(key),
                            fmt::format("{} has {}, but the head is \"{}\"", table.name(), key, head),
                            fmt::format("{} only with a path to an .obj", key));
        }
    }
}

HeadChoice read_head(TableReader& table, const Library& library, const std::filesystem::path& scene_file) {
    const bool wrong_type = table.has("head") && !table.is_text("head");
    const std::string head = table.text("head").value_or("aspen");
    if (names_a_mesh(head)) {
        return read_own_mesh(table, head, scene_file);
    }
    refuse_own_mesh_keys(table, head);
    if (head == "none" || wrong_type) {
        return NobodyThere{};
    }
    if (head == "ball") {
        return MattBall{};
    }
    std::vector<std::string> valid = toml_names_in(library.heads);
    if (std::find(valid.begin(), valid.end(), head) != valid.end()) {
        return LibraryHead{head, library.heads / (head + ".toml")};
    }
    valid.insert(valid.end(), {"ball", "none"});
    table.unknown_name("head", head, valid);
    return NobodyThere{};
}

void refuse(TableReader& table, std::initializer_list<std::string_view> keys, const std::string& head,
            std::string_view expected) {
    for (const std::string_view key : keys) {
        if (!table.has(key)) continue;
        table.log().add(table.key_place_of(key),
                        fmt::format("{} has {}, but the head is \"{}\"", table.name(), key, head), expected);
    }
}

// Skin and eyes are what a head has, and a face that can be changed is what one of the library has.
void refuse_what_is_not_there(TableReader& table, const HeadChoice& choice) {
    const std::string head = table.is_text("head") ? table.text("head").value_or("") : "";
    if (head == "ball" || head == "none")
        refuse(table, {"melanin", "blood", "shine", "lids", "iris"}, head, "skin and eyes only on a head");
    if (!head.empty() && !std::holds_alternative<LibraryHead>(choice)) {
        refuse(table, {"face", "expression", "body", "shoulders", "clothes", "glasses", "hat"}, head,
               "face, expression, body, shoulders and what is worn only with a head of the library");
        refuse(table, {"hair", "beard", "brows"}, head, "hair only on a head of the library");
    }
}

// The lids of a mesh of one's own stay as they were modelled, and eyes are put into it only where it is told where.
void refuse_eyes(TableReader& table, const OwnMesh& mesh) {
    if (table.has("lids")) {
        table.log().add(table.key_place_of("lids"), fmt::format("{} has lids, but the head is an .obj", table.name()),
                        "lids only on a head of the library");
    }
    if (table.has("iris") && !mesh.left_eye) {
        table.log().add(table.key_place_of("iris"),
                        fmt::format("{} has an iris, but no left_eye and right_eye", table.name()),
                        "the eyes' places in the .obj");
    }
}

Gaze read_gaze(TableReader& table) {
    if (table.is_list("gaze")) {
        const auto angles = table.quantities("gaze", 2, kAngle, {-90.0, 90.0});
        if (!angles) {
            return GazeAngles{};
        }
        const GazeAngles gaze{(*angles)[0], (*angles)[1]};
        const double turned = degrees(std::acos(std::clamp(gaze_direction(gaze).z, -1.0, 1.0)));
        if (turned > kFarthestGazeDeg) {
            table.wrong("gaze", fmt::format("turns the eyes {:.0f} degrees from straight ahead", turned),
                        fmt::format("at most {:.0f}: eyes go about 45 aside, 28 up and 47 down (Lee and others 2019)",
                                    kFarthestGazeDeg));
        }
        return gaze;
    }
    const Value* value = table.find("gaze");
    if (value == nullptr) {
        return GazeAtCamera{};
    }
    if (!table.is_text("gaze")) {
        table.wrong("gaze", "is " + kind_of(*value), "\"camera\", the name of a light, or [across, up] in degrees");
        return GazeAtCamera{};
    }
    const std::string name = *table.text("gaze");
    return name == "camera" ? Gaze(GazeAtCamera{}) : Gaze(GazeAtLight{name});
}

std::optional<double> read_eye_height(TableReader& table) {
    const auto usual = table.choice<double>("posture", {{"seated", kSeatedEyes}, {"standing", kStandingEyes}});
    const auto height = table.quantity("eye_height", kLength, kEyeHeight);
    return table.has("eye_height") ? height : std::optional(usual.value_or(kSeatedEyes));
}

void read_pose(TableReader& table, SitterSettings& sitter) {
    if (const auto step = table.quantities("step", 2, kLength, {-2.0, 2.0}))
        sitter.step_m = {(*step)[0], 0.0, (*step)[1]};
    const auto body = table.quantity("body", kAngle, {-180.0, 180.0});
    const auto turn = table.quantity("turn", kAngle, {-180.0, 180.0});
    sitter.body_deg = body.value_or(0.0);
    sitter.turn_deg = turn.value_or(0.0);
    sitter.shoulders_deg = table.quantity("shoulders", kAngle, {-20.0, 20.0}).value_or(0.0);
    sitter.chin_deg = table.quantity("chin", kAngle, {-60.0, 60.0}).value_or(0.0);
    sitter.lean_deg = table.quantity("lean", kAngle, {-60.0, 60.0}).value_or(0.0);
    const double neck = std::abs(sitter.turn_deg - sitter.body_deg);
    if (std::holds_alternative<LibraryHead>(sitter.head) && neck > kMostNeckTurn) {
        table.wrong(turn ? "turn" : "body", fmt::format("turns the head by {:g} degrees against the body", neck),
                    fmt::format("at most {:g} between turn and body", kMostNeckTurn));
    }
}

}  // namespace

std::optional<double> peek_eye_height(const TableReader& table) {
    ProblemLog unheard;
    TableReader copy(table.value(), table.name(), unheard);
    return read_eye_height(copy);
}

SitterSettings read_sitter(TableReader table, const Library& library, const std::filesystem::path& scene_file) {
    SitterSettings sitter;
    sitter.head = read_head(table, library, scene_file);
    sitter.head_said_at = table.place_of("head");
    sitter.eye_height_m = read_eye_height(table).value_or(sitter.eye_height_m);
    if (const auto face = table.table("face")) sitter.face = read_face(*face);
    if (const auto expression = table.table("expression")) sitter.expression = read_expression(*expression);
    read_pose(table, sitter);
    sitter.gaze = read_gaze(table);
    sitter.skin.melanin = table.quantity("melanin", kPlainNumber, {0.0, 0.5});
    sitter.skin.blood = table.quantity("blood", kPlainNumber, {0.0, 0.2});
    sitter.skin.shine = table.quantity("shine", kPlainNumber, {0.0, 1.0}).value_or(sitter.skin.shine);
    sitter.hair = read_hair(table);
    sitter.pupil_m = table.quantity("pupil", kLength, {0.001, 0.010});
    sitter.clothes = read_clothes(table);
    sitter.glasses = read_glasses(table);
    sitter.hat = read_hat(table);
    sitter.lids = table.quantity("lids", kPlainNumber, {0.0, kWidestLids});
    sitter.iris = read_iris(table);
    refuse_what_is_not_there(table, sitter.head);
    if (const auto* mesh = std::get_if<OwnMesh>(&sitter.head)) {
        refuse_eyes(table, *mesh);
    }
    table.report_unknown_keys();
    return sitter;
}

}  // namespace understudy
