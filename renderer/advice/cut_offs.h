// Where each eye is lost: how high the key may go, how far the head may turn.
#pragma once

#include "advice/fix.h"

namespace understudy {

// The key goes up and down over its place on the floor. To two centimetres.
HeightCutOff height_cut_off(TrialRoom& room, const std::string& face);

// The eyes keep to what they look at. To the degree.
TurnCutOff turn_cut_off(TrialRoom& room);

}  // namespace understudy
