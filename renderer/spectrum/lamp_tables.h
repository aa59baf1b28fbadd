// Tables of lamps besides those of spectrum/cie_tables.h: the rest of the CIE's LED series, and the three lights that
// ISO 7589 names for photography.
#pragma once

#include <array>
#include <cstddef>

#include "spectrum/cie_tables.h"
#include "spectrum/spectrum.h"

namespace understudy {

// Typical LED lamps, CIE 15:2018 tables 12.1 and 12.2: a blue LED with a phosphor (B), that with a red LED beside it
// (BH), three LEDs (RGB), and a violet LED with phosphors (V).
extern const CieTable kLedB2;
extern const CieTable kLedB4;
extern const CieTable kLedBh1;
extern const CieTable kLedRgb1;
extern const CieTable kLedV1;
extern const CieTable kLedV2;

// ISO 7589:2002, illuminants for sensitometry: every 10 nm from 380 to 690 nm, where its tables end.
inline constexpr std::size_t kIso7589Count = 32;
using Iso7589Table = std::array<float, kIso7589Count>;
extern const Iso7589Table kIso7589Daylight;
extern const Iso7589Table kIso7589Tungsten;
extern const Iso7589Table kIso7589Photoflood;

// Linear between the table's rows and level beyond its last: what lies past 690 nm is under 0.1 % of the luminance.
Spectrum spectrum_of(const Iso7589Table& table);

}  // namespace understudy
