// What kind of source a light is and how strong: exactly one power key.
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// Energy and a head are a flash's, lumens and lux a lamp's, so a source that is not said follows from them. A window is
// there all through the exposure.
SourceKind read_source(TableReader& table, bool window);

// number: 1 for the key, which cannot be so many stops from itself. head: the light's, null when it names none.
Power read_power(TableReader& table, int number, const FlashHead* head);

}  // namespace understudy
