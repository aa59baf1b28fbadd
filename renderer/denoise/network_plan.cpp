// At full size the picture goes through in strips: its first and last convolutions have 64 channels there, 130 MB a
// level at 640 × 800. Half as large, and smaller, all of it fits.
#include "denoise/network_plan.h"

#include <algorithm>

#include "denoise/network_steps.h"

namespace understudy {

namespace {

constexpr int kRows = 208;  // of a strip that are kept, about
// Beyond what is kept: the last three convolutions reach so far, and strips begin on even rows.
constexpr int kReach = 4;

// Every strip has as many rows, so that each step is made once; the last overlaps the one before.
struct Strips {
    explicit Strips(int picture_height) : height(picture_height) {
        const int count = (height + kRows - 1) / kRows;
        kept = ((height + count - 1) / count + 1) / 2 * 2;
        rows = std::min(height, kept + 2 * kReach);
    }
    int first_row(int from) const { return std::clamp(from - kReach, 0, height - rows); }
    int kept_rows(int from) const { return std::min(kept, height - from); }

    int height;
    int kept;
    int rows;
};

}  // namespace

struct NetworkPlan::Inside {
    Inside(const Convolutions& of, NetworkRoom& room, const Size& size) : strips(size.height), steps(room) {
        const int inputs = of.at("enc_conv0").in;
        input = steps.in_own_place(inputs, size.width, strips.rows);
        level1_strip = steps.halved(steps.convolved(steps.convolved(input, of.at("enc_conv0")), of.at("enc_conv1")));
        entered = steps.count();
        level1 = steps.in_own_place(level1_strip.channels, size.width / 2, size.height / 2);
        between = steps.in_own_place(of.at("dec_conv2b").out, size.width / 2, size.height / 2);
        go_through(of);
        gone_through = steps.count();
        between_strip = steps.in_own_place(between.channels, between.width, strips.rows / 2);
        const Level joined = steps.convolved(steps.doubled(between_strip), input, of.at("dec_conv1a"));
        output = steps.convolved(steps.convolved(joined, of.at("dec_conv1b")), of.at("dec_conv0"));
        steps.close();
    }

    // From half the size down, and up to it again.
    void go_through(const Convolutions& of) {
        const Level level2 = steps.halved(steps.convolved(level1, of.at("enc_conv2")));
        const Level level3 = steps.halved(steps.convolved(level2, of.at("enc_conv3")));
        const Level level4 = steps.halved(steps.convolved(level3, of.at("enc_conv4")));
        Level x = steps.convolved(steps.convolved(level4, of.at("enc_conv5a")), of.at("enc_conv5b"));
        x = steps.convolved(steps.convolved(steps.doubled(x), level3, of.at("dec_conv4a")), of.at("dec_conv4b"));
        x = steps.convolved(steps.convolved(steps.doubled(x), level2, of.at("dec_conv3a")), of.at("dec_conv3b"));
        x = steps.convolved(steps.doubled(x), level1, of.at("dec_conv2a"));
        steps.convolve(x, of.at("dec_conv2b"), between);
    }

    Strips strips;
    NetworkSteps steps;
    // A strip in, up to half its size.
    Level input, level1_strip;
    std::size_t entered = 0;
    // All of it, at half the size.
    Level level1, between;
    std::size_t gone_through = 0;
    // A strip out.
    Level between_strip, output;
};

NetworkPlan::NetworkPlan(const Convolutions& convolutions, NetworkRoom& room, const Size& size)
    : size_(size), inside_(std::make_unique<Inside>(convolutions, room, size)) {}

NetworkPlan::~NetworkPlan() = default;

std::vector<float> NetworkPlan::run(const std::vector<float>& planes) {
    Inside& plan = *inside_;
    NetworkSteps& steps = plan.steps;
    const Strips& strips = plan.strips;
    steps.enter_room();
    for (int from = 0; from < size_.height; from += strips.kept) {
        const int first = strips.first_row(from);
        steps.put(planes.data(), size_.height, first, plan.input);
        steps.run(0, plan.entered);
        steps.copy_rows(plan.level1_strip, (from - first) / 2, strips.kept_rows(from) / 2, plan.level1, from / 2);
    }
    steps.run(plan.entered, plan.gone_through);
    const std::size_t plane = static_cast<std::size_t>(size_.width) * static_cast<std::size_t>(size_.height);
    std::vector<float> result(static_cast<std::size_t>(plan.output.channels) * plane);
    for (int from = 0; from < size_.height; from += strips.kept) {
        const int first = strips.first_row(from);
        steps.put(planes.data(), size_.height, first, plan.input);
        steps.copy_rows(plan.between, first / 2, strips.rows / 2, plan.between_strip, 0);
        steps.run(plan.gone_through, steps.count());
        steps.get(plan.output, from - first, strips.kept_rows(from), result.data(), size_.height, from);
    }
    return result;
}

}  // namespace understudy
