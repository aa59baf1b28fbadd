#include <algorithm>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

// One mistake each; at: the "line:column" of its problem; words: what the message has to hold.
struct BadInput {
    std::string text;
    std::string at;
    std::vector<std::string> words;
};

void PrintTo(const BadInput& bad, std::ostream* stream) { *stream << bad.text; }

// A table by itself needs a light behind it, so that its mistake is the only one.
BadInput table(const std::string& text, const std::string& at, std::vector<std::string> words) {
    return {text + "\n" + kLight, at, std::move(words)};
}

// What follows the modifier and the meter value of a light, from line 4 on.
BadInput light(const std::string& text, const std::string& at, std::vector<std::string> words) {
    return {kLight + text + "\n", at, std::move(words)};
}

BadInput modifier(const std::string& text, const std::string& at, std::vector<std::string> words) {
    return {"[[light]]\nmeter = 4\nmodifier = " + text + "\n", at, std::move(words)};
}

class BadInputs : public testing::TestWithParam<BadInput> {};

TEST_P(BadInputs, AreToldWithTheirPlaceAndWhatWasExpected) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(GetParam().text);
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const Problem& problem = setup.problems().front();
    EXPECT_EQ(problem.blame, Blame::kWrongInput);
    const std::string place = (scratch.folder() / "scene.toml").string() + ":" + GetParam().at + ": ";
    EXPECT_EQ(problem.text.find(place), 0U) << problem.text << "\nnot at " << GetParam().at;
    EXPECT_NE(problem.text.find("; expected "), std::string::npos) << problem.text;
    for (const std::string& word : GetParam().words) {
        EXPECT_NE(problem.text.find(word), std::string::npos) << problem.text << "\nhas no " << word;
    }
}

INSTANTIATE_TEST_SUITE_P(
    Document, BadInputs,
    testing::Values(BadInput{"", "1:1", {"no light", "[[light]]"}}, BadInput{"# nothing\n", "1:1", {"no light"}},
                    BadInput{"title = \"x\"\n", "1:1", {"no light"}}, BadInput{"light = []\n", "1:9", {"no light"}},
                    BadInput{"light = [1]\n", "1:10", {"light", "whole number 1", "[[light]]"}},
                    BadInput{"[light]\nmodifier = \"bulb\"\n", "1:1", {"light is a table", "[[light]]"}},
                    table("a = ", "1:5", {"not valid TOML"}), table("title = \"x", "1:11", {"not valid TOML"}),
                    table("title = 3", "1:9", {"title", "a string"}),
                    table("title = 1979-05-27", "1:9", {"title", "a date", "a string"}),
                    table("picture = 3", "1:11", {"picture", "a table [picture]"}),
                    table("[pictur]", "1:2", {"unknown key \"pictur\"", "did you mean \"picture\"?"}),
                    table("zebra = 1", "1:1", {"unknown key \"zebra\"", "title, picture"})));

INSTANTIATE_TEST_SUITE_P(
    Picture, BadInputs,
    testing::Values(table("[picture]\nwidht = 3", "2:1", {"\"widht\"", "[picture]", "did you mean \"width\"?"}),
                    table("[picture]\nwidth = 15", "2:9", {"width", "15", "16 to 16384"}),
                    table("[picture]\nheight = 16385", "2:10", {"height", "16385", "16 to 16384"}),
                    table("[picture]\nwidth = 640.0", "2:9", {"width", "whole number"}),
                    table("[picture]\nwidth = \"640\"", "2:9", {"width", "whole number"}),
                    table("[picture]\nwidth = -640", "2:9", {"width", "-640"}),
                    table("[picture]\nsamples = 0", "2:11", {"samples", "1 to 65536"}),
                    table("[picture]\nsamples = 65537", "2:11", {"samples", "1 to 65536"}),
                    table("[picture]\nseed = -1", "2:8", {"seed", "0 to 4294967295"}),
                    table("[picture]\ntreatment = \"color\"", "2:13", {"color", "did you mean \"colour\"?"}),
                    table("[picture]\ntreatment = true", "2:13", {"treatment", "true", "a string"}),
                    table("[picture]\nwhite_balance = \"flsh\"", "2:17", {"flsh", "did you mean \"flash\"?"}),
                    table("[picture]\nwhite_balance = 999", "2:17", {"999 K", "1000 K to 25000 K"}),
                    table("[picture]\nwhite_balance = \"5500 C\"", "2:17", {"\"C\"", "units K"}),
                    table("[picture]\nwhite_balance = [1]", "2:17", {"white_balance", "a list"})));

