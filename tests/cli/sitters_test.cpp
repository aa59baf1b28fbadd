// The library's sitters, listed and drawn.
#include <algorithm>

#include "program.h"

namespace understudy {
namespace {

TEST(SittersCommand, ListsTwelvePeopleInWords) {
    const Workplace place;
    const Outcome list = place.run({"sitters"});
    EXPECT_EQ(list.status, 0) << list.err;
    EXPECT_EQ(std::count(list.out.begin(), list.out.end(), '\n'), 12);
    EXPECT_NE(list.out.find("birch     a man of 70"), std::string::npos) << list.out;
}

TEST(SittersCommand, SheetsAreDisplayPictures) {
    const Workplace place;
    const Outcome exr = place.run({"sitters", "--sheet", "sheet.exr"});
    EXPECT_EQ(exr.status, 2);
    EXPECT_NE(exr.err.find(".png or .jpg"), std::string::npos) << exr.err;
    const Outcome nowhere = place.run({"sitters", "--sheet", "no/such/sheet.png"});
    EXPECT_NE(nowhere.status, 0);
}

}  // namespace
}  // namespace understudy
