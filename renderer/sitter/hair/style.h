// What makes a hairstyle: how long hairs are, which way they are combed, how much they weigh, curl and hold together.
//
// Places are those of the usual head: in its own axes, from between the eyes, over its size.
#pragma once

#include "setup/hair_settings.h"
#include "sitter/hair/scalp.h"

namespace understudy {

struct HairMake {
    float lift = 0.006F;        // how far off the skin the uppermost hairs lie, metres
    float stand = 0.5F;         // of a hair's first direction, how much is away from the skin
    float bend = 0.02F;         // metres in which a hair turns to where it is combed
    float weight = 1.0F;        // of gravity, against the comb
    double locks = 40000.0;     // a square metre: hairs that hold together
    float hold = 0.5F;          // how near its hairs come, 0 … 1
    float curl = 0.0F;          // radius, metres
    float curl_length = 0.03F;  // of one turn
    float wave = 0.0010F;       // of a lock, metres aside
    float stray = 0.03F;        // share of hairs that go their own way
    int points = 16;            // of a hair's line
    int fine = 0;               // of a hair as it is drawn; 0: as many
};
HairMake make_of(HairStyle style);

// How much a place is over the face, out of which hair without a fringe is brushed: 1 there, 0 behind the temples.
float before_face(const HairLook& look, const Vec3& place, float own);
// How much of its way back to where it should lie a hair is brought at each of its points, 0 … 1.
float cling_of(const HairLook& look, const Vec3& place, bool fringe);

// Where a fringe grows. own: 0 … 1, each hair's for itself: behind it and beside it hairs of both kinds stand mixed,
// and no seam shows.
bool in_fringe(const Vec3& root, float own);

// Metres, before it is cut.
float length_of(const HairLook& look, const Root& root, const Vec3& usual_root, bool fringe);
// Where a hair that stands here is combed to, unit. own: 0 … 1, each hair's for itself.
Vec3 combed(const HairLook& look, const Vec3& place, const Vec3& usual_root, bool fringe, float own);
// Whether the scissors have been here: hair ends.
bool cut_off(const HairLook& look, const Vec3& place, bool fringe, float uneven);

}  // namespace understudy
