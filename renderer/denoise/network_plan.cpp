// Channels lie in blocks of as many as a vector holds, the layout that the library's quickest convolutions work in:
// with AVX-512 Winograd's, two to three times as quick as the plain ones (A. Lavin and S. Gray, "Fast Algorithms for
// Convolutional Neural Networks", CVPR 2016), with AVX2 the plain ones. Channels are filled up with zeros to whole
// blocks: with odd counts the library falls back on code that is a thousand times as slow.
//
// The library chooses its way, and with it the last digits, by how many threads it is told of. So it is told of all
// that the machine has, whatever the program may use: pictures are the same for any number.
//
// What is joined is never laid side by side: a convolution of both is that of the one, with that of the other added.
#include "denoise/network_plan.h"

#include <algorithm>
#include <array>
#include <optional>
#include <unordered_map>

#include <omp.h>
#include <dnnl.hpp>

namespace understudy {

namespace {

using dnnl::memory;
using Tag = memory::format_tag;
using Arguments = std::unordered_map<int, memory>;
using ConvolutionKind = dnnl::convolution_forward::primitive_desc;

constexpr int kKernel = 3;
constexpr int kBlock = 16;  // a multiple of every processor's

int whole_blocks(int channels) { return (channels + kBlock - 1) / kBlock * kBlock; }

memory::desc described(const memory::dims& sizes, Tag tag) { return {sizes, memory::data_type::f32, tag}; }

float* values_of(const memory& held) { return static_cast<float*>(held.get_data_handle()); }

// A picture on its way, of so many channels.
struct Level {
    float* values = nullptr;
    int channels = 0;
    int width = 0, height = 0;

    memory::dims sizes() const { return {1, whole_blocks(channels), height, width}; }
    memory::dim count() const { return memory::dim{whole_blocks(channels)} * width * height; }
};

// Some of what a convolution takes in, and what becomes of its sums.
struct Part {
    int first = 0;
    int count = 0;
    bool is_added = false;  // to what is there
    bool is_last = true;    // the rectifier follows
};

struct Step {
    dnnl::primitive primitive;
    Arguments arguments;
};

dnnl::primitive_attr attributes_of(const Part& part) {
    dnnl::post_ops then;
    if (part.is_added) then.append_sum(1.0F);
    if (part.is_last) then.append_eltwise(1.0F, dnnl::algorithm::eltwise_relu, 0.0F, 0.0F);
    dnnl::primitive_attr attributes;
    attributes.set_post_ops(then);
    attributes.set_scratchpad_mode(dnnl::scratchpad_mode::user);
    return attributes;
}

// None where the library has no such convolution for this processor.
std::optional<ConvolutionKind> kind_of(const dnnl::engine& engine, dnnl::algorithm algorithm, Tag tag,
                                       const memory::dims& from, const memory::dims& to, const Part& part) {
    const dnnl::convolution_forward::desc what(dnnl::prop_kind::forward_inference, algorithm, described(from, tag),
                                               described({to[1], from[1], kKernel, kKernel}, Tag::any),
                                               described({to[1]}, Tag::x), described(to, tag), {1, 1}, {1, 1}, {1, 1});
    const ConvolutionKind kind(what, attributes_of(part), engine, true);
    if (kind.get(true) == nullptr) return std::nullopt;
    return kind;
}

}  // namespace

struct NetworkPlan::Inside {
    dnnl::engine engine{dnnl::engine::kind::cpu, 0};
    dnnl::stream stream{engine};
    Tag tag = Tag::nChw8c;
    std::vector<Step> steps{};
    Level input{}, output{};
    // Levels that only the next step needs take turns in two places; what is needed again has its own.
    std::array<memory, 2> turns{};
    std::vector<memory> kept{};
    memory scratch{};

    // ---- memory ----

    Level in_own_place(int channels, int width, int height) {
        Level level{nullptr, channels, width, height};
        kept.emplace_back(described({level.count()}, Tag::x), engine);
        level.values = values_of(kept.back());
        return level;
    }
    Level in_turn(const Level& source, int channels, int width, int height) const {
        const bool first_taken = source.values == values_of(turns[0]);
        return {values_of(turns.at(first_taken ? 1 : 0)), channels, width, height};
    }
    memory held(const Level& level) const { return {described(level.sizes(), tag), engine, level.values}; }

    // ---- steps ----

