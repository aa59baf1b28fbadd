#include "meter/own_reading.h"

#include "meter/integrate.h"
#include "meter/light_colours.h"

namespace understudy {

double own_reading_per_lumen(const Studio& studio, const Stage& nobody, std::size_t light, const Spectrum& spectrum) {
    const Double3 face = studio.points.face;
    Gathering place;
    place.position = Vec3(face);
    place.normal = Vec3(glm::normalize(studio.lights[light].centre - face));
    std::vector<Bands> weights(nobody.layer_count(), Bands{});
    weights[light] = luminous_weights(spectrum);
    return gather_light(nobody, place, weights, {0.001, 0.0}).layers[light].mean;
}

double axis_reading_per_lumen(const ModifierSettings& modifier, const BuiltModifier& built, double distance_m) {
    Studio empty;
    LightSettings light;
    light.modifier = modifier;
    empty.setup.lights = {light};
    empty.modifiers = {built};
    PlacedFront front;
    front.centre = {0.0, 0.0, distance_m};
    front.axis = {0.0, 0.0, -1.0};
    front.right = {-1.0, 0.0, 0.0};
    empty.lights = {front};
    return own_reading_per_lumen(empty, Stage(empty, Stage::With::kNobody), 0, light_spectrum(light.colour));
}

}  // namespace understudy
