#include "report/report_colour.h"

#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace understudy {
namespace {

std::vector<ColourReading> three_lights() {
    ColourReading key{"key", {}, 0.0, 0.3325, 0.3476, 5501.4, 0.0032};
    ColourReading rim{"rim", {"full-warm", "nd-0.3"}, 1.8486, 0.43, 0.41, 3136.6, -0.0004};
    ColourReading blue{"blue", {"blue"}, 4.2, 0.15, 0.06, std::nullopt, std::nullopt};
    ColourReading away{"away", {}, 0.0, std::nullopt, std::nullopt, std::nullopt, std::nullopt};
    return {key, rim, blue, away};
}

std::string line_of(const std::string& text, const std::string& start) {
    const auto at = text.find("\n  " + start);
    return at == std::string::npos ? "" : text.substr(at + 1, text.find('\n', at + 1) - at - 1);
}

TEST(ReportColour, PrintsGelsTheirLossAndTheColour) {
    const std::string text = colours_text(three_lights());
    const std::string key = line_of(text, "key");
    EXPECT_NE(key.find("5500 K"), std::string::npos) << text;
    EXPECT_NE(key.find("+0.003"), std::string::npos) << text;
    EXPECT_EQ(key.find("stops"), std::string::npos) << text;
    const std::string rim = line_of(text, "rim");
    EXPECT_NE(rim.find("full-warm + nd-0.3"), std::string::npos) << text;
    EXPECT_NE(rim.find("1.8 stops"), std::string::npos) << text;
    EXPECT_NE(rim.find("3140 K"), std::string::npos) << text;
    EXPECT_NE(rim.find("0.000"), std::string::npos) << text;
    EXPECT_EQ(rim.find("-0.000"), std::string::npos) << text;
    EXPECT_NE(line_of(text, "blue").find("coloured"), std::string::npos) << text;
    EXPECT_NE(line_of(text, "away").find("no light"), std::string::npos) << text;
}

TEST(ReportColour, JsonHasNullForWhatDoesNotExist) {
    const auto json = colours_json(three_lights());
    ASSERT_EQ(json.size(), 4U);
    EXPECT_EQ(json[1]["gels"], (std::vector<std::string>{"full-warm", "nd-0.3"}));
    EXPECT_DOUBLE_EQ(json[1]["gel_loss_stops"].get<double>(), 1.8486);
    EXPECT_DOUBLE_EQ(json[0]["colour_temperature_k"].get<double>(), 5501.4);
    EXPECT_DOUBLE_EQ(json[0]["duv"].get<double>(), 0.0032);
    EXPECT_TRUE(json[2]["colour_temperature_k"].is_null());
    EXPECT_TRUE(json[2]["duv"].is_null());
    EXPECT_DOUBLE_EQ(json[2]["x"].get<double>(), 0.15);
    EXPECT_TRUE(json[3]["x"].is_null());
    ColourReading spoilt;
    spoilt.kelvin = std::nan("");
    EXPECT_TRUE(colours_json({spoilt})[0]["colour_temperature_k"].is_null());
    EXPECT_EQ(colours_json({spoilt})[0]["gels"], nlohmann::ordered_json::array());
}

}  // namespace
}  // namespace understudy
