#include "denoise/network.h"

#include <algorithm>
#include <array>
#include <map>
#include <unordered_map>

#include <fmt/format.h>
#include <omp.h>
#include <tbb/global_control.h>
#include <dnnl.hpp>

namespace understudy {

namespace {

using dnnl::memory;
using Tag = memory::format_tag;

constexpr memory::dim kKernel = 3;

memory::desc described(const memory::dims& sizes, Tag tag) { return {sizes, memory::data_type::f32, tag}; }

// One convolution's weights, as the file has them.
struct Kernels {
    memory::dim out = 0;
    memory::dim in = 0;
    memory weights;
    memory biases;
};

}  // namespace

struct Network::Inside {
    dnnl::engine engine{dnnl::engine::kind::cpu, 0};
    dnnl::stream stream{engine};
    std::map<std::string, Kernels> kernels;
    int inputs = 0;

    // With its rectifier. Whatever layout is quickest here; the next step takes it as it comes.
    memory convolved(const memory& source, const std::string& name) {
        const Kernels& kernel = kernels.at(name);
        memory::dims sizes = source.get_desc().dims();
        const auto source_any = described(sizes, Tag::any);
        sizes[1] = kernel.out;
        dnnl::post_ops then;
        then.append_eltwise(1.0F, dnnl::algorithm::eltwise_relu, 0.0F, 0.0F);
        dnnl::primitive_attr attributes;
        attributes.set_post_ops(then);
        const dnnl::convolution_forward::desc what(
            dnnl::prop_kind::forward_inference, dnnl::algorithm::convolution_auto, source_any,
            described(kernel.weights.get_desc().dims(), Tag::any), described({kernel.out}, Tag::x),
            described(sizes, Tag::any), {1, 1}, {1, 1}, {1, 1});
        const dnnl::convolution_forward::primitive_desc how(what, attributes, engine);
        memory result(how.dst_desc(), engine);
        run(dnnl::convolution_forward(how), {{DNNL_ARG_SRC, laid_out(source, how.src_desc())},
                                             {DNNL_ARG_WEIGHTS, laid_out(kernel.weights, how.weights_desc())},
                                             {DNNL_ARG_BIAS, kernel.biases},
                                             {DNNL_ARG_DST, result}});
        return result;
    }

    // Each 2 × 2 pixels' largest.
    memory halved(const memory& source) {
        memory::dims sizes = source.get_desc().dims();
        for (const std::size_t side : {2U, 3U}) sizes[side] /= 2;
        const dnnl::pooling_forward::desc what(dnnl::prop_kind::forward_inference, dnnl::algorithm::pooling_max,
                                               source.get_desc(), described(sizes, Tag::any), {2, 2}, {2, 2}, {0, 0},
                                               {0, 0});
        const dnnl::pooling_forward::primitive_desc how(what, engine);
        memory result(how.dst_desc(), engine);
        run(dnnl::pooling_forward(how), {{DNNL_ARG_SRC, source}, {DNNL_ARG_DST, result}});
        return result;
    }

    // Twice as large, each pixel four times, and the level's like behind it.
    memory doubled_beside(const memory& source, const memory& like) {
        memory::dims sizes = source.get_desc().dims();
        for (const std::size_t side : {2U, 3U}) sizes[side] *= 2;
        const dnnl::resampling_forward::desc what(dnnl::prop_kind::forward_inference,
                                                  dnnl::algorithm::resampling_nearest, source.get_desc(),
                                                  described(sizes, Tag::any));
        const dnnl::resampling_forward::primitive_desc how(what, engine);
        memory doubled(how.dst_desc(), engine);
        run(dnnl::resampling_forward(how), {{DNNL_ARG_SRC, source}, {DNNL_ARG_DST, doubled}});
        const dnnl::concat::primitive_desc join(1, {doubled.get_desc(), like.get_desc()}, engine);
        memory result(join.dst_desc(), engine);
        run(dnnl::concat(join),
            {{DNNL_ARG_MULTIPLE_SRC, doubled}, {DNNL_ARG_MULTIPLE_SRC + 1, like}, {DNNL_ARG_DST, result}});
        return result;
    }

    memory laid_out(const memory& source, const memory::desc& wanted) {
        if (source.get_desc() == wanted) return source;
        memory result(wanted, engine);
        run(dnnl::reorder(source, result), {{DNNL_ARG_FROM, source}, {DNNL_ARG_TO, result}});
        return result;
    }

    void run(const dnnl::primitive& primitive, const std::unordered_map<int, memory>& arguments) {
        primitive.execute(stream, arguments);
        stream.wait();
    }

    memory held(const Tensor& tensor, Tag tag) {
        const memory::dims sizes(tensor.sizes.begin(), tensor.sizes.end());
        memory result(described(sizes, tag), engine);
        std::copy(tensor.values.begin(), tensor.values.end(), static_cast<float*>(result.get_data_handle()));
        return result;
    }
};

namespace {

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
        inside->kernels[name] = {sizes[0], sizes[1], inside->held(kernel->second, Tag::oihw),
                                 inside->held(bias->second, Tag::x)};
    }
    const auto& kernels = inside->kernels;
    inside->inputs = static_cast<int>(kernels.at("enc_conv0").in);
    const auto follows = [&](const char* name, memory::dim in) { return kernels.at(name).in == in; };
    const auto out = [&](const char* name) { return kernels.at(name).out; };
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
    Inside& net = *inside_;
    // The library's own threads, as many as the program may use.
    omp_set_num_threads(
        static_cast<int>(tbb::global_control::active_value(tbb::global_control::max_allowed_parallelism)));
    const memory input(described({1, net.inputs, height, width}, Tag::nchw), net.engine,
                       const_cast<float*>(planes.data()));
    const auto pooled = [&](const memory& from, const char* name) { return net.halved(net.convolved(from, name)); };
    // Each level is let go of as soon as nobody needs it: at full size one takes a hundred megabytes.
    memory level1 = pooled(net.convolved(input, "enc_conv0"), "enc_conv1");
    memory level2 = pooled(level1, "enc_conv2");
    memory level3 = pooled(level2, "enc_conv3");
    memory x = pooled(level3, "enc_conv4");
    x = net.convolved(net.convolved(x, "enc_conv5a"), "enc_conv5b");
    const auto up = [&](const memory& like, const char* first, const char* second) {
        x = net.doubled_beside(x, like);
        x = net.convolved(x, first);
        x = net.convolved(x, second);
    };
    up(level3, "dec_conv4a", "dec_conv4b");
    level3 = {};
    up(level2, "dec_conv3a", "dec_conv3b");
    level2 = {};
    up(level1, "dec_conv2a", "dec_conv2b");
    level1 = {};
    up(input, "dec_conv1a", "dec_conv1b");
    const memory output = net.laid_out(net.convolved(x, "dec_conv0"), described({1, 3, height, width}, Tag::nchw));
    const auto* values = static_cast<const float*>(output.get_data_handle());
    return {values, values + 3 * static_cast<std::size_t>(width) * static_cast<std::size_t>(height)};
}

}  // namespace understudy