    // Winograd's where the processor and the size allow it.
    ConvolutionKind quickest(const memory::dims& from, const memory::dims& to, const Part& part) const {
        const auto winograd = kind_of(engine, dnnl::algorithm::convolution_winograd, tag, from, to, part);
        if (winograd) return *winograd;
        return *kind_of(engine, dnnl::algorithm::convolution_direct, tag, from, to, part);
    }

    memory weights_of(const Convolution& convolution, const Part& part, const memory::desc& wanted) {
        constexpr std::ptrdiff_t kPlaces = std::ptrdiff_t{kKernel} * kKernel;
        const std::ptrdiff_t out = whole_blocks(convolution.out);
        const std::ptrdiff_t in = whole_blocks(part.count);
        memory plain(described({out, in, kKernel, kKernel}, Tag::oihw), engine);
        float* to = values_of(plain);
        std::fill_n(to, out * in * kPlaces, 0.0F);
        for (std::ptrdiff_t o = 0; o < convolution.out; ++o) {
            const auto from = convolution.weights.begin() + (o * convolution.in + part.first) * kPlaces;
            std::copy_n(from, part.count * kPlaces, to + o * in * kPlaces);
        }
        memory laid_out(wanted, engine);
        dnnl::reorder(plain, laid_out).execute(stream, plain, laid_out);
        stream.wait();
        return laid_out;
    }

    memory biases_of(const Convolution& convolution, const Part& part) {
        const int out = whole_blocks(convolution.out);
        memory biases(described({out}, Tag::x), engine);
        std::fill_n(values_of(biases), out, 0.0F);
        if (!part.is_added) std::copy(convolution.biases.begin(), convolution.biases.end(), values_of(biases));
        return biases;
    }

    void convolve(const Level& from, const Level& to, const Convolution& convolution, const Part& part) {
        const ConvolutionKind kind = quickest(from.sizes(), to.sizes(), part);
        steps.push_back({dnnl::convolution_forward(kind),
                         {{DNNL_ARG_SRC, held(from)},
                          {DNNL_ARG_WEIGHTS, weights_of(convolution, part, kind.weights_desc())},
                          {DNNL_ARG_BIAS, biases_of(convolution, part)},
                          {DNNL_ARG_DST, held(to)},
                          {DNNL_ARG_SCRATCHPAD, memory(kind.scratchpad_desc(), engine, nullptr)}}});
    }

    Level convolved(const Level& from, const Convolution& convolution) {
        const Level to = in_turn(from, convolution.out, from.width, from.height);
        convolve(from, to, convolution, {0, convolution.in});
        return to;
    }

    // Of both, as if the second's channels came behind the first's.
    Level convolved(const Level& first, const Level& second, const Convolution& convolution) {
        const Level to = in_turn(first, convolution.out, first.width, first.height);
        convolve(first, to, convolution, {0, first.channels, false, false});
        convolve(second, to, convolution, {first.channels, second.channels, true, true});
        return to;
    }

    // Each 2 × 2 pixels' largest, into a place of its own.
    Level halved(const Level& from) {
        const Level to = in_own_place(from.channels, from.width / 2, from.height / 2);
        const dnnl::pooling_forward::desc what(dnnl::prop_kind::forward_inference, dnnl::algorithm::pooling_max,
                                               described(from.sizes(), tag), described(to.sizes(), tag), {2, 2}, {2, 2},
                                               {0, 0}, {0, 0});
        steps.push_back(
            {dnnl::pooling_forward({what, engine}), {{DNNL_ARG_SRC, held(from)}, {DNNL_ARG_DST, held(to)}}});
        return to;
    }

    // Twice as large, each pixel four times.
    Level doubled(const Level& from) {
        const Level to = in_turn(from, from.channels, 2 * from.width, 2 * from.height);
        const dnnl::resampling_forward::desc what(dnnl::prop_kind::forward_inference,
                                                  dnnl::algorithm::resampling_nearest, described(from.sizes(), tag),
                                                  described(to.sizes(), tag));
        steps.push_back(
            {dnnl::resampling_forward({what, engine}), {{DNNL_ARG_SRC, held(from)}, {DNNL_ARG_DST, held(to)}}});
        return to;
    }