INSTANTIATE_TEST_SUITE_P(
    Camera, BadInputs,
    testing::Values(table("[camera]\nfocal_length = \"85 kg\"", "2:16",
                          {"focal_length", "\"kg\"", "m, cm, mm, in, ft"}),
                    table("[camera]\nfocal_length = 0", "2:16", {"focal_length", "5 mm to 2000 mm"}),
                    table("[camera]\nfocal_length = \"0.004 m\"", "2:16", {"4 mm", "5 mm to 2000 mm"}),
                    table("[camera]\nsensor = [36.0]", "2:10", {"sensor", "a list of 1", "a list of 2"}),
                    table("[camera]\nsensor = [36.0, -24]", "2:17", {"sensor", "-24 mm"}),
                    table("[camera]\nsensor = 36", "2:10", {"sensor", "a list of 2"}),
                    table("[camera]\ndistance = nan", "2:12", {"distance", "nan", "0.05 m to 100 m"}),
                    table("[camera]\ndistance = inf", "2:12", {"distance", "inf"}),
                    table("[camera]\ndistance = -1", "2:12", {"distance", "-1 m"}),
                    table("[camera]\ndistance = 0", "2:12", {"distance", "0 m"}),
                    table("[camera]\ndistance = 1e9", "2:12", {"distance", "1e+09 m"}),
                    table("[camera]\ndistance = \"2.2\"", "2:12", {"distance", "no unit"}),
                    table("[camera]\ndistance = \"4 ft 13 in\"", "2:12", {"less than 12 in"}),
                    table("[camera]\nangle = 181", "2:9", {"angle", "-180 degrees to 180 degrees"}),
                    table("[camera]\nangle = \"30 deg\"", "2:9", {"angle", "a number of degrees"}),
                    table("[camera]\nheight = \"eyes\"", "2:10", {"height", "eyes", "did you mean \"eye\"?"}),
                    table("[camera]\nheight = 5.0", "2:10", {"height 5 m", "2.2 m", "at least 3.75 m"}),
                    table("[camera]\naim = \"fase\"", "2:7", {"fase", "did you mean \"face\"?"}),
                    table("[camera]\naim = \"camera\"", "2:7", {"the camera itself"}),
                    table("[camera]\naim = [0, 1]", "2:7", {"a list of 2", "a list of 3"}),
                    table("[camera]\nfeather = 5", "2:1", {"unknown key \"feather\""}),
                    table("[camera]\naperture = \"f/4\"", "2:12", {"aperture", "f-number"}),
                    table("[camera]\naperture = 0.4", "2:12", {"aperture", "0.5 to 256"}),
                    table("[camera]\nshutter = \"1/0\"", "2:11", {"shutter", "1/200"}),
                    table("[camera]\nshutter = 0", "2:11", {"shutter", "0 s"}),
                    table("[camera]\niso = -200", "2:7", {"iso", "-200"}),
                    table("[camera]\nfocus = \"near-eyes\"", "2:9", {"did you mean \"near-eye\"?"}),
                    table("[camera]\nfocus = 0", "2:9", {"focus", "0 m"}),
                    table("[camera]\nfocus = \"backdrop\"\n[backdrop]\nsurface = \"none\"", "2:9", {"left out"}),
                    table("[camera]\nposition = [0, 1, 2]\ndistance = 2", "3:1", {"position and distance"})));

