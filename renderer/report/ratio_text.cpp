#include "report/ratio_text.h"

#include <cmath>

#include <fmt/format.h>

#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

std::string in_stops(double ratio) { return plain_number(std::log2(ratio), 1) + " stops"; }

std::string other_cheek(const std::string& cheek) { return cheek == "camera-left" ? "camera-right" : "camera-left"; }

}  // namespace

std::string ratio_text(const MeterReport& report) {
    const std::string title = heading("Lighting ratio");
    if (!report.ratio) return title + "  None: it takes two cheeks, and some light besides the key.\n";
    const Ratio& ratio = *report.ratio;
    Table table({{"what"}, {"stops", Align::kRight}, {"ratio", Align::kRight}, {"measured at"}});
    table.add_row({"lit cheek over shadow cheek", plain_number(ratio.stops, 1) + " stops", to_one(ratio.key_to_fill),
                   fmt::format("cheek-{} over cheek-{}, flat on the skin, all lights on", ratio.lit_cheek,
                               other_cheek(ratio.lit_cheek))});
    table.add_row({"key over fill, K:F", in_stops(ratio.face_key_to_fill), to_one(ratio.face_key_to_fill),
                   "face, dome to camera, the sitter away; fill is all that is not the key"});
    table.add_row({"key and fill over fill, (K+F):F", in_stops(ratio.face_key_and_fill_to_fill),
                   to_one(ratio.face_key_and_fill_to_fill), "face, the same readings"});
    return title + table.text();
}

}  // namespace understudy