    void build(const Convolutions& of, const Size& size) {
        input = in_own_place(of.at("enc_conv0").in, size.width, size.height);
        const Level level1 = halved(convolved(convolved(input, of.at("enc_conv0")), of.at("enc_conv1")));
        const Level level2 = halved(convolved(level1, of.at("enc_conv2")));
        const Level level3 = halved(convolved(level2, of.at("enc_conv3")));
        const Level level4 = halved(convolved(level3, of.at("enc_conv4")));
        Level x = convolved(convolved(level4, of.at("enc_conv5a")), of.at("enc_conv5b"));
        x = convolved(convolved(doubled(x), level3, of.at("dec_conv4a")), of.at("dec_conv4b"));
        x = convolved(convolved(doubled(x), level2, of.at("dec_conv3a")), of.at("dec_conv3b"));
        x = convolved(convolved(doubled(x), level1, of.at("dec_conv2a")), of.at("dec_conv2b"));
        x = convolved(convolved(doubled(x), input, of.at("dec_conv1a")), of.at("dec_conv1b"));
        output = convolved(x, of.at("dec_conv0"));
    }

    // One for all steps: they come one after another.
    void share_scratch() {
        std::size_t bytes = 1;
        for (const Step& step : steps) {
            const auto found = step.arguments.find(DNNL_ARG_SCRATCHPAD);
            if (found != step.arguments.end()) bytes = std::max(bytes, found->second.get_desc().get_size());
        }
        scratch = memory({{static_cast<memory::dim>(bytes)}, memory::data_type::u8, Tag::x}, engine);
        for (Step& step : steps) {
            const auto found = step.arguments.find(DNNL_ARG_SCRATCHPAD);
            if (found != step.arguments.end()) found->second.set_data_handle(scratch.get_data_handle());
        }
    }

    void copy(const memory& from, const memory& to) {
        dnnl::reorder(from, to).execute(stream, const_cast<memory&>(from), const_cast<memory&>(to));
    }
};

namespace {

// Of the largest level. A deeper one has a quarter of the pixels, or fewer.
memory::dim largest_level(const Convolutions& convolutions, const NetworkPlan::Size& size) {
    const auto channels = [&](const std::string& name) { return whole_blocks(convolutions.at(name).out); };
    int most = 0;
    for (const auto& [name, convolution] : convolutions) most = std::max(most, (channels(name) + 3) / 4);
    // dec_conv2b's is doubled.
    for (const char* name : {"enc_conv0", "enc_conv1", "dec_conv2b", "dec_conv1a", "dec_conv1b", "dec_conv0"}) {
        most = std::max(most, channels(name));
    }
    return memory::dim{most} * size.width * size.height;
}

}  // namespace

NetworkPlan::NetworkPlan(const Convolutions& convolutions, const Size& size) : size_(size), inside_(new Inside) {
    omp_set_num_threads(omp_get_num_procs());
    Inside& plan = *inside_;
    const memory::dims probe{1, kBlock, kBlock, kBlock};
    if (kind_of(plan.engine, dnnl::algorithm::convolution_winograd, Tag::nChw16c, probe, probe, {})) {
        plan.tag = Tag::nChw16c;
    }
    for (memory& turn : plan.turns) {
        turn = memory(described({largest_level(convolutions, size)}, Tag::x), plan.engine);
    }
    plan.build(convolutions, size);
    plan.share_scratch();
}

NetworkPlan::~NetworkPlan() = default;

std::vector<float> NetworkPlan::run(const std::vector<float>& planes) {
    Inside& plan = *inside_;
    omp_set_num_threads(omp_get_num_procs());
    // Plain planes in and out; blocks are filled up with zeros on the way in.
    const auto beside = [&](const Level& level, const float* values) {
        const memory::dims sizes{1, level.channels, level.height, level.width};
        return std::pair(memory(described(sizes, Tag::nchw), plan.engine, const_cast<float*>(values)),
                         memory(described(sizes, plan.tag), plan.engine, level.values));
    };
    const auto [plain_in, blocks_in] = beside(plan.input, planes.data());
    plan.copy(plain_in, blocks_in);
    for (Step& step : plan.steps) step.primitive.execute(plan.stream, step.arguments);
    const Level& out = plan.output;
    std::vector<float> result(static_cast<std::size_t>(out.channels) * static_cast<std::size_t>(out.width) *
                              static_cast<std::size_t>(out.height));
    const auto [plain_out, blocks_out] = beside(out, result.data());
    plan.copy(blocks_out, plain_out);
    plan.stream.wait();
    return result;
}

}  // namespace understudy