INSTANTIATE_TEST_SUITE_P(
    Sitter, BadInputs,
    testing::Values(table("[sitter]\nhead = \"aspin\"", "2:8", {"aspin", "did you mean \"aspen\"?", "ball, none"}),
                    table("[sitter]\nhead = \"missing.obj\"", "2:8", {"missing.obj", "no such file"}),
                    table("[sitter]\nhead = \"../x\"", "2:8", {"unknown name \"../x\""}),
                    table("[sitter]\nhead = 1", "2:8", {"head", "a string"}),
                    table("[sitter]\neye_height = \"1.25 J\"", "2:14", {"eye_height", "\"J\""}),
                    table("[sitter]\neye_height = 0", "2:14", {"eye_height", "0.3 m to 3 m"}),
                    table("[sitter]\nturn = 200", "2:8", {"turn", "200 degrees"}),
                    table("[sitter]\nchin = 61", "2:8", {"chin"}), table("[sitter]\nlean = -61", "2:8", {"lean"}),
                    table("[sitter]\nlean = nan", "2:8", {"lean", "nan"}),
                    table("[sitter]\ngaze = \"kex\"", "2:8", {"gaze", "kex", "camera, key", "did you mean \"key\"?"}),
                    table("[sitter]\ngaze = [1]", "2:8", {"gaze", "a list of 2"}),
                    table("[sitter]\ngaze = [0, 91]", "2:12", {"gaze", "91 degrees"}),
                    table("[sitter]\ngaze = [40, 40]", "2:8", {"gaze", "54 degrees", "at most 50"}),
                    table("[sitter]\nlids = 1.4", "2:8", {"lids", "0 to 1.3"}),
                    table("[sitter]\nlids = -0.1", "2:8", {"lids", "0 to 1.3"}),
                    table("[sitter]\nlids = \"shut\"", "2:8", {"lids"}),
                    table("[sitter]\nlids = nan", "2:8", {"lids", "nan"}),
                    table("[sitter]\niris = \"bleu\"", "2:8", {"iris", "did you mean \"blue\"?", "hazel"}),
                    table("[sitter]\niris = 3", "2:8", {"iris"}),
                    table("[sitter]\nhead = \"ball\"\niris = \"blue\"", "3:1", {"iris", "ball"}),
                    table("[sitter]\nhead = \"none\"\nlids = 1", "3:1", {"lids", "none"}),
                    table("[sitter]\nhead = \"own.obj\"\nlids = 1", "3:1", {"lids", ".obj"}),
                    table("[sitter]\nhead = \"own.obj\"\niris = \"blue\"", "3:1", {"iris", "left_eye"}),
                    table("[sitter]\ngaze = 3", "2:8", {"gaze", "name of a light"}),
                    table("[sitter]\nmelanin = 0.6", "2:11", {"melanin", "0 to 0.5"}),
                    table("[sitter]\nhair = \"bobb\"", "2:8", {"hair", "bobb", "did you mean \"bob\"?", "tied-back"}),
                    table("[sitter]\nhair = 3", "2:8", {"hair", "whole number 3", "style, fringe, colour, grey"}),
                    table("[sitter]\nhair = { style = 1 }", "2:18", {"style", "a string"}),
                    table("[sitter]\nhair = { fringe = \"yes\" }", "2:19", {"fringe", "true or false"}),
                    table("[sitter]\nhair = { colour = \"browm\" }", "2:19", {"browm", "did you mean \"brown\"?"}),
                    table("[sitter]\nhair = { colour = { eumelanin = -1 } }", "2:33", {"eumelanin", "0 to 20"}),
                    table("[sitter]\nhair = { colour = { melanin = 1 } }", "2:21", {"melanin", "eumelanin"}),
                    table("[sitter]\nhair = { grey = 1.5 }", "2:17", {"grey", "0 to 1"}),
                    table("[sitter]\nhair = { gray = 0.5 }", "2:10", {"gray", "did you mean \"grey\"?"}),
                    table("[sitter]\nbeard = \"stuble\"", "2:9", {"stuble", "did you mean \"stubble\"?"}),
                    table("[sitter]\nbrows = true", "2:9", {"brows", "a string"}),
                    table("[sitter]\nhead = \"ball\"\nhair = \"bob\"", "3:1", {"hair", "ball"}),
                    table("[sitter]\nhead = \"none\"\nbeard = \"full\"", "3:1", {"beard", "none"}),
                    table("[picture]\nstrands = \"thin\"", "2:11", {"strands", "widened, true"}),
                    table("[sitter]\nblood = -0.1", "2:9", {"blood", "0 to 0.2"}),
                    table("[sitter]\nhead = \"ball\"\nblood = 0.1", "3:1", {"blood", "ball"}),
                    table("[sitter]\nhead = \"none\"\nmelanin = 0.1", "3:1", {"melanin", "none"}),
                    table("[sitter]\nshine = 1.2", "2:9", {"shine", "0 to 1"}),
                    table("[sitter]\nhead = \"ball\"\nshine = 0.2", "3:1", {"shine", "ball"}),
                    table("[picture]\nskin = \"thin\"", "2:8", {"skin", "thin", "deep", "flat"}),
                    table("[sitter]\nscale = 0.01", "2:1", {"scale", "aspen", ".obj"}),
                    table("[sitter]\nup = \"y\"", "2:1", {"up", ".obj"}),
                    table("[sitter]\nhead = \"own.obj\"\nup = \"w\"", "3:6", {"\"w\"", "x, y, z"}),
                    table("[sitter]\nhead = \"own.obj\"\nup = \"z\"", "3:6", {"along the other"}),
                    table("[sitter]\nhead = \"own.obj\"\nfront = [0, 0, 0]", "3:9", {"no length"}),
                    table("[sitter]\nhead = \"own.obj\"\nscale = 0", "3:9", {"scale"}),
                    table("[sitter]\nhead = \"own.obj\"\nleft_eye = [3, 0, 0]", "3:12", {"stands alone"}),
                    table("[sitter]\nhead = \"own.obj\"\nleft_eye = [3, 0, 0]\nright_eye = [3, 0, 0]", "4:13",
                          {"where left_eye"})));

