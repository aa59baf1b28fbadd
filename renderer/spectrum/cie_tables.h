// The CIE's tables at 5 nm from 380 to 780 nm, as in CIE 15:2004 and CIE 15:2018.
#pragma once

#include <array>

#include "spectrum/spectrum.h"

namespace understudy {

using CieTable = std::array<float, Spectrum::kCount>;

// Colour matching functions of the CIE 1931 standard observer (2°), CIE 15:2004 table T.4.
extern const CieTable kCie1931X;
extern const CieTable kCie1931Y;
extern const CieTable kCie1931Z;

// Mean daylight and its first two components, CIE 15:2004 table T.2.
extern const CieTable kDaylightS0;
extern const CieTable kDaylightS1;
extern const CieTable kDaylightS2;

// Fluorescent lamps, CIE 15:2004 table T.6.
extern const CieTable kFluorescentFl2;
extern const CieTable kFluorescentFl7;
extern const CieTable kFluorescentFl11;

// Typical LED lamps (phosphor-converted blue), CIE 15:2018.
extern const CieTable kLedB1;
extern const CieTable kLedB3;
extern const CieTable kLedB5;

}  // namespace understudy
