// The colour of an iris by its name.
#pragma once

#include "scatter/iris_colour.h"
#include "setup/table_reader.h"

namespace understudy {

// The table's `iris`; nothing when it is not there or wrong.
inline std::optional<IrisColour> read_iris(TableReader& table) {
    return table.choice<IrisColour>("iris", {{"dark-brown", IrisColour::kDarkBrown},
                                             {"brown", IrisColour::kBrown},
                                             {"hazel", IrisColour::kHazel},
                                             {"green", IrisColour::kGreen},
                                             {"blue", IrisColour::kBlue},
                                             {"grey", IrisColour::kGrey}});
}

}  // namespace understudy