INSTANTIATE_TEST_SUITE_P(
    Light, BadInputs,
    testing::Values(
        BadInput{"[[light]]\nmeter = 4\n", "1:1", {"no modifier", "such as bulb", "shape"}},
        BadInput{"[[light]]\nmodifier = \"strip-30x12\"\nmeter = 4\n", "2:12", {"did you mean \"strip-30x120\"?"}},
        BadInput{"[[light]]\nmodifier = 4\nmeter = 4\n", "2:12", {"modifier", "whole number 4"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\n", "1:1", {"no power"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nfrom_key = -1\n", "3:1", {"from_key", "the key itself"}},
        light("energy = 120", "4:1", {"power twice: meter, energy", "exactly one"}),
        light("lumens = 2000", "4:1", {"power twice: meter, lumens"}),
        light("[[light]]\nmodifier = \"bulb\"\nmeter = 4\nfrom_key = -1", "7:1", {"power twice: meter, from_key"}),
        BadInput{"[[light]]\nmodifier = \"bulb\"\nmeter = \"f/4\"\n", "3:9", {"meter", "f-number"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nmeter = 0\n", "3:9", {"meter", "0.1 to 512"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nenergy = \"120 lm\"\n", "3:10", {"\"lm\"", "J, Ws"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nenergy = -5\n", "3:10", {"energy", "-5 J"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nlumens = \"20 W\"\n", "3:10", {"\"W\"", "units lm"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nlumens = inf\n", "3:10", {"lumens", "inf"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nsource = \"flash\"\nlumens = 9\n", "4:1", {"flash with lumens"}},
        BadInput{"[[light]]\nmodifier = \"bulb\"\nsource = \"continuous\"\nenergy = 9\n", "4:1", {"with energy"}},
        light("[[light]]\nmodifier = \"bulb\"\nfrom_key = 21", "6:12",
              {"from_key", "21 stops", "-20 stops to 20 stops"}),
        light("source = \"flsh\"", "4:10", {"did you mean \"flash\"?"}),
        light("name = \"ambient\"", "4:8", {"ambient", "another name"}),
        light("name = \"camera\"", "4:8", {"camera", "another name"}), light("name = \"\"", "4:8", {"empty"}),
        light("name = 3", "4:8", {"name", "a string"}),
        light("[[light]]\nmodifier = \"bulb\"\nname = \"key\"", "6:8", {"second light is named \"key\""}),
        light("[[light]]\nmodifier = \"bulb\"\nname = \"light-3\"\n[[light]]\nmodifier = \"bulb\"", "7:1",
              {"second light is named \"light-3\""}),
        light("colour_temperature = 900", "4:22", {"900 K", "1000 K to 25000 K"}),
        light("colour_temperature = 25001", "4:22", {"25001 K"}),
        light("color_temperature = 5600", "4:1", {"did you mean \"colour_temperature\"?"}),
        light("spectrum = \"FL99\"", "4:12", {"unknown name \"FL99\"", "FL11"}),
        light("spectrum = \"A\"\ncolour_temperature = 3200", "4:1", {"both colour_temperature and spectrum"}),
        light("position = [1, 2, 1]\nangle = 30", "5:1", {"position and angle"}),
        light("position = [1, 2, 1]\nheight = 2", "5:1", {"position and height"}),
        light("position = [1, 2, 1]\nelevation = 2", "5:1", {"position and elevation"}),
        light("position = [1, 2, 1]\ndistance = 2", "5:1", {"position and distance"}),
        light("position = [1, 2]", "4:12", {"position", "a list of 3"}),
        light("position = [1, nan, 1]", "4:16", {"position", "nan"}),
        light("position = [1, 2, 101]", "4:19", {"position", "101 m"}),
        light("height = 1.7\nelevation = 30", "5:1", {"both height and elevation"}),
        light("height = 3.0\ndistance = 1.0", "4:10", {"height 3 m", "1 m away", "at least 1.75 m"}),
        light("distance = \"40 cm\"", "4:12", {"height 1.7 m", "at least 0.45 m"}),
        light("height = -0.1", "4:10", {"height", "-0.1 m", "0 m to 20 m"}),
        light("elevation = 91", "4:13", {"elevation", "91 degrees"}),
        light("feather = 181", "4:11", {"feather", "181 degrees"}), light("roll = \"x\"", "4:8", {"roll", "degrees"}),
        light("aim = 3", "4:7", {"aim", "\"face\""}),
        light("aim = \"backdrop\"\n[backdrop]\nsurface = \"none\"", "4:7", {"aim", "left out"})));

INSTANTIATE_TEST_SUITE_P(
    Modifier, BadInputs,
    testing::Values(modifier("{ width = 1 }", "3:12", {"no shape"}),
                    modifier("{ shape = \"disk\", diameter = 1 }", "3:22", {"disk", "did you mean \"disc\"?"}),
                    modifier("{ shape = \"disc\" }", "3:12", {"disc", "no diameter"}),
                    modifier("{ shape = \"disc\", diameter = 1, width = 1 }", "3:44", {"unknown key \"width\""}),
                    modifier("{ shape = \"disc\", diameter = 0 }", "3:41", {"diameter", "0 m", "0.005 m to 10 m"}),
                    modifier("{ shape = \"rectangle\", width = 1 }", "3:12", {"no height"}),
                    modifier("{ shape = \"rectangle\", width = 1, height = 11 }", "3:55", {"height", "11 m"}),
                    modifier("{ shape = \"ring\", diameter = 0.5, inner = 0.5 }", "3:54", {"inner", "less than"}),
                    modifier("{ shape = \"polygon\", sides = 2, diameter = 1 }", "3:41", {"sides", "3 to 64"}),
                    modifier("{ shape = \"polygon\", sides = 65, diameter = 1 }", "3:41", {"sides", "3 to 64"}),
                    modifier("{ shape = \"polygon\", diameter = 1 }", "3:12", {"no sides"}),
                    modifier("{ shape = \"dome\", diameter = 1, depth = 0.51 }", "3:52",
                             {"depth", "half the diameter"}),
                    modifier("{ shape = \"sphere\", diameter = 1, efficiency = 1.1 }", "3:59", {"efficiency", "1.1"}),
                    modifier("{ shape = \"sphere\", diameter = 1, efficiency = 0 }", "3:59", {"efficiency"})));

INSTANTIATE_TEST_SUITE_P(
    LitShapes, BadInputs,
    testing::Values(
        modifier("{ shape = \"umbrella\", diameter = 1 }", "3:12", {"no cloth", "white"}),
        modifier("{ shape = \"umbrella\", cloth = \"wite\", diameter = 1 }", "3:42", {"did you mean \"white\"?"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\" }", "3:12", {"no diameter"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\", diameter = 1, depth = 0.6 }", "3:73",
                 {"depth", "half the diameter"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\", diameter = 1, head = 0.1 }", "3:72",
                 {"head", "outside the canopy"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\", diameter = 1, head = 3 }", "3:72", {"head", "1.25 m"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\", diameter = 1, beam = 170 }", "3:72", {"beam", "170"}),
        modifier("{ shape = \"umbrella\", cloth = \"white\", diameter = 1, efficiency = 0.5 }", "3:65",
                 {"efficiency", "head_efficiency"}),
        modifier("{ shape = \"frame\", width = 2, height = 2 }", "3:12", {"no head"}),
        modifier("{ shape = \"frame\", width = 2, height = 2, head = 1, transmission = 1 }", "3:79", {"transmission"}),
        modifier("{ shape = \"window\", width = 1 }", "3:12", {"no height"}),
        modifier("{ shape = \"window\", width = 1, height = 1, columns = 0 }", "3:65", {"columns", "1 to 20"}),
        modifier("{ shape = \"window\", width = 1, height = 1, columns = 4, bar = 0.2 }", "3:74", {"bar", "no glass"}),
        modifier("{ shape = \"window\", width = 1, height = 1, curtain = 1.5 }", "3:65", {"curtain"}),
        modifier("{ shape = \"window\", width = 1, height = 1 }\nsource = \"flash\"", "4:1",
                 {"window", "continuous"})));

INSTANTIATE_TEST_SUITE_P(
    Others, BadInputs,
    testing::Values(table("[[panel]]\nsurface = \"wite\"", "2:11", {"wite", "did you mean \"white\"?"}),
                    table("[[panel]]\nsurface = \"none\"", "2:11", {"unknown name \"none\""}),
                    table("[[panel]]\nsurface = 0.99", "2:11", {"surface", "0 to 0.98"}),
                    table("[[panel]]\nsize = [1, 2, 3]", "2:8", {"size", "a list of 2"}),
                    table("[[panel]]\nsize = [\"1 m\", \"0 m\"]", "2:16", {"size", "0 m"}),
                    table("[[panel]]\nname = \"a\"\n[[panel]]\nname = \"a\"", "4:8", {"second panel is named \"a\""}),
                    table("[[panel]]\nname = \"\"", "2:8", {"empty"}),
                    table("[[panel]]\nheight = 2.5", "2:10", {"height 2.5 m", "at least 1.25 m"}),
                    table("[[panel]]\nmeter = 4", "2:1", {"unknown key \"meter\""}),
                    table("[panel]\nname = \"a\"", "1:1", {"panel is a table", "[[panel]]"}),
                    table("[backdrop]\nsurface = \"gray\"", "2:11", {"gray", "did you mean \"grey\"?"}),
                    table("[backdrop]\ndistance = 0", "2:12", {"distance", "0 m"}),
                    table("[backdrop]\nwidth = \"2.72 lx\"", "2:9", {"\"lx\""}),
                    table("[backdrop]\nheight = 0", "2:10", {"height"}),
                    table("[backdrop]\nfloor = 1", "2:9", {"floor", "true or false"}),
                    table("[room]\nambient = \"200 lm\"", "2:11", {"\"lm\"", "units lx"}),
                    table("[room]\nambient = -1", "2:11", {"ambient", "-1 lx"}),
                    table("[room]\nambient_temperature = 30000", "2:23", {"30000 K"}),
                    table("[room]\nsize = [4, 6]", "2:8", {"size", "a list of 3"}),
                    table("[room]\nsize = [4, 6, 0]", "2:15", {"size", "0 m"}),
                    table("[room]\nwalls = 0.8", "2:1", {"without a size"}),
                    table("[room]\nsize = [4, 6, 3]\nwalls = 1", "3:9", {"walls", "0 to 0.98"})));

}  // namespace
}  // namespace understudy
