#include "denoise/network.h"

#include <algorithm>
#include <array>
#include <list>
#include <mutex>

#include <fmt/format.h>

#include "denoise/network_plan.h"
#include "denoise/network_steps.h"

namespace understudy {

struct Network::Inside {
    Convolutions convolutions;
    int inputs = 0;
    std::mutex running;
    NetworkRoom room;
    std::list<NetworkPlan> plans;  // for the sizes that came last, the newest first
};

namespace {

constexpr std::uint32_t kKernel = 3;
// A picture's and its coarse look's, before and after a change of size.
constexpr std::size_t kPlans = 4;

// In the order that light takes through them; how wide each takes its input is checked against what comes before.
constexpr std::array<const char*, 16> kConvolutions{
    "enc_conv0",  "enc_conv1",  "enc_conv2",  "enc_conv3",  "enc_conv4",  "enc_conv5a", "enc_conv5b", "dec_conv4a",
    "dec_conv4b", "dec_conv3a", "dec_conv3b", "dec_conv2a", "dec_conv2b", "dec_conv1a", "dec_conv1b", "dec_conv0"};

}  // namespace

Expected<Network> Network::of(const Weights& weights, const std::string& where) {
    auto inside = std::make_unique<Inside>();
    const auto wrong = [&](const std::string& what) {
        return Problem{Blame::kFailed, fmt::format("{}: {}; expected the weights of a denoising network of sixteen "
                                                   "convolutions, three channels out",
                                                   where, what)};
    };
    for (const std::string name : kConvolutions) {
        const auto kernel = weights.find(name + ".weight");
        const auto bias = weights.find(name + ".bias");
        if (kernel == weights.end() || bias == weights.end()) return wrong("has no " + name);
        const auto& sizes = kernel->second.sizes;
        const bool fits = kernel->second.layout == "oihw" && sizes[2] == kKernel && sizes[3] == kKernel &&
                          bias->second.sizes == std::vector<std::uint32_t>{sizes[0]};
        if (!fits) return wrong(name + " has another shape");
        inside->convolutions[name] = {static_cast<int>(sizes[0]), static_cast<int>(sizes[1]), kernel->second.values,
                                      bias->second.values};
    }
    const auto& convolutions = inside->convolutions;
    inside->inputs = convolutions.at("enc_conv0").in;
    const auto follows = [&](const char* name, int in) { return convolutions.at(name).in == in; };
    const auto out = [&](const char* name) { return convolutions.at(name).out; };
    const bool joined =
        follows("enc_conv1", out("enc_conv0")) && follows("enc_conv2", out("enc_conv1")) &&
        follows("enc_conv3", out("enc_conv2")) && follows("enc_conv4", out("enc_conv3")) &&
        follows("enc_conv5a", out("enc_conv4")) && follows("enc_conv5b", out("enc_conv5a")) &&
        follows("dec_conv4a", out("enc_conv5b") + out("enc_conv3")) && follows("dec_conv4b", out("dec_conv4a")) &&
        follows("dec_conv3a", out("dec_conv4b") + out("enc_conv2")) && follows("dec_conv3b", out("dec_conv3a")) &&
        follows("dec_conv2a", out("dec_conv3b") + out("enc_conv1")) && follows("dec_conv2b", out("dec_conv2a")) &&
        follows("dec_conv1a", out("dec_conv2b") + inside->inputs) && follows("dec_conv1b", out("dec_conv1a")) &&
        follows("dec_conv0", out("dec_conv1b"));
    if (!joined || out("dec_conv0") != 3) return wrong("does not fit together");
    return Network(std::move(inside));
}

Network::Network(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Network::~Network() = default;
Network::Network(Network&&) noexcept = default;
Network& Network::operator=(Network&&) noexcept = default;

int Network::inputs() const { return inside_->inputs; }

std::vector<float> Network::run(const std::vector<float>& planes, int width, int height) const {
    const NetworkPlan::Size size{width, height};
    const std::lock_guard<std::mutex> lock(inside_->running);
    auto& plans = inside_->plans;
    const auto known = std::find_if(plans.begin(), plans.end(), [&](const auto& plan) { return plan.size() == size; });
    if (known != plans.end()) {
        plans.splice(plans.begin(), plans, known);
    } else {
        plans.emplace_front(inside_->convolutions, inside_->room, size);
        if (plans.size() > kPlans) plans.pop_back();
    }
    return plans.front().run(planes);
}

}  // namespace understudy
